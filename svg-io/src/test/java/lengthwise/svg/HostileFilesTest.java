package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Files that nobody vouches for: one clear line or a list of pieces, in bounded time, whatever they hold. */
class HostileFilesTest {
    private static final String GOOD = "<rect id=\"good\" x=\"20\" y=\"20\" width=\"120\" height=\"60\"/>";

    static Stream<Arguments> files() throws IOException {
        return Stream.of(
                file("empty file", ""),
                file("no XML", "once upon a time"),
                file("another root", "<html><body/></html>"),
                file("svg without its namespace", "<svg><rect width='10' height='10'/></svg>"),
                file("cut off", Drawn.page(GOOD).substring(0, 300)),
                file("cut off in a tag", "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"10mm"),
                Arguments.of("binary junk", junk()),
                Arguments.of("gzip of nothing", new byte[] {0x1f, (byte) 0x8b, 8, 0}),
                Arguments.of("gzip bomb", gzip(new byte[65 << 20])),
                file("transform that is none", Drawn.page("<g transform=\"rotate(ten)\">" + GOOD + "</g>")),
                file("use bomb", Drawn.page(bomb())),
                file("deep nesting", Drawn.page("<g>".repeat(5000) + GOOD + "</g>".repeat(5000))),
                file("quadratic entities", entities()),
                file(
                        "style bomb",
                        Drawn.page("<style>" + ".a{fill:none}".repeat(20_000) + "</style>" + "<g/>".repeat(20_000))));
    }

    static Stream<Arguments> oddButReadable() {
        return Stream.of(
                file("numbers beyond measure", Drawn.page(GOOD + "<path d=\"M0 0H1e308V5H0Z\"/><circle r=\"1e300\"/>")),
                file("numbers beyond doubles", Drawn.page(GOOD + "<path d=\"M0 0H1e999V5H0Z\"/>")),
                file("NaN", Drawn.page(GOOD + "<rect width=\"NaN\" height=\"10\"/><path d=\"MNaN 0L5 5\"/>")),
                file("zero scale", Drawn.page(GOOD + "<g transform=\"scale(0)\"><rect width=\"9\" height=\"9\"/></g>")),
                file(
                        "a use of itself",
                        Drawn.page(GOOD + "<use id=\"u\" href=\"#u\"/><g id=\"v\"><use href=\"#v\"/></g>")),
                file("a use of a far file", Drawn.page(GOOD + "<use href=\"http://127.0.0.1:9/a.svg#x\"/>")),
                file(
                        "imports and scripts",
                        Drawn.page("<style>@import url(http://127.0.0.1:9/a.css);</style>"
                                + "<script>while(true){}</script>" + GOOD)),
                file(
                        "a style sheet elsewhere",
                        "<?xml-stylesheet href=\"http://127.0.0.1:9/a.css\"?>" + Drawn.page(GOOD)),
                file(
                        "a style sheet that opens blocks in blocks",
                        Drawn.page("<style>.a{b:c;.a{b:c;{b:c}</style>" + GOOD)),
                file("a style sheet of nothing but signs", Drawn.page("<style>}}@{;:,&lt;!--@media</style>" + GOOD)),
                file("broken style", Drawn.page(GOOD + "<path style=\"stroke:;;fill:{\" d=\"M5 5z\"/>")),
                file(
                        "a viewport of nothing",
                        Drawn.page(
                                GOOD + "<svg width=\"0\" viewBox=\"0 0 0 0\"><rect width=\"9\" height=\"9\"/></svg>")),
                file(
                        "an arc of no radius",
                        Drawn.page(GOOD + "<path d=\"M5 5A0 0 0 0 1 9 9A1e-300 1e300 1e9 1 1 5 5\"/>")));
    }

    private static Arguments file(String name, String svg) {
        return Arguments.of(name, svg.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] junk() {
        byte[] bytes = new byte[5000];
        RandomGeneratorFactory.of("L64X128MixRandom").create(1).nextBytes(bytes);
        return bytes;
    }

    private static byte[] gzip(byte[] bytes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        }
        return out.toByteArray();
    }

    /** Eight uses of eight uses, seven deep: two million shapes. */
    private static String bomb() {
        StringBuilder defs = new StringBuilder("<defs><rect id=\"a0\" width=\"20\" height=\"20\"/>");
        for (int i = 1; i <= 7; i++) {
            defs.append("<g id=\"a").append(i).append("\">");
            defs.append(("<use href=\"#a" + (i - 1) + "\"/>").repeat(8)).append("</g>");
        }
        return defs + "</defs><use href=\"#a7\"/>";
    }

    private static String entities() {
        return "<!DOCTYPE svg [<!ENTITY a \"" + "0 ".repeat(50_000) + "\">]><svg xmlns=\"http://www.w3.org/2000/svg\">"
                + "<path d=\"M0 0" + "&a;".repeat(900) + "\"/></svg>";
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("files")
    void isRefusedWithOneLine(String name, byte[] bytes) {
        assertTimeout(Duration.ofSeconds(60), () -> {
            try {
                PatternDrawing drawing = Drawn.read(bytes, ScaleStatement.NONE);
                throw new AssertionError("read as " + drawing.pieces().size() + " pieces");
            } catch (DrawingException refused) {
                assertThat(refused.getMessage()).isNotBlank().doesNotContain("\n");
            }
        });
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("oddButReadable")
    void whatIsGoodIsRead(String name, byte[] bytes) {
        assertTimeout(Duration.ofSeconds(60), () -> {
            PatternDrawing drawing = Drawn.read(bytes, ScaleStatement.NONE);
            assertThat(drawing.pieces()).hasSize(1);
            assertThat(drawing.pieces().get(0).name()).isEqualTo("good");
        });
    }

    /** A zigzag of long lines meets every line with every other: the work is bounded, not the patience. */
    @Test
    void aZigzagIsBounded() {
        StringBuilder data = new StringBuilder("M0 0");
        for (int i = 0; i < 60_000; i++) {
            data.append(i % 2 == 0 ? "L390 " : "L1 ").append(i * 0.004);
        }
        assertTimeout(Duration.ofSeconds(60), () -> {
            try {
                assertThat(Drawn.read(Drawn.page("<path d=\"" + data + "L0 290Z\"/>"))
                                .pieces())
                        .hasSizeLessThan(2);
            } catch (DrawingException refused) {
                assertThat(refused.getMessage()).contains("intricate");
            }
        });
    }
}
