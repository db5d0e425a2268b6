package lengthwise.dxf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.geometry.Box;
import lengthwise.testing.Json;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Small drawings, each with one habit of real drawing programs, against numbers from closed formulas that another DXF
 * library and a geometry library agreed with. Places are in the file's coordinates, y up; a page begins elsewhere, so
 * they are compared between the pieces of a file.
 */
class DxfCasesTest {
    private static final double LENGTH = 0.05;
    private static final Percentage AREA = Percentage.withPercentage(0.1);

    static Stream<Arguments> cases() throws IOException {
        return Json.resource("/cases/expected-dxf.json").objects("cases").stream()
                .map(expected -> Arguments.of(expected.text("file"), expected));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void readsTheStatedMillimetres(String file, Json expected) throws Exception {
        PatternDrawing drawing = read(file);
        assertThat(drawing.pieces())
                .as("pieces, warnings %s, left out %s", drawing.warnings(), drawing.leftOut())
                .hasSize((int) expected.number("pieces"));
        List<Json> wanted = new ArrayList<>(expected.objects("piece_list"));
        double right = least(wanted, "x_mm") - least(drawing, box -> box.minX());
        double up = least(wanted, "y_mm") - least(drawing, box -> -box.maxY());
        for (Json want : wanted) {
            DrawnPiece piece = drawing.pieces().stream()
                    .filter(p -> Math.abs(p.outline().box().minX() / 1000.0 + right - want.number("x_mm")) <= LENGTH)
                    .filter(p -> Math.abs(-p.outline().box().maxY() / 1000.0 + up - want.number("y_mm")) <= LENGTH)
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no piece " + want + " in " + drawing.pieces()));
            check(piece, want);
        }
        if (expected.count("warnings") > 0) {
            assertThat(drawing.warnings()).hasSizeGreaterThanOrEqualTo(expected.count("warnings"));
        } else {
            assertThat(drawing.warnings()).isEmpty();
        }
    }

    /** The machine's language changes neither what is read nor what is refused. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void readsTheSameInEveryLanguage(String file, Json expected) throws Exception {
        Locale before = Locale.getDefault();
        List<DrawnPiece> pieces = read(file).pieces();
        try {
            for (String language : List.of("de-DE", "ar-EG-u-nu-arab", "tr-TR")) {
                Locale.setDefault(Locale.forLanguageTag(language));
                assertThat(read(file).pieces()).isEqualTo(pieces);
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    private static void check(DrawnPiece piece, Json want) {
        Box box = piece.outline().box();
        assertThat(box.width() / 1000.0).isCloseTo(want.number("width_mm"), within(LENGTH));
        assertThat(box.height() / 1000.0).isCloseTo(want.number("height_mm"), within(LENGTH));
        assertThat(piece.outline().shell().doubleArea() / 2e6).isCloseTo(want.number("area_mm2"), AREA);
        assertThat(piece.mirrored()).isEqualTo(want.has("mirrored"));
        if (want.text("name").equals("PIECE-A")) {
            assertThat(piece.name()).isEqualTo("PIECE-A");
        }
        if (want.has("centroid_x_mm")) {
            double[] centroid = centroid(piece);
            // from the lower left corner, which both frames share
            assertThat(centroid[0] - box.minX() / 1000.0)
                    .isCloseTo(want.number("centroid_x_mm") - centroidOrigin(want, "x_mm"), within(LENGTH));
            assertThat(box.maxY() / 1000.0 - centroid[1])
                    .isCloseTo(want.number("centroid_y_mm") - centroidOrigin(want, "y_mm"), within(LENGTH));
        }
    }

    /** The cup's centroid is stated from its own corner. */
    private static double centroidOrigin(Json want, String axis) {
        return want.text("name").equals("cup") ? 0 : want.number(axis);
    }

    private static double[] centroid(DrawnPiece piece) {
        var ring = piece.outline().shell();
        double area = 0;
        double x = 0;
        double y = 0;
        for (int i = 0; i < ring.size(); i++) {
            double ax = ring.x(i) / 1000.0;
            double ay = ring.y(i) / 1000.0;
            double bx = ax + ring.edge(i).x() / 1000.0;
            double by = ay + ring.edge(i).y() / 1000.0;
            double cross = ax * by - ay * bx;
            area += cross / 2;
            x += (ax + bx) * cross / 6;
            y += (ay + by) * cross / 6;
        }
        return new double[] {x / area, y / area};
    }

    private static double least(List<Json> wanted, String axis) {
        return wanted.stream().mapToDouble(want -> want.number(axis)).min().orElse(0);
    }

    private static double least(PatternDrawing drawing, java.util.function.ToLongFunction<Box> side) {
        return drawing.pieces().stream()
                .mapToDouble(piece -> side.applyAsLong(piece.outline().box()) / 1000.0)
                .min()
                .orElse(0);
    }

    private static PatternDrawing read(String file) throws Exception {
        return DxfPattern.read(
                Path.of(Objects.requireNonNull(DxfCasesTest.class.getResource("/cases/" + file))
                        .toURI()),
                ScaleStatement.NONE);
    }
}
