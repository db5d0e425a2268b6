package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.testing.Json;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Small drawings, each with one habit of real drawing programs, against numbers from closed formulas or dense sampling
 * that a web browser's geometry agreed with.
 */
class InputCasesTest {
    private static final double LENGTH = 0.05;
    private static final Percentage AREA = Percentage.withPercentage(0.1);

    static Stream<Arguments> cases() throws IOException {
        return Json.resource("/cases/expected.json").objects("cases").stream()
                .map(expected -> Arguments.of(expected.text("file"), expected));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void readsTheStatedMillimetres(String file, Json expected) throws Exception {
        Path path = path(file);
        switch (expected.text("outcome")) {
            case "refuse" ->
                assertThatThrownBy(() -> SvgPattern.read(path, ScaleStatement.NONE))
                        .isInstanceOf(DrawingException.class)
                        .hasMessageContaining(file);
            case "refuse-or-read" -> {
                try {
                    checkPieces(SvgPattern.read(path, ScaleStatement.NONE), expected);
                } catch (DrawingException refused) {
                    assertThat(refused).hasMessageContaining(file);
                }
            }
            default -> {
                PatternDrawing drawing = SvgPattern.read(path, ScaleStatement.NONE);
                checkPieces(drawing, expected);
                int warnings = expected.count("warnings");
                if (warnings > 0) {
                    assertThat(drawing.warnings()).hasSizeGreaterThanOrEqualTo(warnings);
                } else if (!drawing.pieces().isEmpty()) {
                    assertThat(drawing.warnings()).isEmpty();
                }
            }
        }
    }

    private static void checkPieces(PatternDrawing drawing, Json expected) {
        assertThat(drawing.pieces())
                .as("pieces, warnings %s", drawing.warnings())
                .hasSize((int) expected.number("pieces"));
        List<DrawnPiece> left = new ArrayList<>(drawing.pieces());
        for (Json wanted : expected.objects("piece_list")) {
            DrawnPiece piece = left.stream()
                    .filter(p -> p.name().equals(wanted.text("name")))
                    .filter(p -> !wanted.has("size") || p.size().equals(java.util.Optional.of(wanted.text("size"))))
                    .filter(p -> Math.abs(p.outline().box().minX() / 1000.0 - wanted.number("x_mm")) <= LENGTH)
                    .filter(p -> Math.abs(p.outline().box().minY() / 1000.0 - wanted.number("y_mm")) <= LENGTH)
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no piece " + wanted + " among "
                            + drawing.pieces().stream()
                                    .map(p -> p.name() + " " + p.size() + " "
                                            + p.outline().box())
                                    .toList()));
            left.remove(piece);
            check(piece, wanted);
        }
    }

    private static void check(DrawnPiece piece, Json wanted) {
        assertThat(piece.outline().box().width() / 1000.0).isCloseTo(wanted.number("width_mm"), within(LENGTH));
        assertThat(piece.outline().box().height() / 1000.0).isCloseTo(wanted.number("height_mm"), within(LENGTH));
        assertThat(piece.outline().shell().doubleArea() / 2e6).isCloseTo(wanted.number("area_mm2"), AREA);
        if (wanted.has("net_area_mm2")) {
            assertThat(piece.outline().squareMillimetres()).isCloseTo(wanted.number("net_area_mm2"), AREA);
        }
        if (wanted.has("holes")) {
            assertThat(piece.outline().holes()).hasSize((int) wanted.number("holes"));
        }
        assertThat(piece.mirrored()).isEqualTo(wanted.has("mirrored"));
    }

    private static Path path(String file) throws URISyntaxException {
        URL url = InputCasesTest.class.getResource("/cases/" + file);
        return Path.of(url.toURI());
    }
}
