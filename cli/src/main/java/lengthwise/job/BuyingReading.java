package lengthwise.job;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.job.JobBuying.Offer;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Length;

/** Reads what a fabric of the job file says of buying it. */
final class BuyingReading {
    static final List<String> KEYS = List.of("widths", "weight", "squaring", "flaws-allowance", "from");

    private static final Pattern WEIGHT = Pattern.compile("([0-9]{1,5}(?:\\.[0-9]{1,6})?) ?(g/m²|g/m2|oz/yd²|oz/yd2)");

    /** 28.349523125 g to the ounce (from memory), 0.83612736 m² to the square yard (exact, from the yard of 1959). */
    private static final BigDecimal GRAMS_PER_OUNCE_A_YARD =
            new BigDecimal("28.349523125").divide(new BigDecimal("0.83612736"), MathContext.DECIMAL64);

    private static final double HEAVIEST = 5_000;

    private final Measuring measuring;
    private final Entry.Reading<Price> price;

    BuyingReading(Measuring measuring, Entry.Reading<Price> price) {
        this.measuring = measuring;
        this.price = price;
    }

    JobBuying read(Fields fabric) throws JobException {
        Optional<Entry> widths = fabric.get("widths");
        if (widths.isPresent()) {
            for (String there : List.of("length", "outline", "already-cut")) {
                if (fabric.get(there).isPresent()) {
                    throw widths.get()
                            .keyError("widths are chosen where cloth is bought, and %s says that it is there"
                                    .formatted(there));
                }
            }
        }
        Optional<String> from = fabric.read("from", e -> from(e, fabric));
        return new JobBuying(
                fabric.read("widths", this::offers).orElse(List.of()),
                fabric.read("weight", BuyingReading::weight)
                        .map(OptionalDouble::of)
                        .orElse(OptionalDouble.empty()),
                fabric.read("squaring", this::squaring).orElse(Length.ZERO),
                fabric.read("flaws-allowance", Measuring::share).orElse(0.0),
                from);
    }

    private static String from(Entry entry, Fields fabric) throws JobException {
        String from = entry.text("stash, or the name of a cloth in it");
        for (String said : List.of("length", "outline", "already-cut", "flaws", "widths")) {
            if (fabric.get(said).isPresent()) {
                throw entry.keyError(
                        "this cloth comes from the stash, and the stash says its length, outline and flaws: leave %s out, or from"
                                .formatted(said));
            }
        }
        Optional<Entry> repeat = fabric.get("repeat");
        if (repeat.isPresent()
                && repeat.get().named("{lengthwise: 32 cm, crosswise: 16 cm}").containsKey("origin")) {
            throw entry.keyError(
                    "this cloth comes from the stash, and the stash says where its print lies: leave origin out of the repeat (lengthwise stash add has --print)");
        }
        return from;
    }

    private List<Offer> offers(Entry entry) throws JobException {
        List<Offer> offers = new ArrayList<>();
        if (entry.isMapping()) {
            Fields range = entry.fields("{from: 110 cm, to: 160 cm, step: 10 cm}", "from", "to", "step");
            Length from = measuring.positive(range.need("from", "110 cm"));
            Length to = measuring.positive(range.need("to", "160 cm"));
            Length step = measuring.positive(range.need("step", "10 cm"));
            entry.placing(() -> JobBuying.range(from, to, step))
                    .forEach(width -> offers.add(new Offer(width, Optional.empty())));
        } else {
            for (Entry item : entry.items("[120 cm, 150 cm], or {from: 110 cm, to: 160 cm, step: 10 cm}")) {
                offers.add(offer(item));
            }
        }
        return entry.placing(() -> {
            JobBuying.refuseUnusable(offers.stream().map(Offer::width).toList());
            return offers;
        });
    }

    private Offer offer(Entry item) throws JobException {
        if (item.isText()) {
            return new Offer(measuring.positive(item), Optional.empty());
        }
        Fields offer = item.fields("120 cm, or {width: 120 cm, price: 9 per m}", "width", "price");
        return new Offer(measuring.positive(offer.need("width", "120 cm")), offer.read("price", price));
    }

    private Length squaring(Entry entry) throws JobException {
        Fields ends = entry.fields("{each-end: 3 cm}", "each-end");
        return measuring.notNegative(ends.need("each-end", "3 cm"), FabricReading.WIDEST);
    }

    private static double weight(Entry entry) throws JobException {
        String example = "a weight such as 180 g/m² or 5.3 oz/yd²";
        String text = entry.text(example);
        Matcher weight = WEIGHT.matcher(text);
        if (!weight.matches()) {
            throw entry.error("found " + Quote.of(text) + "; write " + example);
        }
        BigDecimal number = new BigDecimal(weight.group(1));
        double grams = (weight.group(2).startsWith("oz")
                        ? number.multiply(GRAMS_PER_OUNCE_A_YARD, MathContext.DECIMAL64)
                        : number)
                .doubleValue();
        if (!(grams > 0 && grams <= HEAVIEST)) {
            throw entry.error(
                    "found %s; cloth weighs more than 0 and at most %d g/m²".formatted(Quote.of(text), (int) HEAVIEST));
        }
        return grams;
    }
}
