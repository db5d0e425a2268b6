package lengthwise.dxf;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
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
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerNotes;
import lengthwise.svg.MarkerSvg;
import lengthwise.svg.MarkerSvgReader;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is written is read back to the very micrometre. */
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
        for (Marker marker : List.of(SampleMarkers.singleLayer(), SampleMarkers.folded())) {
            MarkerDrawing written = drawing(marker);
            for (byte[] dxf : List.of(DxfMarker.pieces(written), DxfMarker.lines(written))) {
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
