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
import lengthwise.model.Marker;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerSvg;
import lengthwise.svg.MarkerSvgReader;
import lengthwise.testing.Json;
import lengthwise.testing.OutsideReader;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What another DXF library writes and says it measures, and what it reads of what is written here. */
class OtherProgramsTest {
    @TempDir
    Path folder;

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
    void itReadsTheVerticesThatWereWritten() throws Exception {
        MarkerDrawing marker = drawing(SampleMarkers.folded());
        byte[] written = DxfMarker.pieces(marker);
        Files.write(Path.of("target", "written-pieces.dxf"), written);
        assertThat(Path.of("target", "written-pieces.dxf")).hasSameBinaryContentAs(path("written-pieces.dxf"));
        assertRead(Json.resource("/dxf/written-pieces.json"), marker);
    }

    static Stream<Marker> markers() {
        return Stream.of(
                SampleMarkers.singleLayer(),
                SampleMarkers.folded(),
                SampleMarkers.farApart(12_000),
                SampleMarkers.random(3),
                SampleMarkers.random(4));
    }

    /** Asked now, where it is installed. */
    @ParameterizedTest
    @MethodSource("markers")
    void itReadsWhatIsWrittenNow(Marker written) throws Exception {
        MarkerDrawing marker = drawing(written);
        assertRead(readByIt(DxfMarker.pieces(marker)), marker);
        Json lines = readByIt(DxfMarker.lines(marker));
        assertThat(lines.number("errors")).isZero();
        assertThat(lines.number("units")).isEqualTo(4);
        assertThat(lines.objects("lines").stream()
                        .filter(line -> line.text("layer").equals("CUT"))
                        .filter(line -> line.text("closed").equals("yes")))
                .hasSize((int) marker.states().stream()
                        .filter(state -> state.foldEdge().isEmpty())
                        .count());
    }

    private Json readByIt(byte[] dxf) throws Exception {
        Path file = Files.write(folder.resolve("marker.dxf"), dxf);
        Path said = folder.resolve("said.json");
        Files.deleteIfExists(said);
        List<String> lines = OutsideReader.PYTHON.says(path("read.py").toString(), file.toString(), said.toString());
        if (lines.contains("no ezdxf")) {
            OutsideReader.missing("python3-ezdxf");
        }
        return Json.file(said);
    }

    private MarkerDrawing drawing(Marker marker) throws Exception {
        return MarkerSvgReader.read(Files.writeString(
                folder.resolve("marker.svg"), MarkerSvg.of(marker, DxfMarkerTest.NOTES), StandardCharsets.UTF_8));
    }

    private static void assertRead(Json read, MarkerDrawing marker) {
        assertThat(read.number("errors")).isZero();
        assertThat(read.text("release")).isEqualTo("AC1009");
        assertThat(read.number("units")).as("millimetres").isEqualTo(4);
        List<Json> blocks = read.objects("pieces");
        assertThat(blocks).hasSameSizeAs(marker.pieces());
        double width = marker.cuttableWidth().millimetres();
        for (int i = 0; i < blocks.size(); i++) {
            PlacedPiece piece = marker.pieces().get(i);
            Json block = blocks.get(i);
            assertThat(block.text("texts")).contains("PIECE NAME: " + piece.piece());
            assertSame(block.objects("boundary"), piece.outline().shell(), width);
            List<Ring> holes = piece.outline().holes();
            assertThat(block.objects("holes")).hasSameSizeAs(holes);
            for (int k = 0; k < holes.size(); k++) {
                assertSame(block.objects("holes").get(k).objects("vertices"), holes.get(k), width);
            }
            PieceMarks marks = marker.marks().get(i);
            assertLayer(block, "4:LINE", marks.notches().size());
            assertLayer(block, "13:POINT", marks.drillHoles().size());
            assertLayer(block, "8:POLYLINE", marks.innerLines().size());
            assertLayer(block, "6:LINE", marker.states().get(i).foldEdge().isPresent() ? 1 : 0);
        }
    }

    private static void assertSame(List<Json> vertices, Ring ring, double width) {
        assertThat(vertices).hasSize(ring.size());
        for (int k = 0; k < ring.size(); k++) {
            assertThat(vertices.get(k).number("x")).isCloseTo(ring.x(k) / 1000.0, within(1e-6));
            assertThat(vertices.get(k).number("y")).isCloseTo(width - ring.y(k) / 1000.0, within(1e-6));
        }
    }

    private static void assertLayer(Json block, String things, int count) {
        assertThat(List.of(block.text("layers").split(" ", -1)).stream().filter(things::equals))
                .as(things)
                .hasSize(count);
    }

    private static Path path(String file) throws Exception {
        return Path.of(Objects.requireNonNull(OtherProgramsTest.class.getResource("/dxf/" + file), file)
                .toURI());
    }
}
