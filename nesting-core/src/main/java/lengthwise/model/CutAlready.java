package lengthwise.model;

import java.util.List;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;

/**
 * What is cut already of the cloth that an order goes on with: nothing of it moves any more.
 *
 * @param pieces those that are good: they stay where they are and count
 * @param spoilt those that are of no use: their cloth is gone, and they have to be cut again
 * @param upTo how far the cloth is cut into, from the start of the marker: before it lies the waste
 * @param planned where the others were to lie: a search may begin with that
 */
public record CutAlready(List<PlacedPiece> pieces, List<PlacedPiece> spoilt, Length upTo, List<PlacedPiece> planned) {
    /** The cloth is whole. */
    public static final CutAlready NONE = new CutAlready(List.of(), List.of(), Length.ZERO);

    /** How far off a piece may be that was read back from a file and still be the same one. */
    private static final long SAME = 20;

    public CutAlready {
        pieces = List.copyOf(pieces);
        spoilt = List.copyOf(spoilt);
        planned = List.copyOf(planned);
    }

    public CutAlready(List<PlacedPiece> pieces, List<PlacedPiece> spoilt, Length upTo) {
        this(pieces, spoilt, upTo, List.of());
    }

    public boolean isNone() {
        return pieces.isEmpty() && spoilt.isEmpty();
    }

    /** Returns the same with every piece spoilt over which a flaw lies; one that was planned there is planned no more. */
    public CutAlready under(List<Box> flaws) {
        return new CutAlready(
                pieces.stream().filter(piece -> !isUnder(piece, flaws)).toList(),
                Stream.concat(spoilt.stream(), pieces.stream().filter(piece -> isUnder(piece, flaws)))
                        .toList(),
                upTo,
                planned.stream().filter(piece -> !isUnder(piece, flaws)).toList());
    }

    /** Says whether one of some flaws lies over a piece. */
    public static boolean isUnder(PlacedPiece piece, List<Box> flaws) {
        return flaws.stream()
                .anyMatch(
                        flaw -> PlacedArea.of(piece.outline()).overlaps(PlacedArea.of(Outline.of(flaw.ring())), SAME));
    }

    /** Says whether a piece of a marker is one of those that are cut and good. */
    public boolean holds(Placement placement) {
        PlacedPiece laid = PlacedPiece.of(placement);
        return pieces.stream()
                .anyMatch(piece -> piece.isLabelledAs(laid)
                        && isSame(piece.outline().box(), laid.outline().box()));
    }

    private static boolean isSame(Box one, Box other) {
        return Math.abs(one.minX() - other.minX()) <= SAME
                && Math.abs(one.minY() - other.minY()) <= SAME
                && Math.abs(one.maxX() - other.maxX()) <= SAME
                && Math.abs(one.maxY() - other.maxY()) <= SAME;
    }
}
