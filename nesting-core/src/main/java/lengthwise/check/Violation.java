package lengthwise.check;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.model.Axis;
import lengthwise.model.Length;
import lengthwise.model.PlacedPiece;

/** Something that is wrong with a marker. Amounts are millimetres, square millimetres or degrees. */
public sealed interface Violation {
    /** Returns what is wrong, by how much and where, for the maker. */
    String sentence();

    /**
     * Two pieces have cloth in common.
     *
     * @param thickness diameter of the largest disc that fits in what they have in common
     */
    record Overlap(PlacedPiece piece, PlacedPiece other, double squareMillimetres, double thickness)
            implements Violation {
        @Override
        public String sentence() {
            return "%s overlaps %s: %s mm² in common, %s mm at its thickest."
                    .formatted(piece.called(), other.called(), amount(squareMillimetres), amount(thickness));
        }
    }

    /** Two pieces do not keep the gap. */
    record TooClose(PlacedPiece piece, PlacedPiece other, double distance, Length gap) implements Violation {
        @Override
        public String sentence() {
            return "%s lies %s mm from %s; the gap has to be %s mm."
                    .formatted(piece.called(), amount(distance), other.called(), amount(gap.millimetres()));
        }
    }

    /** A piece leaves the cuttable area over one of its edges. */
    record OffFabric(PlacedPiece piece, Edge edge, double by) implements Violation {
        /** The edges of the cuttable area, the end of the marker excepted. */
        public enum Edge {
            START("the start of the marker"),
            NEAR("the edge of the cuttable width at y = 0"),
            FOLD("the fold"),
            FAR("the far edge of the cuttable width"),
            FAR_FOLD("the far fold");

            private final String text;

            Edge(String text) {
                this.text = text;
            }
        }

        @Override
        public String sentence() {
            return "%s reaches %s mm over %s.".formatted(piece.called(), amount(by), edge.text);
        }
    }

    /** The marker's stated length ends before a piece does. */
    record LengthWrong(PlacedPiece piece, Length length, double by) implements Violation {
        @Override
        public String sentence() {
            return "The marker is said to be %s mm long, but %s ends %s mm after that."
                    .formatted(amount(length.millimetres()), piece.called(), amount(by));
        }
    }

    /** A piece lies over a flaw of the fabric. */
    record OverFlaw(PlacedPiece piece, Box flaw, double squareMillimetres, double thickness) implements Violation {
        @Override
        public String sentence() {
            return "%s lies over the flaw from x %s to %s mm, y %s to %s mm: %s mm² of it, %s mm at its thickest."
                    .formatted(
                            piece.called(),
                            amount(flaw.minX() / 1000.0),
                            amount(flaw.maxX() / 1000.0),
                            amount(flaw.minY() / 1000.0),
                            amount(flaw.maxY() / 1000.0),
                            amount(squareMillimetres),
                            amount(thickness));
        }
    }

    /** A piece reaches over the end of the cloth that is on hand. */
    record BeyondCloth(PlacedPiece piece, Length room, double by) implements Violation {
        @Override
        public String sentence() {
            return "%s reaches %s mm over the end of the cloth: there is room for a marker of %s mm."
                    .formatted(piece.called(), amount(by), amount(room.millimetres()));
        }
    }

    /** A piece leaves the outline of the remnant that it is cut from. */
    record OffRemnant(PlacedPiece piece, double squareMillimetres, double thickness) implements Violation {
        @Override
        public String sentence() {
            return "%s leaves the remnant: %s mm² of it lie outside, %s mm at its thickest."
                    .formatted(piece.called(), amount(squareMillimetres), amount(thickness));
        }
    }

    /** Says whether it depends on what else is in the marker, so that a part of a marker may show it where the whole does not. */
    default boolean isOfTheCount() {
        return this instanceof Missing
                || this instanceof Surplus
                || this instanceof WrongHand
                || this instanceof WrongWayInGarment
                || this instanceof GarmentApart
                || this instanceof PairApart;
    }

    /** A garment is cut from several pieces of cloth, where all of it has to come from one. */
    record GarmentApart(String garment, List<String> cloths) implements Violation {
        public GarmentApart {
            cloths = List.copyOf(cloths);
        }

        @Override
        public String sentence() {
            return "Garment %s is cut from %s; all of it has to come from one piece of cloth."
                    .formatted(garment, String.join(" and ", cloths));
        }
    }

    /** Left and right of a pair are cut from different pieces of cloth. */
    record PairApart(String piece, String size, String garment, List<String> cloths) implements Violation {
        public PairApart {
            cloths = List.copyOf(cloths);
        }

        @Override
        public String sentence() {
            return "Left and right of %s%s of garment %s are cut from %s; a pair comes from one piece of cloth."
                    .formatted(piece, size.isEmpty() ? "" : " " + size, garment, String.join(" and ", cloths));
        }
    }

