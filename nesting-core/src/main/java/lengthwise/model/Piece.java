package lengthwise.model;

import java.util.Optional;
import java.util.function.UnaryOperator;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;

/**
 * A pattern piece in one size, in the frame of its fabric: laid at no turn, its grain runs along +x; on the bias it is the
 * cloth's grain that does, and the piece lies at 45° to it.
 *
 * @param name the maker's name for it, the same in every size
 * @param outline the cut line, seam allowance included
 * @param up where the up end points: none = +x; empty where the piece may lie either way in the print (a strip that
 *     ignores it, a piece for plain cloth). A piece that must know its up end and does not never gets here: the maker is
 *     asked
 * @param foldEdge the straight edge of a half piece that lies on the fold
 * @param matchPoint the point that must fall on the print
 * @param strip a plain rectangle cut as a strip: a tie, a binding
 */
public record Piece(
        String name,
        Size size,
        Outline outline,
        Optional<QuarterTurn> up,
        Turning turning,
        Optional<Segment> foldEdge,
        Optional<MatchPoint> matchPoint,
        boolean strip,
        PieceMarks marks) {
    /** Which turns, from the frame of the fabric, the piece allows by itself; the fabric's direction restricts them. */
    public enum Turning {
        /** Grain parallel to the selvedge, either end first. */
        ALONG_GRAIN,
        /** Any quarter turn: a strip that may run lengthwise or crosswise. */
        ANY_QUARTER,
        /**
         * Cut on the bias: the piece's own line runs at 45° to the selvedge, at no turn from +x to +y, and a quarter turn
         * takes it to the other bias. Where an up end points to +x, it points half way from +x to +y.
         */
        ON_BIAS
    }

    /** Returns this piece carried over by a map of the plane that keeps the grain along x. */
    public Piece mapped(UnaryOperator<Point> map) {
        return new Piece(
                name,
                size,
                outline.mapped(map),
                up,
                turning,
                foldEdge.map(edge -> new Segment(map.apply(edge.from()), map.apply(edge.to()))),
                matchPoint.map(match -> match.mapped(map)),
                strip,
                marks.mapped(map));
    }

    /** Returns the direction of the up end, where the piece has one; its length does not matter. */
    public Optional<Point> upEnd() {
        return up.map(turn -> turn.apply(new Point(1, turning == Turning.ON_BIAS ? 1 : 0)));
    }

    /** Says whether the mirrored outline is this outline, moved or given a half turn: left and right are the same. */
    public boolean isSymmetric() {
        return isSymmetricAboutGrain()
                || isItsMirrorImage(turning == Turning.ON_BIAS ? QuarterTurn.THREE_QUARTERS : QuarterTurn.HALF);
    }

    /** Says whether the outline mirrored about its grain is this outline, moved: the same also with its up end up. */
    public boolean isSymmetricAboutGrain() {
        return isItsMirrorImage(turning == Turning.ON_BIAS ? QuarterTurn.QUARTER : QuarterTurn.NONE);
    }

    /** Says whether the outline mirrored about the x axis and turned is this outline, moved. */
    private boolean isItsMirrorImage(QuarterTurn turn) {
        return Congruence.byTranslation(outline, new Orientation(true, turn).apply(outline));
    }
}
