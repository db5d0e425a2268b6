package lengthwise.dxf;

import static lengthwise.dxf.Dxf.block;
import static lengthwise.dxf.Dxf.drawing;
import static lengthwise.dxf.Dxf.insert;
import static lengthwise.dxf.Dxf.polyline;
import static lengthwise.dxf.Dxf.rectangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.stream.Stream;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.ScaleStatement;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Files that nobody vouches for: one clear line or a list of pieces, in bounded time, whatever they hold. */
class HostileDxfTest {
    private static final String GOOD = rectangle("good", 20, 20, 120, 60);
    private static final Duration LONGEST = Duration.ofSeconds(60);

    static Stream<Arguments> refused() {
        return Stream.of(
                file("block bomb", drawing(bomb(), insert("b8", 0, 0, ""))),
                file("array bomb", drawing(block("b", GOOD), insert("b", 0, 0, "70 32767\n71 32767\n44 5\n45 5\n"))),
                file("array of nothing", drawing(block("b", ""), insert("b", 0, 0, "70 2147483647\n71 2147483647\n"))),
                file("deep blocks", drawing(deep(5000), insert("b4999", 0, 0, ""))),
                file("too many points", drawing(spline(3).repeat(80))),
                file("no code", "x y\n0 EOF\n"),
                file("a number that is none", drawing(GOOD.replace("140.0", "14O.0"))));
    }

    static Stream<Arguments> readable() {
        return Stream.of(
                file("numbers beyond measure", drawing(GOOD + polyline("x", true, 0, 0, 1e300, 0, 1e300, 1e300))),
                file("numbers beyond doubles", drawing(GOOD + "0 CIRCLE\n8 x\n10 1e999\n20 0\n40 5\n")),
                file("a radius beyond measure", drawing(GOOD + "0 ARC\n8 x\n10 0\n20 0\n40 1e200\n50 0\n51 1\n")),
                file("a bulge beyond measure", drawing(GOOD + "0 LWPOLYLINE\n8 x\n10 0\n20 0\n42 1e300\n10 9\n20 0\n")),
                file("an insert of itself", drawing(block("b", GOOD + insert("b", 1, 1, "")), insert("b", 0, 0, ""))),
                file("an insert of nothing", drawing(GOOD + insert("none", 0, 0, ""))),
                file("scales of zero", drawing(block("b", GOOD), GOOD + insert("b", 300, 0, "41 0\n42 0\n"))),
                file("a spline that is none", drawing(GOOD + "0 SPLINE\n8 x\n71 3\n40 1\n40 0\n10 5\n20 5\n")),
                file("a spline of degree 2147483647", drawing(GOOD + "0 SPLINE\n8 x\n71 2147483647\n10 5\n20 5\n")),
                file(
                        "a spline with a weight of zero",
                        drawing(GOOD + spline(3).replace("20 900000.0", "20 900000.0\n41 0"))),
                file(
                        "an ellipse of nothing",
                        drawing(GOOD + "0 ELLIPSE\n8 x\n10 0\n20 0\n11 0\n21 0\n40 0\n41 9\n42 1e300\n")),
                file("a reference to a far file", drawing(GOOD + "0 IMAGE\n8 0\n1 http://127.0.0.1:9/a.png\n")),
                file("a polyline of no vertices", drawing(GOOD + "0 POLYLINE\n8 x\n70 1\n0 SEQEND\n")),
                file("a file that ends with a vertex", GOOD + "0 POLYLINE\n8 x\n0 VERTEX\n"),
                file("vertices of no polyline", drawing("0 VERTEX\n10 1\n20 1\n" + GOOD)),
                file("a long name", drawing(GOOD + Dxf.text("0", 30, 30, "x".repeat(100_000)))),
                file("an unknown thing", drawing(GOOD + "0 GOBLIN\n8 0\n10 5\n")));
    }

    private static Arguments file(String name, String groups) {
        return Arguments.of(name, Dxf.bytes(groups, StandardCharsets.UTF_8));
    }

    /** Eight inserts of eight inserts, eight deep. */
    private static String bomb() {
        StringBuilder blocks = new StringBuilder(block("b0", rectangle("0", 0, 0, 20, 20)));
        for (int i = 1; i <= 8; i++) {
            blocks.append(block("b" + i, insert("b" + (i - 1), i, i, "").repeat(8)));
        }
        return blocks.toString();
    }

    private static String deep(int depth) {
        StringBuilder blocks = new StringBuilder(block("b0", GOOD));
        for (int i = 1; i < depth; i++) {
            blocks.append(block("b" + i, insert("b" + (i - 1), 0, 0, "")));
        }
        return blocks.toString();
    }

    /** A curve through far points, which takes as many chords as are allowed. */
    private static String spline(int degree) {
        StringBuilder groups = new StringBuilder("0 SPLINE\n8 x\n70 8\n71 " + degree + "\n");
        int points = 40;
        for (int i = 0; i <= points + degree; i++) {
            groups.append("40 ").append(i).append('\n');
        }
        for (int i = 0; i < points; i++) {
            groups.append("10 ")
                    .append(i % 2 * 900_000.0)
                    .append("\n20 ")
                    .append(i / 2 % 2 * 900_000.0)
                    .append('\n');
        }
        return groups.toString();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("refused")
    void isRefusedWithOneLine(String name, byte[] bytes) {
        assertTimeout(LONGEST, () -> {
            try {
                DxfPattern.read("p.dxf", bytes, ScaleStatement.NONE);
                throw new AssertionError("read");
            } catch (DrawingException refused) {
                assertThat(refused.getMessage()).startsWith("p.dxf").doesNotContain("\n");
            }
        });
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("readable")
    void whatIsGoodIsRead(String name, byte[] bytes) {
        assertTimeout(
                LONGEST,
                () -> assertThat(DxfPattern.read("p.dxf", bytes, ScaleStatement.NONE)
                                .pieces())
                        .anyMatch(piece -> piece.outline().squareMillimetres() == 7200));
    }
}
