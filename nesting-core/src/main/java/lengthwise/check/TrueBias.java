package lengthwise.check;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;

/**
 * A piece that is cut on the bias lies at 45° to the selvedge, by the line that is drawn on it or by the long side of a
 * strip. It is measured on what lies there, so that a piece that was turned wrongly when it was made is found as well.
 */
final class TrueBias implements PieceRule {
    /** How far the two ends of a line may be off for having been brought to the grid twice, together, in micrometres. */
    private static final double GRID_ROUNDING = 3;

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        return wanted.piece().turning() != Piece.Turning.ON_BIAS
                || line(wanted.piece(), reading)
                        .map(line -> degreesOff(line) <= StrictMath.toDegrees(GRID_ROUNDING / length(line)))
                        .orElse(true);
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        return new Violation.OffBias(
                placed, degreesOff(line(wanted.piece(), reading).orElseThrow()));
    }

    private static Optional<Point> line(Piece piece, Reading reading) {
        Optional<Point> own = piece.strip()
                ? longestEdge(piece.outline().shell())
                : piece.marks().grainLine().map(line -> line.to().minus(line.from()));
        return own.map(reading.pose().orientation()::apply);
    }

    private static Optional<Point> longestEdge(Ring ring) {
        return IntStream.range(0, ring.size()).mapToObj(ring::edge).max(Comparator.comparingDouble(TrueBias::length));
    }

    private static double length(Point way) {
        return way.distance(Point.ORIGIN);
    }

    private static double degreesOff(Point way) {
        double degrees = StrictMath.toDegrees(StrictMath.atan2((double) way.y(), (double) way.x()));
        return Math.abs(Math.abs(degrees - 90 * Math.rint(degrees / 90)) - 45);
    }
}
