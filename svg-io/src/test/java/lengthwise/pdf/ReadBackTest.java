package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Marker;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.MarkerPainting;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is printed is read back, from as many sheets as it takes: every outline within 0.01 mm of the marker's. */
class ReadBackTest {
    /** In micrometres. */
    private static final double CLOSE = 10;

    static Stream<Arguments> markers() {
        return Stream.of(
                Arguments.of("A4", SampleMarkers.singleLayer(), Sheets.on("A4")),
                Arguments.of("Letter", SampleMarkers.folded(), Sheets.on("Letter")),
                Arguments.of("A2", SampleMarkers.singleLayer(), Sheets.on("A2")),
                Arguments.of("roll", SampleMarkers.singleLayer(), Sheets.on(Sheets.roll(1370))),
                Arguments.of("three lengths of a roll", SampleMarkers.farApart(12_000), Sheets.on(Sheets.roll(1370))),
                Arguments.of(
                        "one page of 12 m in a larger unit",
                        SampleMarkers.farApart(12_000),
                        new PageSetup(Sheets.roll(1370), PageSetup.USUAL_MARGIN, PageSetup.USUAL_OVERLAP, true)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("markers")
    void aMarkerComesBack(String paper, Marker marker, PageSetup setup) throws Exception {
        MarkerPainting painting = Sheets.painting(marker);
        Printed printed = MarkerPrint.of(painting, setup);
        PatternDrawing read = read(printed);
        // A half piece is lettered "on fold"; on the marker the edge of the cloth is its fold.
        assertThat(read.warnings()).allMatch(line -> line.contains("lettered \"on fold\""));
        int others = printed.pages() - printed.sheets();
        assertThat(read.leftOut())
                .contains(others == 1 ? "1 page to read, not to cut by" : others + " pages to read, not to cut by");
        assertSame(read.pieces(), painting);
    }

    @Test
    void aProjectorPageComesBack() throws Exception {
        for (boolean userUnit : new boolean[] {false, true}) {
            MarkerPainting painting = Sheets.painting(SampleMarkers.farApart(12_000));
            assertSame(read(ProjectorPrint.of(painting, userUnit)).pieces(), painting);
        }
        PatternDrawing read = read(ProjectorPrint.of(Sheets.painting(SampleMarkers.singleLayer()), false));
        assertThat(read.pieces()).extracting(piece -> piece.size().orElse("")).contains("S", "M");
    }

    /** Each piece once for its size, named by its lettering, on the fewest sheets. */
    @Test
    void paperPiecesComeBack() throws Exception {
        MarkerPainting painting = Sheets.painting(SampleMarkers.singleLayer());
        List<DrawnPiece> read = read(PiecePrint.of(painting, Sheets.on("A4"))).pieces();
        assertThat(read).extracting(DrawnPiece::name).contains("cup", "brief-back", "neck-tie", "tab");
        for (DrawnPiece piece : read) {
            Outline own = toCorner(piece.outline());
            assertThat(painting.marker().pieces())
                    .filteredOn(laid -> laid.piece().equals(piece.name()))
                    .anyMatch(laid -> isClose(own, toCorner(laid.outline())));
        }
        long pieces = painting.marker().pieces().stream()
                .map(piece -> piece.piece() + "\n" + piece.size())
                .distinct()
                .count();
        assertThat(read).hasSize((int) pieces);
    }

    private static PatternDrawing read(Printed printed) throws Exception {
        return PdfPattern.read("print.pdf", printed.bytes(), ScaleStatement.NONE, Optional.empty());
    }

    private static void assertSame(List<DrawnPiece> read, MarkerPainting painting) {
        List<Outline> written =
                painting.marker().pieces().stream().map(PlacedPiece::outline).toList();
        assertThat(read).hasSameSizeAs(written);
        Point readCorner = corner(read.stream().map(DrawnPiece::outline).toList());
        Point corner = corner(written);
        List<Outline> left = new ArrayList<>(read.stream()
                .map(piece -> piece.outline().moved(readCorner.negated()))
                .toList());
        for (Outline outline : written) {
            Outline placed = outline.moved(corner.negated());
            Optional<Outline> same =
                    left.stream().filter(other -> isClose(other, placed)).findFirst();
            assertThat(same).as("an outline like %s", placed.box()).isPresent();
            left.remove(same.orElseThrow());
        }
    }

    private static boolean isClose(Outline one, Outline other) {
        return one.holes().size() == other.holes().size()
                && isClose(one.shell(), other.shell())
                && isClose(other.shell(), one.shell());
    }

    private static boolean isClose(Ring one, Ring other) {
        return one.vertices().stream().allMatch(vertex -> distance(vertex, other) <= CLOSE);
    }

    private static double distance(Point point, Ring ring) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < ring.size(); i++) {
            Point a = ring.vertex(i);
            Point along = ring.edge(i);
            double share = along.dot(point.minus(a)) / (double) along.dot(along);
            double inside = Math.max(0, Math.min(1, share));
            least = Math.min(
                    least, Math.hypot(point.x() - a.x() - inside * along.x(), point.y() - a.y() - inside * along.y()));
        }
        return least;
    }

    private static Outline toCorner(Outline outline) {
        return outline.moved(corner(List.of(outline)).negated());
    }

    private static Point corner(List<Outline> outlines) {
        var box =
                outlines.stream().map(Outline::box).reduce((a, b) -> a.union(b)).orElseThrow();
        return new Point(box.minX(), box.minY());
    }
}
