package lengthwise.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.Cut.Manner;
import lengthwise.model.CutPiece;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.MatchPoint;
import lengthwise.model.Piece;
import lengthwise.model.Piece.Turning;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.Size;
import lengthwise.testing.TestFabric;

/** Pieces laid by hand on a cloth one metre square: what the tests of single rules are made of. */
final class Laying {
    static final Size S = new Size("S");
    static final Garment ONE = new Garment(1, S);
    static final Garment TWO = new Garment(2, S);

    /** No two of its eight orientations look alike. 100 mm long, 60 mm high. */
    static final Outline SLEEVE = Outline.of(Ring.of(0, 0, 100_000, 0, 70_000, 40_000, 20_000, 60_000));

    static final Outline BLOCK = Outline.of(new Box(0, 0, 100_000, 30_000).ring());
    static final Length METRE = Length.ofMillimetres(1000);

    static final Orientation FLIPPED = new Orientation(true, QuarterTurn.NONE);
    static final Orientation TURNED = turned(QuarterTurn.HALF);

    private Laying() {}

    /** One metre wide, nothing lost. */
    static TestFabric cloth() {
        return TestFabric.plain().width(1000, 0);
    }

    static TestFabric folded() {
        return cloth().folded();
    }

    static <T extends Violation> T only(Class<T> kind, List<Violation> violations) {
        assertThat(violations).singleElement().isInstanceOf(kind);
        return kind.cast(violations.get(0));
    }

    static List<Violation> check(MarkerOrder order, Placement... placements) {
        return MarkerCheck.violations(marker(order, placements));
    }

    static List<Violation> check(MarkerOrder order, PlacedPiece piece) {
        return MarkerCheck.violations(order, List.of(piece), METRE, Length.ZERO);
    }

    static Marker marker(MarkerOrder order, Placement... placements) {
        return new Marker(order, List.of(placements), METRE);
    }

    static MarkerOrder order(TestFabric fabric, Bundle... bundles) {
        return new MarkerOrder(fabric.fabric(), Length.ZERO, List.of(bundles));
    }

    static Bundle bundle(Garment garment, CutPiece... pieces) {
        return new Bundle(garment, List.of(pieces));
    }

    static CutPiece alike(Piece piece, int count) {
        return new CutPiece(piece, new Cut(count, Manner.ALIKE), Hand.NONE);
    }

    static CutPiece pair(Piece piece, int count) {
        return new CutPiece(piece, new Cut(count, Manner.PAIR), Hand.NONE);
    }

    static Item item(Piece piece, Hand hand, Garment... garments) {
        return new Item(piece, List.of(garments), hand, false);
    }

    static Placement placed(Piece piece, Garment garment, long x, long y) {
        return placed(piece, garment, Orientation.AS_DRAWN, x, y);
    }

    static Placement placed(Piece piece, Garment garment, Orientation orientation, long x, long y) {
        return placed(item(piece, Hand.NONE, garment), orientation, x, y);
    }

    static Placement placed(Item item, Orientation orientation, long x, long y) {
        return new Placement(item, new Pose(orientation, new Point(x, y)));
    }

    static PlacedPiece read(Piece piece, String hand, Outline outline) {
        return new PlacedPiece(piece.name(), piece.size().name(), List.of(1), hand, outline);
    }

    static Orientation turned(QuarterTurn turn) {
        return new Orientation(false, turn);
    }

    static Outline rotated(Outline outline, double degrees) {
        double cosine = Math.cos(Math.toRadians(degrees));
        double sine = Math.sin(Math.toRadians(degrees));
        return outline.mapped(
                p -> new Point(Math.round(cosine * p.x() - sine * p.y()), Math.round(sine * p.x() + cosine * p.y())));
    }

    static Piece sleeve() {
        return piece("sleeve", SLEEVE);
    }

    static Piece block() {
        return piece("block", BLOCK);
    }

    static Piece strip() {
        return with(piece("tie", BLOCK), Turning.ANY_QUARTER);
    }

    static Piece wedge(Turning turning) {
        return with(piece("wedge", SLEEVE), turning);
    }

    /** Fold edge along y = 0, body on its far side. */
    static Piece halfBack() {
        Piece half = piece("back", Outline.of(Ring.of(0, 0, 80_000, 0, 80_000, 50_000, 0, 20_000)));
        return new Piece(
                half.name(),
                half.size(),
                half.outline(),
                half.up(),
                half.turning(),
                Optional.of(new Segment(Point.ORIGIN, new Point(80_000, 0))),
                Optional.empty(),
                false,
                PieceMarks.NONE);
    }

    static Piece piece(String name, Outline outline) {
        return new Piece(
                name,
                S,
                outline,
                Optional.of(QuarterTurn.NONE),
                Turning.ALONG_GRAIN,
                Optional.empty(),
                Optional.empty(),
                false,
                PieceMarks.NONE);
    }

    static Piece with(Piece piece, Turning turning) {
        return new Piece(
                piece.name(),
                S,
                piece.outline(),
                piece.up(),
                turning,
                Optional.empty(),
                Optional.empty(),
                true,
                PieceMarks.NONE);
    }

    static Piece withUp(Piece piece, Optional<QuarterTurn> up) {
        return new Piece(
                piece.name(),
                S,
                piece.outline(),
                up,
                piece.turning(),
                Optional.empty(),
                Optional.empty(),
                piece.strip(),
                PieceMarks.NONE);
    }

    static Piece withMatchPoint(Piece piece, Point at, Length tolerance) {
        return new Piece(
                piece.name(),
                S,
                piece.outline(),
                piece.up(),
                piece.turning(),
                Optional.empty(),
                Optional.of(new MatchPoint(at, tolerance)),
                false,
                PieceMarks.NONE);
    }

    static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }
}
