package lengthwise.dxf;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Marker;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;
import lengthwise.svg.LaidState;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerNotes;
import lengthwise.svg.MarkerSvg;
import lengthwise.svg.MarkerSvgReader;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is written is read back to the very micrometre. */
@Tag("written")
class DxfMarkerTest {
    static final MarkerNotes NOTES = new MarkerNotes("Plover × Grüße", "a test", "", List.of(), List.of());

    @TempDir
    private Path folder;

    static LongStream seeds() {
        return LongStream.range(0, 25);
    }

    private MarkerDrawing drawing(Marker marker) throws Exception {
        return MarkerSvgReader.read(
                Files.writeString(folder.resolve("marker.svg"), MarkerSvg.of(marker, NOTES), StandardCharsets.UTF_8));
    }

    @Test
    void handLaidMarkersComeBackWhereTheyLie() throws Exception {
        MarkerDrawing single = drawing(SampleMarkers.singleLayer());
        assertComesBack(single, DxfMarker.pieces(single));
        assertComesBack(single, DxfMarker.lines(single));
        MarkerDrawing folded = drawing(SampleMarkers.folded());
        assertComesBack(folded, DxfMarker.pieces(folded));
    }

    private static void assertComesBack(MarkerDrawing written, byte[] dxf) throws Exception {
        PatternDrawing read = DxfPattern.read("marker.dxf", dxf, ScaleStatement.NONE);
        assertThat(read.scaleStated()).isTrue();
        assertThat(read.warnings()).isEmpty();
        assertThat(read.pieces()).hasSameSizeAs(written.pieces());
        Point shift = corner(read.pieces().stream().map(DrawnPiece::outline))
                .minus(corner(written.pieces().stream().map(PlacedPiece::outline)));
        for (int i = 0; i < read.pieces().size(); i++) {
            assertSame(
                    read.pieces().get(i).outline(),
                    written.pieces().get(i).outline().moved(shift));
        }
    }

    /** The fold lies at the near edge of the cuttable area: y = 0 in the marker, its width in the file. */
    @Test
    void nothingIsCutOnTheFold() throws Exception {
        MarkerDrawing folded = drawing(SampleMarkers.folded());
        PatternDrawing read = DxfPattern.read("marker.dxf", DxfMarker.pieces(folded), ScaleStatement.NONE);
        for (int i = 0; i < read.pieces().size(); i++) {
            assertThat(read.pieces().get(i).foldEdge().map(Segment::length))
                    .isEqualTo(folded.states().get(i).foldEdge().map(Segment::length));
        }
        assertThat(read.pieces()).anyMatch(piece -> piece.foldEdge().isPresent());
        DxfFile lines = DxfFile.read("lines.dxf", DxfMarker.lines(folded));
        double fold = folded.cuttableWidth().millimetres();
        int open = 0;
        for (DxfFile.Thing thing : lines.things()) {
            List<Entity> vertices = lines.parts(thing, "VERTEX");
            open += thing.closed() ? 0 : 1;
            for (int k = 1; k < vertices.size(); k++) {
                boolean along = vertices.get(k - 1).number(20, 0) == fold
                        && vertices.get(k).number(20, 0) == fold;
                assertThat(along).isFalse();
            }
        }
        assertThat(open).isEqualTo((int) folded.states().stream()
                .filter(state -> state.foldEdge().isPresent())
                .count());
    }

    @Test
    void whatIsCutAlreadyIsNotCutAgain() throws Exception {
        MarkerDrawing whole = drawing(SampleMarkers.singleLayer());
        List<LaidState> states = new ArrayList<>(whole.states());
        states.set(0, new LaidState(Optional.empty(), List.of(), true));
        MarkerDrawing begun = new MarkerDrawing(
                whole.job(),
                whole.fabric(),
                whole.length(),
                whole.cuttableWidth(),
                whole.pieces(),
                whole.numbers(),
                whole.marks(),
                states,
                whole.spread());
        for (byte[] dxf : List.of(DxfMarker.pieces(begun), DxfMarker.lines(begun))) {
            assertThat(DxfPattern.read("marker.dxf", dxf, ScaleStatement.NONE).pieces())
                    .hasSize(whole.pieces().size() - 1);
        }
    }

