package lengthwise;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.plan.Purchase;

/**
 * How much to buy for a job: each of its fabrics in every width on offer.
 *
 * @param version of Lengthwise
 * @param inches whether the maker writes her lengths in inches or yards
 * @param quick whether the searches were kept short on purpose
 * @param reproducible false when a clock or an interrupt ended a search
 * @param lines what is made, in the order of the job
 * @param warnings sentences for the maker
 */
public record Estimate(
        String job,
        String version,
        boolean inches,
        boolean quick,
        boolean reproducible,
        List<OrderedSize> lines,
        List<Cloth> fabrics,
        List<String> warnings) {
    public Estimate {
        lines = List.copyOf(lines);
        fabrics = List.copyOf(fabrics);
        warnings = List.copyOf(warnings);
    }

    /**
     * Garments that are all alike.
     *
     * @param words the size, in words for people
     * @param garment the number of the first of them
     */
    public record OrderedSize(String words, int make, int garment) {}

    /** One fabric; its widths stand from the narrowest to the widest. */
    public record Cloth(String name, String role, List<InWidth> widths) {
        public Cloth {
            widths = List.copyOf(widths);
        }

        /** Returns the widths that the order can be laid on. */
        public List<Laid> laid() {
            return widths.stream()
                    .filter(Laid.class::isInstance)
                    .map(Laid.class::cast)
                    .toList();
        }

        /** Returns the width that costs least, the narrowest of those that cost the same; empty where no price is known. */
        public Optional<Laid> cheapest() {
            return laid().stream()
                    .filter(laid -> laid.purchase().cost().isPresent())
                    .min(Comparator.comparingDouble(
                            laid -> laid.purchase().cost().getAsDouble()));
        }

        /** Returns the cheapest width, else the one that the least length is bought of. */
        public Optional<Laid> chosen() {
            return cheapest()
                    .or(() -> laid().stream()
                            .min(Comparator.comparing(laid -> laid.purchase().buy())));
        }

        /** Says whether a wider cloth came out longer: only where its print or its border makes it another cloth. */
        public boolean isLongerSomewhere() {
            List<Laid> laid = laid();
            return IntStream.range(1, laid.size())
                    .anyMatch(i -> laid.get(i)
                                    .marker()
                                    .length()
                                    .compareTo(laid.get(i - 1).marker().length())
                            > 0);
        }
    }

    /** The answer for one width. */
    public sealed interface InWidth {
        /** Returns the nominal width, from selvedge to selvedge. */
        Length width();
    }

    /**
     * A marker that the check has passed.
     *
     * @param fabric as it is bought; where the marker is one for narrower cloth, it is cut down to that first
     * @param lowerBound no marker for this order on cloth of this width, cut down or not, can be shorter
     */
    public record Laid(Fabric fabric, Marker marker, Length lowerBound, Purchase purchase) implements InWidth {
        @Override
        public Length width() {
            return fabric.width();
        }

        /** Returns the width that the cloth is cut down to before it is laid; empty where it is laid as it is. */
        public Optional<Length> cutDownTo() {
            Length laid = marker.order().fabric().width();
            return laid.equals(width()) ? Optional.empty() : Optional.of(laid);
        }

        /** Returns the share of the cuttable cloth, as wide as it is bought, that is under pieces: from 0 to 1. */
        public double efficiency() {
            return marker.efficiency()
                    * marker.order().fabric().cuttableWidth().millimetres()
                    / fabric.cuttableWidth().millimetres();
        }

        /** Returns by how much of itself the marker can still come out shorter, at most: from 0 to 1. */
        public double uncertainty() {
            return 1 - lowerBound.millimetres() / marker.length().millimetres();
        }
    }

    /** Cloth that the order cannot be laid on, and why, a sentence. */
    public record NotLaid(Length width, String reason) implements InWidth {}
}
