package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import lengthwise.drawing.DrawingException;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The same outline, written in other ways, must come to the same millimetres. */
class SameMillimetresTest {
    static LongStream seeds() {
        return LongStream.range(0, 15);
    }

    /** A random outline round (150, 120): its corners lie on rising angles, so it never crosses itself. */
    private static String outline(RandomGenerator random) {
        StringBuilder data = new StringBuilder();
        int corners = 4 + random.nextInt(6);
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * (i + 0.6 * random.nextDouble()) / corners;
            double radius = 40 + 60 * random.nextDouble();
            data.append(i == 0 ? "M" : i % 3 == 0 ? "Q150 120 " : "L")
                    .append(mm(150 + radius * Math.cos(angle)))
                    .append(' ')
                    .append(mm(120 + radius * Math.sin(angle)));
        }
        return data + "Z";
    }

    private static String mm(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }

    private static void assertSame(Outline outline, Outline expected, long tolerance) {
        Ring ring = outline.shell();
        assertThat(Math.abs(outline.squareMillimetres() - expected.squareMillimetres()))
                .isLessThan(0.01 + tolerance * 1e-6 * expected.squareMillimetres());
        assertThat(ring.size()).isEqualTo(expected.shell().size());
        for (int i = 0; i < ring.size(); i++) {
            Point vertex = ring.vertex(i);
            assertThat(expected.shell().vertices())
                    .anyMatch(other -> Math.abs(vertex.x() - other.x()) <= tolerance
                            && Math.abs(vertex.y() - other.y()) <= tolerance);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void wrappingInTransformsAndUsesChangesNothing(long seed) throws DrawingException {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        String path = "<path id=\"p\" d=\"" + outline(random) + "\"/>";
        Outline plain = Drawn.piece(path).outline();
        double turn = random.nextDouble(-180, 180);
        double scale = random.nextDouble(0.1, 10);
        String wrapped = "<g transform=\"rotate(" + turn + " 70 60)\"><g transform=\"scale(" + scale
                + ")\"><g transform=\"scale("
                + 1 / scale + ")\"><svg width=\"40\" height=\"30\" viewBox=\"0 0 40 30\"><g transform=\"rotate(" + -turn
                + " 70 60)\">" + path + "</g></svg></g></g></g>";
        assertSame(Drawn.piece(wrapped).outline(), plain, 1);

        String used = "<defs><g id=\"inner\">" + path
                + "</g><g id=\"outer\"><use xlink:href=\"#inner\" x=\"-30\"/></g></defs>"
                + "<use href=\"#outer\" x=\"30\" transform=\"translate(0 5) matrix(1 0 0 1 0 -5)\"/>";
        assertSame(Drawn.piece(used).outline(), plain, 1);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void mirroringTwiceChangesNothingAndOnceMirrors(long seed) throws DrawingException {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        String path = "<path id=\"p\" d=\"" + outline(random) + "\"/>";
        Outline plain = Drawn.piece(path).outline();
        Outline mirrored = Drawn.piece("<g transform=\"translate(300 0) scale(-1 1)\">" + path + "</g>")
                .outline();
        assertSame(mirrored.mapped(p -> new Point(300_000 - p.x(), p.y())), plain, 1);
        String twice = "<g transform=\"scale(-1 1)\"><g transform=\"matrix(-1 0 0 1 0 0)\">" + path + "</g></g>";
        assertSame(Drawn.piece(twice).outline(), plain, 0);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void anotherUnitChangesNothing(long seed) throws DrawingException {
        String path = "<path id='p' d='"
                + outline(RandomGeneratorFactory.of("L64X128MixRandom").create(seed)) + "'/>";
        String svg = "<svg xmlns='http://www.w3.org/2000/svg' width='%s' height='%s' viewBox='0 0 400 300'>" + path
                + "</svg>";
        Outline plain =
                Drawn.read(svg.formatted("400mm", "300mm")).pieces().get(0).outline();
        assertSame(Drawn.read(svg.formatted("40cm", "30cm")).pieces().get(0).outline(), plain, 1);
        assertSame(
                Drawn.read(svg.formatted(400 / 25.4 + "in", 300 / 25.4 + "in"))
                        .pieces()
                        .get(0)
                        .outline(),
                plain,
                1);
        assertSame(
                Drawn.read(svg.formatted(400 * 72 / 25.4 + "pt", 300 * 72 / 25.4 + "pt"))
                        .pieces()
                        .get(0)
                        .outline(),
                plain,
                1);
    }

    /** The area of a circle of 50 mm lies between those of its inscribed polygon and itself; the chord error is 5 µm. */
    @Test
    void curvesKeepTheChordErrorThatIsPromised() throws DrawingException {
        for (String circle : new String[] {
            "<circle cx=\"100\" cy=\"100\" r=\"50\"/>", "<path d=\"M50 100a50 50 0 0 1 100 0 50 50 0 0 1-100 0z\"/>"
        }) {
            Ring ring = Drawn.piece(circle).outline().shell();
            for (int i = 0; i < ring.size(); i++) {
                Point middle = ring.vertex(i).plus(ring.vertex((i + 1) % ring.size()));
                double radius = Math.hypot(middle.x() / 2.0 - 100_000, middle.y() / 2.0 - 100_000);
                assertThat(radius).isBetween(50_000 - 5 - 1.0, 50_000 + 1.0);
            }
        }
    }
}