    @Test
    void namesSizesAndMarksComeBack() throws Exception {
        MarkerDrawing written = drawing(SampleMarkers.singleLayer());
        PatternDrawing read = DxfPattern.read("marker.dxf", DxfMarker.pieces(written), ScaleStatement.NONE);
        for (int i = 0; i < read.pieces().size(); i++) {
            DrawnPiece piece = read.pieces().get(i);
            assertThat(piece.name()).isEqualTo(written.pieces().get(i).piece());
            assertThat(piece.size()).hasValue(written.pieces().get(i).size());
            assertThat(piece.notches()).hasSameSizeAs(written.marks().get(i).notches());
            assertThat(piece.drillHoles()).hasSameSizeAs(written.marks().get(i).drillHoles());
            assertThat(piece.innerLines()).hasSameSizeAs(written.marks().get(i).innerLines());
            assertThat(piece.lettering())
                    .anyMatch(words -> words.contains(piece.name()))
                    .contains("cut 1");
            assertThat(piece.arrow().isPresent())
                    .as(piece.name())
                    .isEqualTo(written.marks().get(i).grainLine().orElseThrow().length() >= 20_000);
        }
    }

    /** They may overlap, so that one lies in another: then the drawing is read with its pieces apart. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void randomOutlinesComeBackToTheMicrometre(long seed) throws Exception {
        MarkerDrawing written = drawing(SampleMarkers.random(seed));
        PatternDrawing read = DxfPattern.read("marker.dxf", DxfMarker.pieces(written), ScaleStatement.NONE);
        assertThat(read.pieces()).hasSameSizeAs(written.pieces());
        for (int i = 0; i < read.pieces().size(); i++) {
            assertSame(
                    toCorner(read.pieces().get(i).outline()),
                    toCorner(written.pieces().get(i).outline()));
        }
    }

    @Test
    void theMachinesLanguageDoesNotMatter() throws Exception {
        MarkerDrawing written = drawing(SampleMarkers.singleLayer());
        byte[] pieces = DxfMarker.pieces(written);
        Locale before = Locale.getDefault();
        try {
            for (String language : List.of("de-DE", "ar-EG-u-nu-arab", "tr-TR")) {
                Locale.setDefault(Locale.forLanguageTag(language));
                assertThat(DxfMarker.pieces(written)).isEqualTo(pieces);
            }
        } finally {
            Locale.setDefault(before);
        }
        assertThat(new String(pieces, StandardCharsets.US_ASCII))
                .contains("\\U+00D7", "METRIC", "\r\n$INSUNITS\r\n70\r\n4\r\n");
    }

    private static Point corner(Stream<Outline> outlines) {
        var box = outlines.map(Outline::box).reduce((a, b) -> a.union(b)).orElseThrow();
        return new Point(box.minX(), box.minY());
    }

    private static Outline toCorner(Outline outline) {
        return outline.moved(corner(Stream.of(outline)).negated());
    }

    private static void assertSame(Outline read, Outline written) {
        assertThat(vertices(read.shell())).isEqualTo(vertices(written.shell()));
        assertThat(read.shell().doubleArea()).isEqualTo(written.shell().doubleArea());
        assertThat(read.holes()).hasSameSizeAs(written.holes());
        for (int i = 0; i < read.holes().size(); i++) {
            assertThat(vertices(read.holes().get(i)))
                    .isEqualTo(vertices(written.holes().get(i)));
        }
    }

    private static List<Point> vertices(Ring ring) {
        List<Point> points = new ArrayList<>(ring.vertices());
        points.sort(Comparator.comparingLong(Point::x).thenComparingLong(Point::y));
        return points;
    }
}
