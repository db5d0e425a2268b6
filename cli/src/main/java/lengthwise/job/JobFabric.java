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
import lengthwise.model.Shade;
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
 * @param across its border print, its zones and how near to each other its pieces are of one shade
 * @param buying the widths it is on offer in, its weight, what is bought beyond the need
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
        Across across,
        JobBuying buying) {
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
                Across.UNSAID,
                JobBuying.UNSAID);
    }

    JobFabric withRepeat(Optional<PrintRepeat> other) {
        return with(name, width, direction, other, spread, price, cutAlready, buying);
    }

    JobFabric withCutAlready(Optional<JobCutAlready> cut) {
        return with(name, width, direction, repeat, spread, price, cut, buying);
    }

    /** Returns the same cloth laid another way, whole. */
    JobFabric withForm(Spread.Form form) {
        return with(name, width, direction, repeat, spread.withForm(form), price, Optional.empty(), buying);
    }

    /** Returns the same cloth under another name, laid another way, whole. */
    JobFabric as(String otherName, JobSpread otherSpread) {
        return with(otherName, width, direction, repeat, otherSpread, price, Optional.empty(), buying);
    }

    /** Returns the same cloth in a width that is on offer, and in no other. */
    public JobFabric at(JobBuying.Offer offer) {
        return with(
                name,
                offer.width(),
                direction,
                repeat,
                spread,
                offer.price().or(() -> price),
                cutAlready,
                buying.withWidths(List.of()));
    }

    /** Returns the same cloth taken to have another direction. */
    public JobFabric withDirection(Direction other) {
        return with(name, width, Optional.of(other), repeat, spread, price, cutAlready, buying);
    }

    /** Returns the widths on offer: its own where the job names none. */
    public List<JobBuying.Offer> offers() {
        return buying.widths().isEmpty() ? List.of(new JobBuying.Offer(width, Optional.empty())) : buying.widths();
    }

    /** Says whether there is just so much of it; what comes from the stash is there too. */
    public boolean isOnHand() {
        return there.isPresent() || buying.from().isPresent();
    }

    /** Returns how far from the near selvedge the farthest place lies that the job names: a narrower cloth has no such place. */
    public Length reach() {
        Length zones = across.zones().stream().map(Zone::to).reduce(Length.ZERO, Length::max);
        Length border = across.border().map(Border::fromSelvedge).orElse(Length.ZERO);
        Length flawed = flaws.stream()
                .map(flaw -> flaw.fromSelvedge().plus(flaw.width()))
                .reduce(Length.ZERO, Length::max);
        return Length.max(Length.max(zones, border), flawed);
    }

    private JobFabric with(
            String otherName,
            Length otherWidth,
            Optional<Direction> otherDirection,
            Optional<PrintRepeat> otherRepeat,
            JobSpread otherSpread,
            Optional<Price> otherPrice,
            Optional<JobCutAlready> otherCut,
            JobBuying otherBuying) {
        return new JobFabric(
                otherName,
                role,
                otherWidth,
                unusableEdge,
                otherDirection,
                mostStretch,
                rightSide,
                otherRepeat,
                shrinkage,
                otherSpread,
                otherPrice,
                soldBy,
                flaws,
                there,
                pile,
                otherCut,
                across,
                otherBuying);
    }

    /**
     * What is not the same all over the cloth.
     *
     * @param shade measured on the table
     * @param keepTogether whether all that a garment needs is cut from one piece of cloth, where several are for one purpose
     */
    public record Across(Optional<Border> border, List<Zone> zones, Optional<Shade> shade, boolean keepTogether) {
        /** Nothing is said. */
        public static final Across UNSAID =
                new Across(Optional.empty(), List.of(), Optional.empty(), /* keepTogether= */ false);

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
     * @param motifs places in it that pieces may keep off or on
     * @param image the path of a picture of one repeat
     */
    public record PrintRepeat(
            Length lengthwise,
            Length crosswise,
            boolean halfDrop,
            boolean mirrored,
            boolean uneven,
            Length fromStart,
            Length fromSelvedge,
            List<PrintMotif> motifs,
            Optional<String> image) {
        public PrintRepeat {
            motifs = List.copyOf(motifs);
        }

        /** Returns the same print with another point of it said, as it is on other cloth. */
        public PrintRepeat from(Length start, Length selvedge) {
            return new PrintRepeat(lengthwise, crosswise, halfDrop, mirrored, uneven, start, selvedge, motifs, image);
        }

        /** Returns the same print with the path of its picture as seen from elsewhere. */
        PrintRepeat withImage(Optional<String> path) {
            return new PrintRepeat(
                    lengthwise, crosswise, halfDrop, mirrored, uneven, fromStart, fromSelvedge, motifs, path);
        }
    }

    /**
     * A place in one repeat, as bought: a circle, or a rectangle along and across the cloth. Along an axis that does not repeat it is
     * endless, and nothing is said.
     *
     * @param lengthwise its middle, from the point of the print that is said, away from the cut end
     * @param crosswise the same away from the near selvedge
     * @param length how long it is along the cloth; of a circle its diameter
     * @param width how wide it is across the cloth; of a circle its diameter
     */
    public record PrintMotif(
            String name, Length lengthwise, Length crosswise, Length length, Length width, boolean round) {}

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