    /** A piece that is cut already does not lie where it was cut. */
    record NotWhereCut(PlacedPiece piece, double by) implements Violation {
        @Override
        public String sentence() {
            return "%s is cut already and does not lie where it was cut: it is up to %s mm away from there."
                    .formatted(piece.called(), amount(by));
        }
    }

    /** A piece lies where the cloth is gone: a piece was cut there that is of no use. */
    record OverCutAway(PlacedPiece piece, PlacedPiece gone, double squareMillimetres, double millimetres)
            implements Violation {
        @Override
        public String sentence() {
            return "%s lies over the hole where %s was cut: %s mm² of it, up to %s mm deep."
                    .formatted(piece.called(), gone.called(), amount(squareMillimetres), amount(millimetres));
        }
    }

    /** A piece lies across the line where two selvedges meet. */
    record OverJoin(PlacedPiece piece, double by) implements Violation {
        @Override
        public String sentence() {
            return "%s reaches %s mm into the join of the two selvedges.".formatted(piece.called(), amount(by));
        }
    }

    /** A piece with an up end is cut through layers whose up ends point opposite ways. */
    record UpsideDownBelow(PlacedPiece piece) implements Violation {
        @Override
        public String sentence() {
            return "%s is cut through layers whose up ends point opposite ways: every second one comes out upside down."
                    .formatted(piece.called());
        }
    }

    /** A piece does not lie on grain. */
    record OffGrain(PlacedPiece piece, double degrees) implements Violation {
        @Override
        public String sentence() {
            return "%s lies %s° off grain.".formatted(piece.called(), amount(degrees));
        }
    }

    /** Left and right of a piece are not tilted equally and oppositely. */
    record TiltedUnlike(PlacedPiece piece, PlacedPiece other, double degrees) implements Violation {
        @Override
        public String sentence() {
            return "%s and %s are a pair, but tilted unlike by %s°: they have to be tilted equally and oppositely."
                    .formatted(piece.called(), other.called(), amount(degrees));
        }
    }

    /** A piece lies in the unusable edge of the cloth, and not with its straight edge on the selvedge. */
    record OffSelvedge(PlacedPiece piece, double by) implements Violation {
        @Override
        public String sentence() {
            return by == 0
                    ? "%s lies on the selvedge, but not with its longest straight edge.".formatted(piece.called())
                    : "%s lies in the unusable edge of the cloth, but %s mm off the selvedge."
                            .formatted(piece.called(), amount(by));
        }
    }

    /**
     * A piece that is keyed to a border does not lie as the border asks.
     *
     * @param turned whether it lies across the cloth, the right way round
     */
    record OffBorder(PlacedPiece piece, boolean turned, double by) implements Violation {
        @Override
        public String sentence() {
            return turned
                    ? "%s lies %s mm off the line of its border.".formatted(piece.called(), amount(by))
                    : "%s does not lie across the cloth with its up end away from its border."
                            .formatted(piece.called());
        }
    }

    /** A piece leaves the zone of the cloth that it belongs to. */
    record OutOfZone(PlacedPiece piece, String zone, double by) implements Violation {
        @Override
        public String sentence() {
            return "%s reaches %s mm out of the zone %s.".formatted(piece.called(), amount(by), zone);
        }
    }

    /** A piece that is to be cut on the bias does not lie at 45° to the selvedge. */
    record OffBias(PlacedPiece piece, double degrees) implements Violation {
        @Override
        public String sentence() {
            return "%s lies %s° off the true bias, which is 45° to the selvedge."
                    .formatted(piece.called(), amount(degrees));
        }
    }

    /** The up end of a piece does not point to the up end of the fabric. */
    record WrongWayUp(PlacedPiece piece, int degrees) implements Violation {
        @Override
        public String sentence() {
            return "%s lies the wrong way up on one-way fabric: its up end points %d° away from the fabric's."
                    .formatted(piece.called(), degrees);
        }
    }

    /** A piece lies the other way than the other pieces of its garment, on fabric where they must agree. */
    record WrongWayInGarment(PlacedPiece piece) implements Violation {
        @Override
        public String sentence() {
            return "%s lies the other way than the rest of its garment; on this fabric all pieces of a garment lie the"
                            .formatted(piece.called())
                    + " same way.";
        }
    }

    /** What is cut would be the mirror image of what the order wants, or carries the wrong letter. */
    record WrongHand(PlacedPiece piece, String why) implements Violation {
        @Override
        public String sentence() {
            return "%s %s.".formatted(piece.called(), why);
        }
    }

    /** The outline is not the one that was ordered. */
    record WrongShape(PlacedPiece piece, double by) implements Violation {
        @Override
        public String sentence() {
            return "The cut line of %s is not the ordered one: it is up to %s mm away from it."
                    .formatted(piece.called(), amount(by));
        }
    }

    /** The match point of a piece is not on the print's lattice. */
    record OffMatchPoint(PlacedPiece piece, double lengthwise, double crosswise, Length tolerance)
            implements Violation {
        @Override
        public String sentence() {
            return "The match point of %s is %s mm lengthwise and %s mm crosswise off the print; %s mm is allowed."
                    .formatted(piece.called(), amount(lengthwise), amount(crosswise), amount(tolerance.millimetres()));
        }
    }

