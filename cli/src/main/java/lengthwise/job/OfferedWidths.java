package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.job.JobBuying.Offer;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Length;

/** Widths as they are written on the command line: {@code 120 cm, 150 cm}, or {@code 110 cm to 160 cm by 10 cm}. */
public final class OfferedWidths {
    private static final Pattern RANGE = Pattern.compile("(.+?) +to +(.+?) +by +(.+)");

    private OfferedWidths() {}

    /**
     * Reads widths on offer.
     *
     * @param units what a bare number is measured in
     * @param said the fabric; what it says of the price of one of these widths still holds
     * @throws JobException in a sentence that begins with the option, if they are none
     */
    public static List<Offer> parse(String text, Optional<LengthUnit> units, JobFabric said) throws JobException {
        try {
            List<Length> widths = lengths(text.strip(), units);
            JobBuying.refuseUnusable(widths);
            return new JobBuying(
                            widths.stream()
                                    .map(width -> new Offer(width, price(said, width)))
                                    .toList(),
                            said.buying().weight(),
                            said.buying().squaring(),
                            said.buying().flaws())
                    .widths();
        } catch (JobException unusable) {
            throw new JobException("--widths: " + unusable.getMessage());
        }
    }

    private static Optional<Price> price(JobFabric said, Length width) {
        return said.buying().widths().stream()
                .filter(offer -> offer.width().equals(width))
                .flatMap(offer -> offer.price().stream())
                .findFirst();
    }

    private static List<Length> lengths(String text, Optional<LengthUnit> units) throws JobException {
        Matcher range = RANGE.matcher(text);
        if (range.matches()) {
            Length step = LengthText.parse(range.group(3), units);
            if (step.micrometres() <= 0) {
                throw new JobException("the step has to be more than 0");
            }
            return JobBuying.range(
                    LengthText.parse(range.group(1), units), LengthText.parse(range.group(2), units), step);
        }
        List<Length> widths = new ArrayList<>();
        for (String width : text.split(",", -1)) {
            widths.add(LengthText.parse(width, units));
        }
        return widths;
    }
}
