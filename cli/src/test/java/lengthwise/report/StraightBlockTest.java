package lengthwise.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.Run;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Placement;
import org.junit.jupiter.api.Test;

/** Markers laid by hand: strips of 32 × 400 mm with a gap of 3 mm. */
class StraightBlockTest {
    private static final QuarterTurn ALONG = QuarterTurn.NONE;

    /** Five strips side by side are 5 × 32 + 4 × 3 = 172 mm; one more lies a strip's width apart, one is not level. */
    @Test
    void stripsThatLieSideBySideAreABlock() {
        List<Placement> placements = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            placements.add(tie(QuarterTurn.QUARTER, 32_000 + i * 35_000L, 0));
        }
        placements.add(tie(QuarterTurn.QUARTER, 32_000 + 6 * 35_000L, 0));
        placements.add(tie(QuarterTurn.QUARTER, 32_000 + 7 * 35_000L, 1_000));
        assertThat(StraightBlock.on(marker(placements)))
                .containsExactly(new StraightBlock("5 × tie", List.of(1, 2, 3, 4, 5), mm(32), mm(400), mm(3)));
    }

    @Test
    void stripsThatLieEndToEndAreNone() {
        assertThat(StraightBlock.on(marker(List.of(tie(ALONG, 0, 0), tie(ALONG, 403_000, 0)))))
                .isEmpty();
    }

    @Test
    void stripsAlongTheClothLieOneAboveTheOther() {
        assertThat(StraightBlock.on(marker(List.of(tie(ALONG, 0, 0), tie(ALONG, 0, 35_000), tie(ALONG, 403_000, 0)))))
                .extracting(StraightBlock::numbers)
                .containsExactly(List.of(1, 2));
    }

    @Test
    void theReportsSayHowToCutThem() {
        Marker marker = marker(List.of(tie(ALONG, 0, 0), tie(ALONG, 0, 35_000)));
        Run sample = SampleRuns.run();
        Run run = new Run("ties", "1", 1, 1, true, List.of(SampleRuns.fabricRun(marker)), sample.warnings());
        Map<String, String> texts = RunFiles.texts(run);
        String sentence =
                "2 × tie (nos. 1 to 2) as one straight-cut block, 6.7 cm (2 5/8 in) by 40 cm (15 3/4 in): a strip"
                        + " of 3.2 cm (1 1/4 in) every 3.5 cm (1 3/8 in).";
        assertThat(texts.get("report.html")).contains(sentence).contains("each fold in the middle of a gap");
        assertThat(texts.get("reef-print-placement.html")).contains(sentence).contains("half of a gap away");
        assertThat(texts.get("report.json")).contains("\"strip_width_mm\" : 32.000");
        assertThat(RunFiles.texts(sample).values())
                .noneMatch(text -> text.contains("straight-cut") || text.contains("Straight-cut"));
    }

    /** 50 mm are 1.97 in and 52 mm are 2.05 in: both are 2 in to an eighth, and a strip every 2 in would lose its gap. */
    @Test
    void inInchesTooAGapIsLeftBetweenStrips() {
        StraightBlock block = new StraightBlock("5 × tie", List.of(2, 3, 4, 5, 6), mm(50), mm(600), mm(2));
        assertThat(block.sentence()).endsWith("a strip of 5 cm (1 15/16 in) every 5.2 cm (2 1/16 in).");
    }

    private static Marker marker(List<Placement> placements) {
        MarkerOrder order = new MarkerOrder(SampleRuns.singleLayer().order().fabric(), mm(3), List.of());
        long end = placements.stream()
                .mapToLong(placement -> placement.outline().box().maxX())
                .max()
                .orElseThrow();
        return new Marker(order, placements, new Length(end));
    }

    private static Placement tie(QuarterTurn turn, long x, long y) {
        Piece tie = new Piece(
                "tie",
                SampleRuns.SMALL,
                Outline.of(Ring.of(0, 0, 400_000, 0, 400_000, 32_000, 0, 32_000)),
                Optional.empty(),
                Piece.Turning.ALONG_GRAIN,
                Optional.empty(),
                Optional.empty(),
                true,
                new PieceMarks(Optional.empty(), List.of(), List.of(), List.of()));
        Item item = new Item(tie, List.of(new Garment(1, SampleRuns.SMALL)), Hand.NONE, false);
        return new Placement(item, new Pose(new Orientation(false, turn), new Point(x, y)));
    }

    private static Length mm(double millimetres) {
        return SampleRuns.mm(millimetres);
    }
}
