package lengthwise.job;

import java.util.List;
import java.util.Optional;
import lengthwise.model.Axis;
import lengthwise.model.Direction;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.Pile;
import lengthwise.model.Shrinkage;
import lengthwise.model.Spread;

/**
 * A fabric of the job, as the shop sells it.
 *
 * @param name the maker's name for it; names the marker's file
 * @param role what it is for: shell, lining …; where the file does not say, its name
 * @param width from selvedge to selvedge; of a tube as it lies flat
 * @param pile makes the cloth one-way
 * @param there how much of it there is; empty where it is to be bought
 * @param cutAlready what is cut of it, where the job goes on with a marker
 * @param across its border print and its zones
 */
public record JobFabric(
        String name,
        String role,
        Length width,
        Optional<UnusableEdge> unusableEdge,
        Optional<Direction> direction,
        Optional<Axis> mostStretch,
        Optional<RightSide> rightSide,
        Optional<PrintRepeat> repeat,
        Optional<Shrinkage> shrinkage,
        JobSpread spread,
        Optional<Price> price,
        Optional<Length> soldBy,
        List<Flaw> flaws,
        Optional<There> there,
        Optional<Pile> pile,
        Optional<JobCutAlready> cutAlready,
        Across across) {
    public JobFabric {
        flaws = List.copyOf(flaws);
    }

    /** Whole cloth. */
    public JobFabric(
            String name,
            String role,
            Length width,
            Optional<UnusableEdge> unusableEdge,
            Optional<Direction> direction,
            Optional<Axis> mostStretch,
            Optional<RightSide> rightSide,
            Optional<PrintRepeat> repeat,
            Optional<Shrinkage> shrinkage,
            JobSpread spread,
            Optional<Price> price,
            Optional<Length> soldBy,
            List<Flaw> flaws,
            Optional<There> there,
            Optional<Pile> pile) {
        this(
                name,
                role,
                width,
                unusableEdge,
                direction,
                mostStretch,
                rightSide,
                repeat,
                shrinkage,
                spread,
                price,
                soldBy,
                flaws,
                there,
                pile,
                Optional.empty(),
                Across.UNSAID);
    }

    JobFabric withCutAlready(Optional<JobCutAlready> cut) {
        return with(name, spread, cut);
    }

    /** Returns the same cloth laid another way, whole. */
    JobFabric withForm(Spread.Form form) {
        return with(name, spread.withForm(form), Optional.empty());
    }

    /** Returns the same cloth under another name, laid another way, whole. */
    JobFabric as(String otherName, JobSpread otherSpread) {
        return with(otherName, otherSpread, Optional.empty());
    }

    private JobFabric with(String otherName, JobSpread otherSpread, Optional<JobCutAlready> otherCut) {
        return new JobFabric(
                otherName,
                role,
                width,
                unusableEdge,
                direction,
                mostStretch,
                rightSide,
                repeat,
                shrinkage,
                otherSpread,
                price,
                soldBy,
                flaws,
                there,
                pile,
                otherCut,
                across);
    }

    /** What is not the same all across the cloth. */
    public record Across(Optional<Border> border, List<Zone> zones) {
        /** Nothing is said. */
        public static final Across UNSAID = new Across(Optional.empty(), List.of());

        public Across {
            zones = List.copyOf(zones);
        }
    }

    /** A border print along a selvedge: how far from it the line lies that pieces are keyed to, as bought. */
    public record Border(Length fromSelvedge, Lying.Selvedge selvedge) {}

    /** A band along the cloth, as bought: distances of its two sides from the near selvedge. */
    public record Zone(String name, Length from, Length to) {}

    /** Which way the right side of the cloth looks in the finished garment. */
    public enum RightSide {
        /** Away from the body, as a shell does. */
        OUTSIDE,
        /** To the body, as a lining does that is worn wrong side to wrong side: its pieces are mirrored. */
        BODY
    }

    /**
     * The repeat of a print on the cloth as bought; a distance of zero: it does not repeat that way.
     *
     * @param halfDrop every next column across is moved by half the lengthwise repeat
     * @param mirrored it is its own mirror image about a line lengthwise through the point that is said
     * @param uneven it looks different from either end, or from either side: the cloth is one-way
     * @param fromStart a point of the print that comes again: its distance from the cut end of the cloth
     * @param fromSelvedge its distance from the near selvedge, the one drawn at the top of the marker
     */
    public record PrintRepeat(
            Length lengthwise,
            Length crosswise,
            boolean halfDrop,
            boolean mirrored,
            boolean uneven,
            Length fromStart,
            Length fromSelvedge) {}

    /** A rectangle of bad cloth, as bought: distances from the cut end and from the near selvedge. */
    public record Flaw(Length fromStart, Length length, Length fromSelvedge, Length width) {}

    /**
     * The cloth that there is, as bought.
     *
     * @param length from cut end to cut end; of a remnant, to its farthest corner
     * @param corners of a remnant, in turn; empty for a straight piece over the whole width
     */
    public record There(Length length, List<Corner> corners) {
        public There {
            corners = List.copyOf(corners);
        }
    }

    /** A corner of a remnant, as bought: distances from the cut end and from the near selvedge. */
    public record Corner(Length fromStart, Length fromSelvedge) {}
}