    /**
     * A piece lies over a motif of the print that it is to keep off.
     *
     * @param mark the mark that does; empty: the piece itself
     * @param by how deep the mark lies in it, or how thick the part of the piece is that lies over it
     */
    record OverMotif(PlacedPiece piece, String mark, String motif, double by) implements Violation {
        @Override
        public String sentence() {
            return mark.isEmpty()
                    ? "%s lies over the motif %s, which it keeps off: %s mm of it at its thickest."
                            .formatted(piece.called(), motif, amount(by))
                    : "The %s of %s lies %s mm inside the motif %s, which it keeps off."
                            .formatted(mark, piece.called(), amount(by), motif);
        }
    }

    /** A mark of a piece does not lie on the motif that it is to lie on. */
    record BesideMotif(PlacedPiece piece, String mark, String motif, double by) implements Violation {
        @Override
        public String sentence() {
            return "The %s of %s lies %s mm beside the motif %s, on which it has to lie."
                    .formatted(mark, piece.called(), amount(by), motif);
        }
    }

    /** Two pieces that are matched to each other do not lie alike in the print. */
    record OffMatchedPiece(PlacedPiece piece, PlacedPiece other, double lengthwise, double crosswise, Length tolerance)
            implements Violation {
        @Override
        public String sentence() {
            return "%s and %s are matched, but lie %s mm lengthwise and %s mm crosswise off each other in the print; %s mm is allowed."
                    .formatted(
                            piece.called(),
                            other.called(),
                            amount(lengthwise),
                            amount(crosswise),
                            amount(tolerance.millimetres()));
        }
    }

    /** Two pieces that are matched to each other are turned one against the other. */
    record TurnedFromMatch(PlacedPiece piece, PlacedPiece other) implements Violation {
        @Override
        public String sentence() {
            return "%s and %s are matched, but one is turned round or over: they have to lie the same way."
                    .formatted(piece.called(), other.called());
        }
    }

    /** Plies are matched, but the next one would begin in the middle of a repeat. */
    record SplitRepeat(Length onward, Length repeat, double by) implements Violation {
        @Override
        public String sentence() {
            return "From the start of one ply to the start of the next it is %s mm; the plies are matched, and that is %s mm off a whole number of repeats of %s mm."
                    .formatted(amount(onward.millimetres()), amount(by), amount(repeat.millimetres()));
        }
    }

    /** The fold edge of a half piece is not on the fold. */
    record OffFold(PlacedPiece piece, double by) implements Violation {
        @Override
        public String sentence() {
            return "The fold edge of %s is %s mm off the fold, which is %s mm on the opened piece."
                    .formatted(piece.called(), amount(by), amount(2 * by));
        }
    }

    /** What is to be of one shade takes more of the cloth than allowed. */
    record TooFarApart(PlacedPiece first, PlacedPiece last, int garment, Axis axis, Length extent, Length most)
            implements Violation {
        @Override
        public String sentence() {
            return "From %s to %s garment %d takes %s mm of the cloth %s; for one shade %s mm are allowed."
                    .formatted(
                            first.called(),
                            last.called(),
                            garment,
                            amount(extent.millimetres()),
                            axis == Axis.LENGTHWISE ? "lengthwise" : "crosswise",
                            amount(most.millimetres()));
        }
    }

    /** A piece bears another name than its garment. */
    record WrongCustomer(PlacedPiece piece, String ordered) implements Violation {
        @Override
        public String sentence() {
            return "%s is ordered for %s, but %s is written on it."
                    .formatted(
                            piece.called(),
                            ordered.isEmpty() ? "nobody by name" : ordered,
                            piece.customers().isEmpty() ? "no name" : piece.customers());
        }
    }

    /** Something ordered is not there. */
    record Missing(String piece, String size, String garment, String what, int count) implements Violation {
        @Override
        public String sentence() {
            return "Garment %s lacks %d × %s%s%s."
                    .formatted(
                            garment, count, piece, size.isEmpty() ? "" : " " + size, what.isEmpty() ? "" : ", " + what);
        }
    }

    /** There is more of a piece than was ordered. */
    record Surplus(PlacedPiece piece, int count) implements Violation {
        @Override
        public String sentence() {
            return "There %s more of %s than ordered."
                    .formatted(count == 1 ? "is one" : "are " + count, piece.called());
        }
    }

    /** A piece that the order does not name. */
    record NotOrdered(PlacedPiece piece) implements Violation {
        @Override
        public String sentence() {
            return "%s is not in the order.".formatted(piece.called());
        }
    }

    private static String amount(double value) {
        if (Math.abs(value) > 0 && Math.abs(value) < 0.0005) {
            return "less than 0.001";
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_UP);
        return rounded.stripTrailingZeros().toPlainString();
    }
}
