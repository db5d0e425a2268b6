package lengthwise.job;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Segment;
import lengthwise.model.Size;

/** Makes a tie or a binding: a rectangle in the frame of its fabric, or half of it where it is cut on the fold. */
final class StripMaking {
    private StripMaking() {}

    static Piece of(String name, JobStrip strip, Length length, Size size, Cut.Manner manner, Assumptions assumed) {
        JobStrip.Runs runs = strip.runs().orElseGet(() -> {
            assumed.note("%s runs lengthwise, on the straight grain.".formatted(name));
            return JobStrip.Runs.LENGTHWISE;
        });
        boolean onFold = manner == Cut.Manner.ON_FOLD;
        long laid = onFold ? length.micrometres() / 2 : length.micrometres();
        long width = strip.cutWidth().micrometres();
        boolean crosswise = runs == JobStrip.Runs.CROSSWISE;
        Box box = crosswise ? new Box(0, 0, width, laid) : new Box(0, 0, laid, width);
        Point corner = new Point(0, 0);
        Segment end = new Segment(corner, crosswise ? new Point(width, 0) : new Point(0, width));
        Segment grain =
                new Segment(new Point(box.maxX() / 6, box.maxY() / 2), new Point(box.maxX() * 5 / 6, box.maxY() / 2));
        boolean followsPrint = strip.print().isPresent() && strip.print().get() == JobStrip.PrintUse.FOLLOW;
        return new Piece(
                name,
                size,
                Outline.of(box.ring()),
                followsPrint ? Optional.of(QuarterTurn.NONE) : Optional.empty(),
                runs == JobStrip.Runs.EITHER ? Piece.Turning.ANY_QUARTER : Piece.Turning.ALONG_GRAIN,
                onFold ? Optional.of(end) : Optional.empty(),
                Optional.empty(),
                true,
                new PieceMarks(Optional.of(grain), List.of(), List.of(), List.of()));
    }

    /** Returns the strip enlarged for shrinkage that is added to pieces. */
    static Piece scaled(Piece strip, Fabric fabric) throws JobException {
        boolean differs = fabric.shrinkage().lengthwise() != fabric.shrinkage().crosswise();
        if (strip.turning() == Piece.Turning.ANY_QUARTER && PieceMaking.addsShrinkage(fabric) && differs) {
            throw new JobException(
                    ("%s may run either way, but %s shrinks differently each way and the shrinkage is added"
                                    + " to the pieces: say runs: lengthwise or runs: crosswise.")
                            .formatted(strip.name(), fabric.name()));
        }
        return PieceMaking.withShrinkage(strip, fabric);
    }
}
