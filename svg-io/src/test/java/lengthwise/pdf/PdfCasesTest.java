package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
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
 * Small files, each with one habit of real drawing programs, against numbers from closed formulas that a PDF engine agreed
 * with. Places are measured from the lower left corner of the visible page, y up.
 */
class PdfCasesTest {
    private static final double LENGTH = 0.05;

    static Stream<Arguments> cases() throws IOException {
        return Json.resource("/cases/expected-pdf.json").objects("cases").stream()
                .map(expected -> Arguments.of(expected.text("file"), expected));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void readsTheStatedMillimetres(String file, Json expected) throws Exception {
        byte[] bytes = bytes(file);
        PatternDrawing drawing = PdfPattern.read(file, bytes, ScaleStatement.NONE, Optional.empty());
        List<Box> pages = PdfPattern.draw(file, bytes, OptionalDouble.empty(), Optional.empty())
                .pages();
        assertThat(drawing.pieces())
                .as("pieces, warnings %s, left out %s", drawing.warnings(), drawing.leftOut())
                .hasSize((int) expected.number("pieces"));
        assertThat(drawing.warnings()).isEmpty();
        assertThat(drawing.scaleStated()).isTrue();
        List<DrawnPiece> left = new ArrayList<>(drawing.pieces());
        for (Json want : expected.objects("piece_list")) {
            Box page = pages.get(want.has("page") ? (int) want.number("page") - 1 : 0);
            DrawnPiece piece = left.stream()
                    .filter(p -> isAt(p.outline().box(), page, want))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no piece " + want + " in " + left));
            left.remove(piece);
            Box box = piece.outline().box();
            assertThat(box.width() / 1000.0).isCloseTo(want.number("width_mm"), within(LENGTH));
            assertThat(box.height() / 1000.0).isCloseTo(want.number("height_mm"), within(LENGTH));
            assertThat(piece.outline().squareMillimetres())
                    .isCloseTo(want.number("area_mm2"), Percentage.withPercentage(0.1));
            assertThat(piece.mirrored()).isEqualTo(want.has("mirrored"));
        }
    }

    private static boolean isAt(Box piece, Box page, Json want) {
        double x = (piece.minX() - page.minX()) / 1000.0;
        double y = (page.maxY() - piece.maxY()) / 1000.0;
        return Math.abs(x - want.number("x_mm")) <= LENGTH && Math.abs(y - want.number("y_mm")) <= LENGTH;
    }

    /** The machine's language changes nothing. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void readsTheSameInEveryLanguage(String file, Json expected) throws Exception {
        Locale before = Locale.getDefault();
        List<DrawnPiece> pieces = PdfPattern.read(file, bytes(file), ScaleStatement.NONE, Optional.empty())
                .pieces();
        try {
            for (String language : List.of("de-DE", "ar-EG-u-nu-arab", "tr-TR")) {
                Locale.setDefault(Locale.forLanguageTag(language));
                assertThat(PdfPattern.read(file, bytes(file), ScaleStatement.NONE, Optional.empty())
                                .pieces())
                        .isEqualTo(pieces);
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    private static byte[] bytes(String file) throws IOException {
        try (InputStream in = Objects.requireNonNull(PdfCasesTest.class.getResourceAsStream("/cases/" + file))) {
            return in.readAllBytes();
        }
    }
}
