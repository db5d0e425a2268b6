package lengthwise.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Length;

/**
 * What the job says of buying a fabric.
 *
 * @param widths on offer, the narrowest first, each once; empty where only the fabric's own width is
 * @param weight in grams per square metre, where said
 * @param squaring what each end of the bought length loses to be cut square
 * @param flaws what is bought more for flaws: a share, 0.03 for 3 %
 * @param from where the cloth comes from if it need not be bought: {@link #STASH} for whichever cloth of the stash will do, or
 *     the name of one there
 */
public record JobBuying(
        List<Offer> widths, OptionalDouble weight, Length squaring, double flaws, Optional<String> from) {
    /** Whichever cloth of the stash will do. */
    public static final String STASH = "stash";

    /** Nothing is said. */
    public static final JobBuying UNSAID = new JobBuying(List.of(), OptionalDouble.empty(), Length.ZERO, 0);

    /** More widths than this are a slip of the step. */
    private static final int MOST_WIDTHS = 50;

    JobBuying(List<Offer> widths, OptionalDouble weight, Length squaring, double flaws) {
        this(widths, weight, squaring, flaws, Optional.empty());
    }

    public JobBuying {
        widths = widths.stream().sorted(Comparator.comparing(Offer::width)).toList();
    }

    /**
     * A width that the shop has the fabric in.
     *
     * @param price where it is not that of the fabric
     */
    public record Offer(Length width, Optional<Price> price) {}

    JobBuying withWidths(List<Offer> others) {
        return new JobBuying(others, weight, squaring, flaws, from);
    }

    /** Returns the same without a word of where the cloth comes from. */
    public JobBuying withoutFrom() {
        return new JobBuying(widths, weight, squaring, flaws);
    }

    /**
     * Returns the widths from one to another, as far as the step comes.
     *
     * @throws JobException in one clause, without a place, if the range is empty or too long
     */
    static List<Length> range(Length from, Length to, Length step) throws JobException {
        if (to.compareTo(from) < 0) {
            throw new JobException("the widths end at %s, before they begin at %s"
                    .formatted(LengthText.print(to, LengthUnit.CM), LengthText.print(from, LengthUnit.CM)));
        }
        long steps = (to.micrometres() - from.micrometres()) / step.micrometres();
        if (steps >= MOST_WIDTHS) {
            throw new JobException("that is %d widths; at most %d are looked at, take a larger step"
                    .formatted(steps + 1, MOST_WIDTHS));
        }
        List<Length> widths = new ArrayList<>();
        for (long i = 0; i <= steps; i++) {
            widths.add(from.plus(step.times(i)));
        }
        return widths;
    }

    /**
     * Refuses what is no list of widths to choose from.
     *
     * @throws JobException likewise
     */
    static void refuseUnusable(List<Length> widths) throws JobException {
        if (widths.isEmpty() || widths.size() > MOST_WIDTHS) {
            throw new JobException("found %d widths; write from 1 to %d".formatted(widths.size(), MOST_WIDTHS));
        }
        for (Length width : widths) {
            if (width.micrometres() <= 0 || width.compareTo(FabricReading.WIDEST) > 0) {
                throw new JobException("found the width %s; it is above 0 and at most %s, is the unit right?"
                        .formatted(
                                LengthText.print(width, LengthUnit.CM),
                                LengthText.print(FabricReading.WIDEST, LengthUnit.M)));
            }
            if (widths.stream().filter(width::equals).count() > 1) {
                throw new JobException("the width %s is there twice".formatted(LengthText.print(width, LengthUnit.CM)));
            }
        }
    }
}
