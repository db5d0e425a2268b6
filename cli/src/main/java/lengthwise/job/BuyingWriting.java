package lengthwise.job;

import java.math.BigDecimal;
import java.util.stream.Collectors;
import lengthwise.model.Length;

/** Writes how a cloth of a job file is bought. */
final class BuyingWriting {
    private final JobText text;

    BuyingWriting(JobText text) {
        this.text = text;
    }

    void write(JobBuying buying) {
        buying.from()
                .ifPresent(
                        from -> text.line("    from: " + JobText.quoted(from), "stash, or a cloth there by its name"));
        if (!buying.widths().isEmpty()) {
            text.line("    widths: "
                    + buying.widths().stream().map(this::offer).collect(Collectors.joining(", ", "[", "]")));
        }
        buying.weight()
                .ifPresent(grams -> text.line("    weight: " + JobText.plain(BigDecimal.valueOf(grams)) + " g/m²"));
        if (!buying.squaring().equals(Length.ZERO)) {
            text.line("    squaring: {each-end: " + text.length(buying.squaring()) + "}");
        }
        if (buying.flaws() > 0) {
            text.line("    flaws-allowance: " + JobText.percent(buying.flaws()), "bought more for flaws");
        }
    }

    private String offer(JobBuying.Offer offer) {
        return offer.price()
                .map(price -> "{width: %s, price: %s}".formatted(text.length(offer.width()), PriceText.print(price)))
                .orElseGet(() -> text.length(offer.width()));
    }
}
