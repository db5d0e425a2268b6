package lengthwise.job;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
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
        boolean followsPrint = strip.print().isPresent() && strip.print().get() == JobStrip.PrintUse.FOLLOW;
        Optional<QuarterTurn> up = followsPrint ? Optional.of(QuarterTurn.NONE) : Optional.empty();
        if (runs == JobStrip.Runs.BIAS) {
            return onBias(name, strip.cutWidth(), length, size, up);
        }
        boolean onFold = manner == Cut.Manner.ON_FOLD;
        long laid = onFold ? length.micrometres() / 2 : length.micrometres();
        long width = strip.cutWidth().micrometres();
        boolean crosswise = runs == JobStrip.Runs.CROSSWISE;
        Box box = crosswise ? new Box(0, 0, width, laid) : new Box(0, 0, laid, width);
        Point corner = new Point(0, 0);
        Segment end = new Segment(corner, crosswise ? new Point(width, 0) : new Point(0, width));
        Segment grain =
                new Segment(new Point(box.maxX() / 6, box.maxY() / 2), new Point(box.maxX() * 5 / 6, box.maxY() / 2));
        return new Piece(
                name,
                size,
                Outline.of(box.ring()),
                up,
                runs == JobStrip.Runs.EITHER ? Piece.Turning.ANY_QUARTER : Piece.Turning.ALONG_GRAIN,
                onFold ? Optional.of(end) : Optional.empty(),
                Optional.empty(),
                true,
                new PieceMarks(Optional.of(grain), List.of(), List.of(), List.of()));
    }

    /**
     * At exactly 45°: of each side the part along an axis is brought to the grid, which changes the side by less than a
     * micrometre. No fold of the cloth runs across it, so that it is laid whole.
     */
    private static Piece onBias(String name, Length width, Length length, Size size, Optional<QuarterTurn> up) {
        long along = diagonal(length);
        long across = diagonal(width);
        Ring ring = Ring.of(across, 0, across + along, along, along, along + across, 0, across);
        Segment line = new Segment(
                new Point((across + along / 3) / 2, (across + along / 3) / 2),
                new Point((across + along * 5 / 3) / 2, (across + along * 5 / 3) / 2));
        return new Piece(
                name,
                size,
                Outline.of(ring),
                up,
                Piece.Turning.ON_BIAS,
                Optional.empty(),
                Optional.empty(),
                true,
                new PieceMarks(Optional.of(line), List.of(), List.of(), List.of()));
    }

    private static long diagonal(Length side) {
        return StrictMath.round(side.micrometres() * StrictMath.sqrt(0.5));
    }

    /** Returns how often a strip is laid: on the bias a half is opened. */
    static Cut laid(Cut cut, Piece strip) {
        return strip.turning() == Piece.Turning.ON_BIAS ? new Cut(cut.count(), Cut.Manner.ALIKE) : cut;
    }

    /** Returns the strip enlarged for shrinkage that is added to pieces. */
    static Piece scaled(Piece strip, Fabric fabric) throws JobException {
        if (strip.turning() != Piece.Turning.ALONG_GRAIN && PieceMaking.addsUnevenShrinkage(fabric)) {
            throw new JobException(
                    strip.turning() == Piece.Turning.ON_BIAS
                            ? PieceMaking.biasShrinksUnevenly(strip.name(), fabric)
                            : ("%s may run either way, but %s shrinks differently each way and the shrinkage is added"
                                            + " to the pieces: say runs: lengthwise or runs: crosswise.")
                                    .formatted(strip.name(), fabric.name()));
        }
        return PieceMaking.withShrinkage(strip, fabric);
    }
}
