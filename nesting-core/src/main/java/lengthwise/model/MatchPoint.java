package lengthwise.model;

import java.util.Optional;
import java.util.function.UnaryOperator;
import lengthwise.geometry.Point;

/**
 * A point of a piece that must fall on the print.
 *
 * @param at in the frame of the piece
 * @param tolerance how far it may be off, lengthwise and crosswise
 * @param along the one way in which it has to fall so; empty: both ways
 * @param to what it has to fall alike with; empty: on a point of the print's lattice
 */
public record MatchPoint(Point at, Length tolerance, Optional<Axis> along, Optional<Partner> to) {
    /** What a match point has to fall alike with: at the same place within the repeat, whichever that is. */
    public sealed interface Partner {
        /** A mark of another piece of the same garment; of a pair, that of the same hand. */
        record Mate(String piece, MarkRef at) implements Partner {}

        /** The same point on the other hand of its pair, mirrored about the print's axis. */
        record OtherHand() implements Partner {}
    }

    /** A match point that must fall on a point of the print's lattice. */
    public MatchPoint(Point at, Length tolerance) {
        this(at, tolerance, Optional.empty(), Optional.empty());
    }

    MatchPoint mapped(UnaryOperator<Point> map) {
        return new MatchPoint(map.apply(at), tolerance, along, to);
    }

    /** Says whether it binds the piece along an axis. */
    public boolean holds(Axis axis) {
        return along.isEmpty() || along.get() == axis;
    }

    /** Says whether it has a place of its own in the print. */
    public boolean isFixed() {
        return to.isEmpty();
    }
}
