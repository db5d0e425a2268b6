package lengthwise.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.Run;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.Ring;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import org.junit.jupiter.api.Test;

/** Markers of strips laid by hand. A piece on the fold is drawn at half length, length = 2 × half: common practice, no source. */
class FoldedStripTest {
    @Test
    void aStripIsFoldedEndToEndAtHalfItsLength() {
        Marker marker = marker(SampleRuns.singleLayer().order().fabric(), strip(32_000, 1_460_000, Optional.empty()));
        assertThat(FoldedStrip.on(marker))
                .containsExactly(new FoldedStrip.Kind(new FoldedStrip("tie", "S", mm(32), mm(1460)), 1));

        Map<String, String> texts =
                RunFiles.texts(new Run("ties", "1", 1, 1, true, List.of(SampleRuns.fabricRun(marker)), List.of()));
        assertThat(texts.get("report.html"))
                .contains("fold the strip end to end", "never at the fold")
                .contains(">half length, folded<", ">73 cm (28 3/4 in)<", ">whole length<", ">1.460 m (57 1/2 in)<");
        assertThat(texts.get("report.json")).contains("\"half_length_mm\" : 730.000", "\"whole_length_mm\" : 1460.000");
    }

    @Test
    void aStripOnTheFoldLiesThereWithHalfItsLength() {
        Segment end = new Segment(Point.ORIGIN, new Point(32_000, 0));
        Marker marker = marker(SampleRuns.folded().order().fabric(), strip(32_000, 730_000, Optional.of(end)));
        assertThat(FoldedStrip.on(marker))
                .containsExactly(new FoldedStrip.Kind(new FoldedStrip("tie", "S", mm(32), mm(1460)), 1));
    }

    /** At 45° 32 mm across and 400 mm along are 22.627 and 282.843 mm along each axis, to the micrometre. */
    @Test
    void aStripOnTheBiasIsMeasuredAlongItself() {
        Ring ring = Ring.of(22_627, 0, 22_627 + 282_843, 282_843, 282_843, 282_843 + 22_627, 0, 22_627);
        FoldedStrip strip = FoldedStrip.on(marker(
                        SampleRuns.singleLayer().order().fabric(),
                        piece(ring, Optional.empty(), Piece.Turning.ON_BIAS)))
                .get(0)
                .strip();
        assertThat(strip.width().micrometres()).isBetween(31_999L, 32_001L);
        assertThat(strip.half().micrometres()).isBetween(199_999L, 200_001L);
    }

    private static Piece strip(long width, long length, Optional<Segment> foldEdge) {
        return piece(Ring.of(0, 0, width, 0, width, length, 0, length), foldEdge, Piece.Turning.ALONG_GRAIN);
    }

    private static Piece piece(Ring ring, Optional<Segment> foldEdge, Piece.Turning turning) {
        return new Piece(
                "tie",
                SampleRuns.SMALL,
                Outline.of(ring),
                Optional.empty(),
                turning,
                foldEdge,
                Optional.empty(),
                true,
                new PieceMarks(Optional.empty(), List.of(), List.of(), List.of()));
    }

    private static Marker marker(Fabric fabric, Piece strip) {
        Item item = new Item(strip, List.of(new Garment(1, SampleRuns.SMALL)), Hand.NONE, false);
        return new Marker(
                new MarkerOrder(fabric, Length.ZERO, List.of()),
                List.of(new Placement(item, new Pose(Orientation.AS_DRAWN, Point.ORIGIN))),
                new Length(strip.outline().box().maxX()));
    }

    private static Length mm(double millimetres) {
        return SampleRuns.mm(millimetres);
    }
}
