package lengthwise.workshop;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.model.Length;
import lengthwise.model.Size;

/** How wide the elastic at an edge of swimwear usually is. */
public final class ElasticWidth {
    /** 1/4 in = 6.35 mm, up to size 2X. */
    public static final Length NARROW = new Length(6_350);

    /** 3/8 in = 9.525 mm, from size 3X. */
    public static final Length WIDE = new Length(9_525);

    private static final int FIRST_WIDE = 3;
    private static final Pattern NUMBERED = Pattern.compile("([0-9]{1,2})XL?");
    private static final Pattern WRITTEN_OUT = Pattern.compile("(X{1,9})L");
    private static final Pattern SMALL_OR_MEDIUM = Pattern.compile("[0-9]{0,2}X{0,9}S|M|L");

    private ElasticWidth() {}

    /**
     * Returns 1/4 in up to size 2X and 3/8 in from 3X: common practice, no source. Sizes are read by their letters, 3X, 3XL or
     * XXXL; for others nothing is usual.
     */
    public static Optional<Length> usual(Size size) {
        String name = size.name().strip().toUpperCase(Locale.ROOT);
        if (SMALL_OR_MEDIUM.matcher(name).matches()) {
            return Optional.of(NARROW);
        }
        Matcher numbered = NUMBERED.matcher(name);
        if (numbered.matches()) {
            return Optional.of(byExtras(Integer.parseInt(numbered.group(1))));
        }
        Matcher writtenOut = WRITTEN_OUT.matcher(name);
        return writtenOut.matches() ? Optional.of(byExtras(writtenOut.group(1).length())) : Optional.empty();
    }

    private static Length byExtras(int extras) {
        return extras >= FIRST_WIDE ? WIDE : NARROW;
    }
}
