package lengthwise.testing;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Axis;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.MarkRef;
import lengthwise.model.MarkerOrder;
import lengthwise.model.MatchPoint;
import lengthwise.model.MatchPoint.Partner;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Segment;
import lengthwise.model.Size;

/** Small pieces and orders for tests; lengths in millimetres. */
public final class TestPieces {
    private TestPieces() {}

    public static Ring ring(double... millimetres) {
        return Ring.of(IntStream.range(0, millimetres.length)
                .mapToLong(i -> Length.ofMillimetres(millimetres[i]).micrometres())
                .toArray());
    }

    public static Piece piece(String name, Optional<QuarterTurn> up, double... millimetres) {
        return new Piece(
                name,
                Size.ONE,
                Outline.of(ring(millimetres)),
                up,
                Piece.Turning.ALONG_GRAIN,
                Optional.empty(),
                Optional.empty(),
                false,
                PieceMarks.NONE);
    }

    /** A right triangle with the right angle at the origin: no symmetry. */
    public static Piece triangle(String name, double along, double across) {
        return piece(name, Optional.of(QuarterTurn.NONE), 0, 0, along, 0, 0, across);
    }

    public static Piece rectangle(String name, double along, double across) {
        return piece(name, Optional.of(QuarterTurn.NONE), 0, 0, along, 0, along, across, 0, across);
    }

    /** A strip that ignores the print. */
    public static Piece strip(String name, double along, double across) {
        return new Piece(
                name,
                Size.ONE,
                Outline.of(ring(0, 0, along, 0, along, across, 0, across)),
                Optional.empty(),
                Piece.Turning.ALONG_GRAIN,
                Optional.empty(),
                Optional.empty(),
                true,
                PieceMarks.NONE);
    }

    /** The piece with the fold edge from (0, 0) to (along, 0). */
    public static Piece onFold(Piece piece, double along) {
        return new Piece(
                piece.name(),
                piece.size(),
                piece.outline(),
                piece.up(),
                piece.turning(),
                Optional.of(new Segment(
                        Point.ORIGIN, new Point(Length.ofMillimetres(along).micrometres(), 0))),
                piece.matchPoint(),
                piece.strip(),
                piece.marks());
    }

    /** The piece with drill holes at these x and y in turn. */
    public static Piece holed(Piece piece, double... millimetres) {
        List<Point> holes = IntStream.range(0, millimetres.length / 2)
                .mapToObj(i -> new Point(
                        Length.ofMillimetres(millimetres[2 * i]).micrometres(),
                        Length.ofMillimetres(millimetres[2 * i + 1]).micrometres()))
                .toList();
        return with(piece, piece.matchPoint(), new PieceMarks(Optional.empty(), List.of(), holes, List.of()));
    }

    /** A drill hole of a piece. */
    public static MarkRef hole(int number) {
        return new MarkRef(MarkRef.Kind.DRILL_HOLE, number);
    }

    /** The piece matched by its first drill hole. */
    public static Piece matched(Piece piece, double toleranceMillimetres, Optional<Axis> along, Optional<Partner> to) {
        MatchPoint match = new MatchPoint(
                piece.marks().drillHoles().get(0), Length.ofMillimetres(toleranceMillimetres), along, to);
        return with(piece, Optional.of(match), piece.marks());
    }

    private static Piece with(Piece piece, Optional<MatchPoint> match, PieceMarks marks) {
        return new Piece(
                piece.name(),
                piece.size(),
                piece.outline(),
                piece.up(),
                piece.turning(),
                piece.foldEdge(),
                match,
                piece.strip(),
                marks);
    }

    public static Optional<Partner> mate(String piece, int hole) {
        return Optional.of(new Partner.Mate(piece, hole(hole)));
    }

    public static Optional<Partner> otherHand() {
        return Optional.of(new Partner.OtherHand());
    }

    public static CutPiece cut(Piece piece, int count, Cut.Manner manner) {
        return new CutPiece(piece, new Cut(count, manner), manner == Cut.Manner.PAIR ? Hand.RIGHT : Hand.NONE);
    }

    /** An order for a number of equal garments. */
    public static MarkerOrder order(Fabric fabric, double gapMillimetres, int garments, CutPiece... pieces) {
        return new MarkerOrder(
                fabric,
                Length.ofMillimetres(gapMillimetres),
                IntStream.rangeClosed(1, garments)
                        .mapToObj(number -> new Bundle(new Garment(number, Size.ONE), List.of(pieces)))
                        .toList());
    }
}
