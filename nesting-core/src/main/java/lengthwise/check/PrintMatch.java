package lengthwise.check;

import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MatchPoint;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Repeat;
import lengthwise.model.Spread;

/**
 * The match point of a piece that has a place of its own in the print falls on a point of the print's lattice, within its tolerance along and across. Through two
 * layers that meet in a fold at y = 0 it does so in both: what lies at y in the one is at −y of the opened cloth in the
 * other.
 */
final class PrintMatch implements PieceRule {
    private final Optional<Repeat> repeat;
    private final boolean folded;
    private final Length tolerance;

    PrintMatch(Fabric fabric, Length tolerance) {
        this.repeat = fabric.repeatOnTable();
        this.folded = fabric.spread().form() == Spread.Form.FOLD_LENGTHWISE;
        this.tolerance = tolerance;
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        return fixed(wanted)
                .map(match -> PrintLattice.largest(off(match, reading))
                        <= match.tolerance().micrometres() + tolerance.micrometres() + reading.deviation())
                .orElse(true);
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        MatchPoint match = fixed(wanted).orElseThrow();
        Point off = off(match, reading);
        return new Violation.OffMatchPoint(
                placed, Math.abs(off.x()) / 1000.0, Math.abs(off.y()) / 1000.0, match.tolerance());
    }

    private Optional<MatchPoint> fixed(Wanted wanted) {
        return wanted.piece().matchPoint().filter(match -> repeat.isPresent() && match.isFixed());
    }

    private Point off(MatchPoint match, Reading reading) {
        PrintLattice lattice = PrintLattice.of(repeat.orElseThrow(), match);
        Point origin = new Point(
                repeat.orElseThrow().originX().micrometres(),
                repeat.orElseThrow().originY().micrometres());
        Point point = reading.pose().apply(match.at());
        Point upper = lattice.off(point.minus(origin));
        Point lower = folded ? lattice.off(new Point(point.x(), -point.y()).minus(origin)) : upper;
        return PrintLattice.largest(lower) > PrintLattice.largest(upper) ? lower : upper;
    }
}
