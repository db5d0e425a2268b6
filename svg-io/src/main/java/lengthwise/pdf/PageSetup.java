package lengthwise.pdf;

import java.util.Optional;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;

/**
 * How pages are laid out.
 *
 * @param margin what the printer leaves white along each edge; nothing is painted there
 * @param overlap what two neighbouring pages show both
 * @param userUnit whether a page longer than 5.08 m stays one page, measured in a larger unit, which some readers ignore
 */
public record PageSetup(Paper paper, Length margin, Length overlap, boolean userUnit) {
    /** Wide enough for most printers, and for marks not to be lost (common practice, no source). */
    public static final Length USUAL_MARGIN = Length.ofMillimetres(12);

    public static final Length USUAL_OVERLAP = Length.ofMillimetres(10);

    private static final Length WIDEST_MARGIN = Length.ofMillimetres(25);
    private static final Length WIDEST_OVERLAP = Length.ofMillimetres(50);
    private static final Length NARROWEST_ROLL = Length.ofMillimetres(280);

    /** @throws IllegalArgumentException if {@link #whyNot} has a reason */
    public PageSetup {
        whyNot(paper, margin, overlap).ifPresent(why -> {
            throw new IllegalArgumentException(why);
        });
    }

    /** Returns why pages cannot be laid out like this, in a sentence; empty if they can. */
    public static Optional<String> whyNot(Paper paper, Length margin, Length overlap) {
        if (outside(margin, WIDEST_MARGIN)) {
            return Optional.of("The margin is 0 to %s, not %s."
                    .formatted(LengthWords.metric(WIDEST_MARGIN), LengthWords.metric(margin)));
        }
        if (outside(overlap, WIDEST_OVERLAP)) {
            return Optional.of("The overlap is 0 to %s, not %s."
                    .formatted(LengthWords.metric(WIDEST_OVERLAP), LengthWords.metric(overlap)));
        }
        if (paper.isRoll()
                && (paper.width().compareTo(NARROWEST_ROLL) < 0 || paper.width().compareTo(Book.LONGEST_SIDE) > 0)) {
            return Optional.of("A roll is %s to %s wide, not %s."
                    .formatted(
                            LengthWords.metric(NARROWEST_ROLL),
                            LengthWords.metric(Book.LONGEST_SIDE),
                            LengthWords.metric(paper.width())));
        }
        return Optional.empty();
    }

    private static boolean outside(Length length, Length longest) {
        return length.micrometres() < 0 || length.compareTo(longest) > 0;
    }

    /** Returns the same on a sheet that lies on its side. */
    PageSetup landscape() {
        return new PageSetup(paper.landscape(), margin, overlap, userUnit);
    }

    /** Returns what a length of paper has room for between its margins. */
    Length between(Length side) {
        return side.minus(margin.times(2));
    }
}
