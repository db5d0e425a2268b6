package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Marker;
import lengthwise.model.PlacedPiece;
import lengthwise.testing.SampleMarkers;
import lengthwise.testing.Screenshot;
import lengthwise.toolpath.CutterSvg;
import lengthwise.toolpath.Kerf;
import lengthwise.toolpath.ToolPath;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A browser shows markers and cut lines at true size: measured in its pixels, of which it has 96 to the inch. */
class BrowserTest {
    private static final MarkerNotes NOTES = new MarkerNotes("short lay", "a test", "", List.of(), List.of());

    /** In micrometres: half of a line of 0.25 mm, and half a pixel. */
    private static final long TOLERANCE = 200;

    @TempDir
    Path folder;

    @Test
    void theCheckSquareIsTenCentimetresAndThePiecesLieWhereTheMarkerSays() throws Exception {
        Marker marker = SampleMarkers.small();
        String svg = MarkerSvg.of(marker, NOTES);
        Matcher root = found("width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\" viewBox=\"(-[0-9.]+) (-[0-9.]+) ", svg);
        double width = Double.parseDouble(root.group(1));
        double height = Double.parseDouble(root.group(2));
        Point corner = new Point(um(root.group(3)), um(root.group(4)));
        Screenshot shot = Screenshot.of(svg, folder, width, height, 2);

        // Nothing is drawn on the sides of the squares: their lines are 0.25 mm.
        for (double side : new double[] {100, 101.6}) {
            Matcher at = found("data-measures=\"%.3f\" d=\"M([-0-9.]+) ([-0-9.]+) h".formatted(side), svg);
            Box square = box(um(at.group(1)), um(at.group(2)), um(side), um(side));
            Box seen = shot.ink(wider(square, 1500).moved(corner.negated()), 0.5);
            assertThat(seen.width()).isCloseTo(um(side) + 250, within(140L));
            assertThat(seen.height()).isCloseTo(um(side) + 250, within(140L));
        }

        Point cuttable = new Point(
                marker.order().fabric().spread().startAllowance().micrometres(),
                marker.order().fabric().edgesOnTable().near().micrometres());
        for (PlacedPiece piece :
                marker.placements().stream().map(PlacedPiece::of).toList()) {
            Box outline = piece.outline().box().moved(cuttable.minus(corner));
            assertSame(shot.ink(wider(outline, 1000), 0.7), outline);
        }
    }

    @Test
    void cutLinesLieWhereTheMarkerSays() throws Exception {
        Path file = Files.writeString(folder.resolve("marker.svg"), MarkerSvg.of(SampleMarkers.small(), NOTES));
        MarkerDrawing marker = MarkerSvgReader.read(file);
        String svg = CutterSvg.of(marker, ToolPath.of(marker, Kerf.NONE), Kerf.NONE, false);
        Matcher root = found("width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\"", svg);
        Screenshot shot =
                Screenshot.of(svg, folder, Double.parseDouble(root.group(1)), Double.parseDouble(root.group(2)), 2);
        // A line of 0.025 mm is a fifth of a pixel.
        marker.pieces()
                .forEach(piece -> assertSame(
                        shot.ink(wider(piece.outline().box(), 1000), 0.06),
                        piece.outline().box()));
    }

    private static void assertSame(Box seen, Box said) {
        assertThat(seen.minX()).isCloseTo(said.minX(), within(TOLERANCE));
        assertThat(seen.minY()).isCloseTo(said.minY(), within(TOLERANCE));
        assertThat(seen.maxX()).isCloseTo(said.maxX(), within(TOLERANCE));
        assertThat(seen.maxY()).isCloseTo(said.maxY(), within(TOLERANCE));
    }

    private static Matcher found(String pattern, String in) {
        Matcher matcher = Pattern.compile(pattern).matcher(in);
        assertThat(matcher.find()).as(pattern).isTrue();
        return matcher;
    }

    private static Box box(long x, long y, long width, long height) {
        return new Box(x, y, x + width, y + height);
    }

    private static Box wider(Box box, long by) {
        return new Box(box.minX() - by, box.minY() - by, box.maxX() + by, box.maxY() + by);
    }

    private static long um(String millimetres) {
        return um(Double.parseDouble(millimetres));
    }

    private static long um(double millimetres) {
        return Math.round(millimetres * 1000);
    }
}
