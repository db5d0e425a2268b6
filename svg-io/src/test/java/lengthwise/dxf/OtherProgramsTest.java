package lengthwise.dxf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.geometry.Ring;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerSvg;
import lengthwise.svg.MarkerSvgReader;
import lengthwise.testing.Json;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What another DXF library writes and says it measures, and what it reads of what is written here. */
class OtherProgramsTest {
    static Stream<Arguments> files() throws IOException {
        return Json.resource("/dxf/expected.json").objects("cases").stream()
                .map(expected -> Arguments.of(expected.text("file"), expected.objects("pieces")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("files")
    void itsFilesMeasureWhatItSays(String file, List<Json> wanted) throws Exception {
        // Release 12 knows no units, and so the maker is asked.
        ScaleStatement scale =
                file.contains("R12") ? new ScaleStatement(OptionalDouble.of(1), Optional.empty()) : ScaleStatement.NONE;
        PatternDrawing drawing = DxfPattern.read(path(file), scale);
        assertThat(drawing.warnings()).isEmpty();
        assertThat(drawing.scaleStated()).isTrue();
        List<DrawnPiece> left = new ArrayList<>(drawing.pieces());
        assertThat(left).hasSameSizeAs(wanted);
        for (Json want : wanted) {
            DrawnPiece piece = left.stream()
                    .filter(p -> p.name().equals(want.text("name")))
                    .filter(p -> Math.abs(p.outline().box().width() / 1000.0 - want.number("width_mm")) <= 0.012)
                    .filter(p -> Math.abs(p.outline().box().height() / 1000.0 - want.number("height_mm")) <= 0.012)
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no " + want + " in "
                            + drawing.pieces().stream()
                                    .map(p -> p.name() + " " + p.outline().box())
                                    .toList()));
            left.remove(piece);
            // Chords 0.005 mm inside a curve take away less than half a millimetre times that along a metre of it.
            assertThat(piece.outline().squareMillimetres())
                    .isCloseTo(want.number("area_mm2"), within(Math.max(3, 1e-4 * want.number("area_mm2"))));
        }
    }

    /** The file kept beside what the other library read of it is the one that is written, so its vertices are ours. */
    @Test
    void itReadsTheVerticesThatWereWritten(@TempDir Path folder) throws Exception {
        MarkerDrawing marker = MarkerSvgReader.read(Files.writeString(
                folder.resolve("marker.svg"),
                MarkerSvg.of(SampleMarkers.folded(), DxfMarkerTest.NOTES),
                StandardCharsets.UTF_8));
        byte[] written = DxfMarker.pieces(marker);
        Files.write(Path.of("target", "written-pieces.dxf"), written);
        assertThat(Path.of("target", "written-pieces.dxf")).hasSameBinaryContentAs(path("written-pieces.dxf"));
        Json read = Json.resource("/dxf/written-pieces.json");
        assertThat(read.number("errors")).isZero();
        assertThat(read.number("units")).as("millimetres").isEqualTo(4);
        List<Json> blocks = read.objects("pieces");
        assertThat(blocks).hasSameSizeAs(marker.pieces());
        double width = marker.cuttableWidth().millimetres();
        for (int i = 0; i < blocks.size(); i++) {
            PlacedPiece piece = marker.pieces().get(i);
            assertThat(blocks.get(i).text("texts")).contains("PIECE NAME: " + piece.piece());
            Ring ring = piece.outline().shell();
            List<Json> vertices = blocks.get(i).objects("boundary");
            assertThat(vertices).hasSize(ring.size());
            for (int k = 0; k < ring.size(); k++) {
                assertThat(vertices.get(k).number("x")).isCloseTo(ring.x(k) / 1000.0, within(1e-9));
                assertThat(vertices.get(k).number("y")).isCloseTo(width - ring.y(k) / 1000.0, within(1e-9));
            }
        }
    }

    private static Path path(String file) throws Exception {
        return Path.of(Objects.requireNonNull(OtherProgramsTest.class.getResource("/dxf/" + file), file)
                .toURI());
    }
}
