package lengthwise.model;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.geometry.Box;

/**
 * A cloth as the maker buys it.
 *
 * @param name the maker's name for it; names the marker's file
 * @param role what it is for: shell, lining …
 * @param width from selvedge to selvedge as bought
 * @param unusableEdge strip along each selvedge that no piece may touch, as bought
 * @param mostStretch the direction of greatest stretch, where known
 * @param soldBy the shop's step
 * @param flaws bad rectangles, in marker coordinates (after washing, if pre-washed)
 * @param onHand what there is of it; empty where as much as need be can be bought
 * @param pile where it has one; such a fabric is one-way
 * @param buying what is bought of it beyond the need, and what it weighs
 * @param shade how near to each other the pieces of a garment lie, where its colour drifts
 */
public record Fabric(
        String name,
        String role,
        Length width,
        UnusableEdge unusableEdge,
        Direction direction,
        Optional<Axis> mostStretch,
        Optional<Repeat> repeat,
        Shrinkage shrinkage,
        Spread spread,
        Optional<Price> price,
        Length soldBy,
        List<Box> flaws,
        Optional<OnHand> onHand,
        Optional<Pile> pile,
        Buying buying,
        Optional<Shade> shade) {
    /** Two selvedges cannot be laid edge to edge more exactly than this: common practice, no source. */
    private static final Length LEAST_JOIN = Length.ofMillimetres(1);

    public Fabric {
        flaws = List.copyOf(flaws);
    }

    /** Cloth of one shade. */
    public Fabric(
            String name,
            String role,
            Length width,
            UnusableEdge unusableEdge,
            Direction direction,
            Optional<Axis> mostStretch,
            Optional<Repeat> repeat,
            Shrinkage shrinkage,
            Spread spread,
            Optional<Price> price,
            Length soldBy,
            List<Box> flaws,
            Optional<OnHand> onHand,
            Optional<Pile> pile,
            Buying buying) {
        this(
                name,
                role,
                width,
                unusableEdge,
                direction,
                mostStretch,
                repeat,
                shrinkage,
                spread,
                price,
                soldBy,
                flaws,
                onHand,
                pile,
                buying,
                Optional.empty());
    }

    /** Cloth that is bought just as it is needed, of unknown weight. */
    public Fabric(
            String name,
            String role,
            Length width,
            UnusableEdge unusableEdge,
            Direction direction,
            Optional<Axis> mostStretch,
            Optional<Repeat> repeat,
            Shrinkage shrinkage,
            Spread spread,
            Optional<Price> price,
            Length soldBy,
            List<Box> flaws,
            Optional<OnHand> onHand,
            Optional<Pile> pile) {
        this(
                name,
                role,
                width,
                unusableEdge,
                direction,
                mostStretch,
                repeat,
                shrinkage,
                spread,
                price,
                soldBy,
                flaws,
                onHand,
                pile,
                Buying.JUST_ENOUGH);
    }

    /**
     * What the maker buys beyond what is laid, and what the cloth weighs.
     *
     * @param squaring what is cut off each end of the bought length to make it square
     * @param flaws what is bought more for flaws that are not known yet: a share of what is needed, 0.03 for 3 %
     * @param weight in grams per square metre, where known
     */
    public record Buying(Length squaring, double flaws, OptionalDouble weight) {
        /** Nothing more, and the weight is not known. */
        public static final Buying JUST_ENOUGH = new Buying(Length.ZERO, 0, OptionalDouble.empty());

        /** Returns the weight of a length of cloth in grams, where it is known. */
        public OptionalDouble grams(Length length, Length width) {
            return weight.isPresent()
                    ? OptionalDouble.of(weight.getAsDouble() * length.millimetres() * width.millimetres() / 1e6)
                    : weight;
        }
    }

    /** The strips along the two selvedges: the one at y = 0 and the far one. */
    public record UnusableEdge(Length near, Length far) {
        public static UnusableEdge eachSide(Length width) {
            return new UnusableEdge(width, width);
        }
    }

    /** What the shop asks for a length of the fabric; the currency is the maker's own and is not named. */
    public record Price(double amount, Length per) {}

    /**
     * Returns the width that pieces may use on the table: nominal width less the unusable edges, half of it on
     * lengthwise-folded fabric, narrower by the crosswise shrinkage if the cloth is washed first. Where folds lie on
     * both sides all of the laid width may be used, but for the {@link #join}.
     */
    public Length cuttableWidth() {
        return switch (spread.form()) {
            case SINGLE_LAYER, FOLD_CROSSWISE, PLIES_FACE_UP, PLIES_FACE_TO_FACE ->
                width.minus(unusableEdge.near()).minus(unusableEdge.far()).scaled(widthKept());
            case FOLD_LENGTHWISE ->
                new Length(width.micrometres() / 2)
                        .minus(Length.max(unusableEdge.near(), unusableEdge.far()))
                        .scaled(widthKept());
            case SELVEDGES_TO_MIDDLE, TUBE -> laidWidth();
        };
    }

    /** Returns the width of the cloth as it lies on the table: washed if it is washed first, half of it if folded. */
    public Length laidWidth() {
        return switch (spread.form()) {
            case SINGLE_LAYER, FOLD_CROSSWISE, PLIES_FACE_UP, PLIES_FACE_TO_FACE, TUBE -> width.scaled(widthKept());
            case FOLD_LENGTHWISE, SELVEDGES_TO_MIDDLE -> new Length(width.micrometres() / 2).scaled(widthKept());
        };
    }

    /**
     * Returns the strips, as they lie on the table, on the two sides of the cuttable area. There is none along a fold.
     */
    public UnusableEdge edgesOnTable() {
        Length near =
                spread.isFoldedLengthwise() ? Length.ZERO : unusableEdge.near().scaled(widthKept());
        return new UnusableEdge(near, laidWidth().minus(near).minus(cuttableWidth()));
    }

    /** A band along the whole marker, across it from one y to another. */
    public record Band(Length from, Length to) {}

    /**
     * Returns where the two selvedges meet along the middle of the laid cloth, with their unusable edges and at least
     * {@link #LEAST_JOIN} of each: nothing is cut across it.
     */
    public Optional<Band> join() {
        if (spread.form() != Spread.Form.SELVEDGES_TO_MIDDLE) {
            return Optional.empty();
        }
        Length middle = new Length(width.micrometres() / 4);
        Length from = middle.minus(Length.max(unusableEdge.near(), LEAST_JOIN)).scaled(widthKept());
        Length to = middle.plus(Length.max(unusableEdge.far(), LEAST_JOIN)).scaled(widthKept());
        return Optional.of(new Band(from, to));
    }

    /** Returns the repeat as it lies on the table: smaller if the cloth is washed first. */
    public Optional<Repeat> repeatOnTable() {
        return repeat.map(drawn -> new Repeat(
                drawn.lengthwise().scaled(lengthKept()),
                drawn.crosswise().scaled(widthKept()),
                drawn.halfDrop(),
                drawn.mirrored(),
                drawn.originX(),
                drawn.originY(),
                drawn.picture()));
    }

    /** Returns the same fabric taken to have another direction. */
    public Fabric withDirection(Direction other) {
        return with(other, repeat, flaws, onHand, shade);
    }

    /** Returns the same fabric without a repeat to match. */
    public Fabric withoutRepeat() {
        return with(direction, Optional.empty(), flaws, onHand, shade);
    }

    /** Returns the same fabric with a picture of its print, where it has one. */
    public Fabric shownAs(PrintPicture picture) {
        return with(direction, repeat.map(print -> print.shownAs(picture)), flaws, onHand, shade);
    }

    /** Returns the same fabric taken to be whole. */
    public Fabric withoutFlaws() {
        return with(direction, repeat, List.of(), onHand, shade);
    }

    /** Returns the same fabric of which there is just so much. */
    public Fabric withOnHand(OnHand there) {
        return with(direction, repeat, flaws, Optional.of(there), shade);
    }

    /** Returns the same fabric taken to drift otherwise in its colour, or not at all. */
    public Fabric withShade(Optional<Shade> other) {
        return with(direction, repeat, flaws, onHand, other);
    }

    private Fabric with(
            Direction otherDirection,
            Optional<Repeat> otherRepeat,
            List<Box> otherFlaws,
            Optional<OnHand> otherOnHand,
            Optional<Shade> otherShade) {
        return new Fabric(
                name,
                role,
                width,
                unusableEdge,
                otherDirection,
                mostStretch,
                otherRepeat,
                shrinkage,
                spread,
                price,
                soldBy,
                otherFlaws,
                otherOnHand,
                pile,
                buying,
                otherShade);
    }

    /**
     * Returns the length that the marker may have: what is on hand, shorter by the lengthwise shrinkage if the cloth is
     * washed first, shared between the lengths that are laid, less the end allowances. Empty where as much as need be can
     * be bought.
     */
    public Optional<Length> room() {
        return onHand.map(
                there -> there.length().scaled(lengthKept() / spread.lengths()).minus(spread.onTable(Length.ZERO)));
    }

    /** Returns the share of the bought width that is there when the cloth is cut. */
    public double widthKept() {
        return isWashedFirst() ? shrinkage.kept(Axis.CROSSWISE) : 1;
    }

    /** Returns the share of the bought length that is there when the cloth is cut. */
    public double lengthKept() {
        return isWashedFirst() ? shrinkage.kept(Axis.LENGTHWISE) : 1;
    }

    /** Says whether the cloth is washed before it is cut, and so lies on the table as it measures washed. */
    public boolean isWashedFirst() {
        return shrinkage.handled() == Shrinkage.Handling.PRE_WASH;
    }
}
