package lengthwise.report;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import lengthwise.FabricRun;
import lengthwise.Filling;
import lengthwise.Run;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
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
import lengthwise.model.Shrinkage;
import lengthwise.model.Size;
import lengthwise.model.Spread;
import lengthwise.plan.Purchase;
import lengthwise.solver.Progress;
import lengthwise.solver.SearchResult.StopReason;

/** A run of two fabrics laid by hand: a pair and a tie in a single layer, a half, a pair and loops on folded cloth. */
final class SampleRuns {
    static final Size SMALL = new Size("S");

    private SampleRuns() {}

    static Run run() {
        return new Run(
                "Plover swim set",
                "0.1.0",
                7,
                2,
                true,
                List.of(fabricRun(singleLayer()), fabricRun(folded())),
                List.of("Mind the width."));
    }

    static FabricRun fabricRun(Marker marker) {
        return new FabricRun(
                marker,
                Length.ofMillimetres(150),
                Purchase.of(marker.length(), marker.order().fabric()),
                List.of(new FabricRun.Assumption("One layer.", "Folded: 1.20 m.")),
                List.of("One loop more than ordered."),
                List.of("One-way adds 4 cm."),
                List.of(new Filling.Kind("loop", 3, 5)),
                new Progress(1234, 5000, Duration.ofSeconds(3), 1),
                StopReason.BUDGET);
    }

    /**
     * 1500 mm wide, edges 20 mm, ends 20 mm, washed first at 3 % and 2 %; a pair of right triangles 200 × 100 mm and a
     * crosswise tie of 32 × 400 mm, on a marker of 300 mm. 12.00 for a metre, sold by 10 cm.
     */
    static Marker singleLayer() {
        Fabric fabric = fabric(
                "reef-print",
                new Spread(Spread.Form.SINGLE_LAYER, mm(20)),
                Direction.ONE_WAY,
                new Shrinkage(0.03, 0.02, Shrinkage.Handling.PRE_WASH),
                Optional.of(new Fabric.Price(12, mm(1000))));
        Piece cup = piece(
                "cup", Ring.of(0, 0, 200_000, 0, 0, 100_000), Optional.empty(), false, Optional.of(QuarterTurn.NONE));
        Piece tie = piece(
                "tie", Ring.of(0, 0, 32_000, 0, 32_000, 400_000, 0, 400_000), Optional.empty(), true, Optional.empty());
        Garment garment = new Garment(1, SMALL);
        return new Marker(
                order(
                        fabric,
                        garment,
                        new CutPiece(cup, new Cut(1, Cut.Manner.PAIR), Hand.LEFT),
                        new CutPiece(tie, new Cut(1, Cut.Manner.ALIKE), Hand.NONE)),
                List.of(
                        new Placement(
                                new Item(tie, List.of(garment), Hand.NONE, false),
                                new Pose(Orientation.AS_DRAWN, new Point(268_000, 0))),
                        new Placement(
                                new Item(cup, List.of(garment), Hand.LEFT, false),
                                new Pose(Orientation.AS_DRAWN, Point.ORIGIN)),
                        new Placement(
                                new Item(cup, List.of(garment), Hand.RIGHT, true),
                                new Pose(new Orientation(true, QuarterTurn.NONE), new Point(0, 250_000)))),
                mm(300));
    }

    /** The same cloth unwashed and folded, with no price: a half on the fold, a pair of triangles, a loop and its spare. */
    static Marker folded() {
        Fabric fabric = fabric(
                "sand lining",
                new Spread(Spread.Form.FOLD_LENGTHWISE, Length.ZERO),
                Direction.EITHER_WAY,
                Shrinkage.NONE,
                Optional.empty());
        Piece half = piece(
                "back",
                Ring.of(0, 0, 250_000, 0, 250_000, 100_000, 0, 150_000),
                Optional.of(new Segment(Point.ORIGIN, new Point(250_000, 0))),
                false,
                Optional.of(QuarterTurn.NONE));
        Piece cup = piece(
                "cup", Ring.of(0, 0, 200_000, 0, 0, 100_000), Optional.empty(), false, Optional.of(QuarterTurn.NONE));
        Piece loop = piece(
                "loop", Ring.of(0, 0, 60_000, 0, 60_000, 40_000, 0, 40_000), Optional.empty(), true, Optional.empty());
        Garment garment = new Garment(1, SMALL);
        return new Marker(
                order(
                        fabric,
                        garment,
                        new CutPiece(half, new Cut(1, Cut.Manner.ON_FOLD), Hand.NONE),
                        new CutPiece(cup, new Cut(1, Cut.Manner.PAIR), Hand.LEFT),
                        new CutPiece(loop, new Cut(1, Cut.Manner.ALIKE), Hand.NONE)),
                List.of(
                        laid(half, garment, 0, 0),
                        laid(cup, garment, 10_000, 200_000),
                        laid(loop, garment, 20_000, 400_000)),
                mm(250));
    }

    private static Placement laid(Piece piece, Garment garment, long x, long y) {
        return new Placement(
                new Item(piece, List.of(garment), Hand.NONE, false), new Pose(Orientation.AS_DRAWN, new Point(x, y)));
    }

    private static MarkerOrder order(Fabric fabric, Garment garment, CutPiece... pieces) {
        return new MarkerOrder(fabric, Length.ZERO, List.of(new Bundle(garment, List.of(pieces))));
    }

    private static Piece piece(
            String name, Ring ring, Optional<Segment> foldEdge, boolean strip, Optional<QuarterTurn> up) {
        Optional<Segment> grain = strip
                ? Optional.empty()
                : Optional.of(new Segment(new Point(10_000, 30_000), new Point(110_000, 30_000)));
        return new Piece(
                name,
                SMALL,
                Outline.of(ring),
                up,
                Piece.Turning.ALONG_GRAIN,
                foldEdge,
                Optional.empty(),
                strip,
                new PieceMarks(grain, List.of(), List.of(), List.of()));
    }

    static Fabric fabric(
            String name, Spread spread, Direction direction, Shrinkage shrinkage, Optional<Fabric.Price> price) {
        return new Fabric(
                name,
                "shell",
                mm(1500),
                Fabric.UnusableEdge.eachSide(mm(20)),
                direction,
                Optional.empty(),
                Optional.empty(),
                shrinkage,
                spread,
                price,
                mm(100),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }
}
