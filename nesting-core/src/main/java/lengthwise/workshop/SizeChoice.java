package lengthwise.workshop;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Size;

/** What size a body has, or which ones are offered where it lies between them. */
public record SizeChoice(List<Finding> findings) {
    public SizeChoice {
        findings = List.copyOf(findings);
    }

    /**
     * What one measure says.
     *
     * @param fits the sizes made for it: one, or several where ranges meet or overlap
     * @param below the nearest size that is made for less
     * @param above the nearest size that is made for more
     */
    public record Finding(String measure, Length value, List<Size> fits, Optional<Size> below, Optional<Size> above) {
        public Finding {
            fits = List.copyOf(fits);
        }

        private Stream<Size> offered() {
            return fits.isEmpty() && below.isPresent() && above.isPresent()
                    ? Stream.of(below.get(), above.get())
                    : fits.stream();
        }

        private boolean isOutside() {
            return fits.isEmpty() && (below.isEmpty() || above.isEmpty());
        }

        /** A body is measured in centimetres, also beyond a metre. */
        private static String onTheTape(Length value) {
            return "%s cm (%s)"
                    .formatted(LengthWords.centimetres(value).replaceFirst("[.]0$", ""), LengthWords.inches(value, 8));
        }

        private String words() {
            String measured = measure + " " + onTheTape(value) + " is ";
            if (!fits.isEmpty()) {
                return measured + fits.stream().map(Size::name).collect(Collectors.joining(" as well as "));
            }
            if (isOutside()) {
                return measured
                        + (below.isPresent()
                                ? "more than " + below.get().name() + ", the largest, is made for"
                                : "less than "
                                        + above.map(Size::name).orElse("any size")
                                        + (above.isPresent() ? ", the smallest, is made for" : ""));
            }
            return measured + "between " + below.get().name() + " and "
                    + above.get().name();
        }
    }

    /** Returns the size that every measure agrees on; empty where they do not, or where one lies between two sizes. */
    public Optional<Size> size() {
        return isOutside() || offered().size() != 1
                ? Optional.empty()
                : Optional.of(offered().get(0));
    }

    /** Returns the sizes to choose from, each once. */
    public List<Size> offered() {
        return findings.stream().flatMap(Finding::offered).distinct().toList();
    }

    /** Says whether a measure lies outside all sizes. */
    public boolean isOutside() {
        return findings.isEmpty() || findings.stream().anyMatch(Finding::isOutside);
    }

    /** Returns what the measures say, a clause: "bust 92 cm (36 1/4 in) is M". */
    public String words() {
        return findings.stream().map(Finding::words).collect(Collectors.joining(", "));
    }
}
