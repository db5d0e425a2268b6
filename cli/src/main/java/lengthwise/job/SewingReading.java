package lengthwise.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import lengthwise.job.JobSewing.Binding;
import lengthwise.job.JobSewing.Elastic;
import lengthwise.job.JobSewing.Label;
import lengthwise.job.JobSewing.PriceOf;
import lengthwise.job.JobSewing.Run;
import lengthwise.job.JobSewing.Seam;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Length;
import lengthwise.workshop.Stitch;

/** Reads what garments are sewn with. */
final class SewingReading {
    private static final int MOST_EACH = 1_000;
    private static final int MOST_SOLD = 1_000_000;
    private static final Length LONGEST_SPOOL = Length.ofMillimetres(100_000_000);
    private static final Length WIDEST = Length.ofMillimetres(1_000);
    private static final Pattern PER_SPOOL = Pattern.compile("([0-9]{1,9}(?:\\.[0-9]{1,6})?) per spool");
    private static final Pattern BY_THE_PIECE =
            Pattern.compile("([0-9]{1,9}(?:\\.[0-9]{1,6})?) (?:each|per ([1-9][0-9]{0,5}))");
    private static final Pattern STITCH = Pattern.compile("[1-8][0-9]{2}");

    private final Measuring measuring;
    private final Entry.Reading<Price> price;
    private final List<String> roles;
    private LengthReading lengths;

    SewingReading(Measuring measuring, Entry.Reading<Price> price, List<String> roles) {
        this.measuring = measuring;
        this.price = price;
        this.roles = roles;
        this.lengths = new LengthReading(measuring);
    }

    JobSewing read(Entry entry) throws JobException {
        Fields sewing = entry.fields(
                "elastic, seams, thread, bindings and labels",
                "edges",
                "elastic",
                "seams",
                "thread",
                "bindings",
                "labels");
        Map<String, JobSewing.Edge> edges = new LinkedHashMap<>();
        EdgeReading reading = new EdgeReading(lengths);
        for (Entry edge : named(sewing, "edges", "{leg: 62 cm}")) {
            edges.put(edge.name(), reading.read(edge));
        }
        lengths = lengths.alongEdges(edges.keySet());
        List<Elastic> elastic = new ArrayList<>();
        for (Entry one : named(sewing, "elastic", "{leg: {length: 52 cm, each: 2}}")) {
            elastic.add(elastic(one));
        }
        List<Seam> seams = new ArrayList<>();
        for (Entry one : named(sewing, "seams", "{side: {stitch: 504, length: 18 cm, each: 2}}")) {
            seams.add(seam(one));
        }
        List<Binding> bindings = new ArrayList<>();
        for (Entry one :
                named(sewing, "bindings", "{neck: {from: shell, cut-width: 32 mm, length: 60 cm, cut: bias}}")) {
            bindings.add(binding(one));
        }
        List<Label> labels = new ArrayList<>();
        for (Entry one : named(sewing, "labels", "{care-label: {price: 0.15 each}}")) {
            labels.add(label(one));
        }
        return new JobSewing(edges, elastic, seams, sewing.read("thread", this::thread), bindings, labels);
    }

    private static List<Entry> named(Fields sewing, String key, String example) throws JobException {
        Optional<Entry> entry = sewing.get(key);
        return entry.isEmpty()
                ? List.of()
                : List.copyOf(entry.get().named(example).values());
    }

    private Elastic elastic(Entry entry) throws JobException {
        Fields one = entry.fields(
                "{width: 1/4 in, length: 52 cm, each: 2}", "width", "length", "each", "join", "price", "sold-by");
        return new Elastic(
                entry.name(),
                one.read("width", lengths::read),
                lengths.read(one.need("length", LengthReading.EXAMPLE)),
                each(one),
                one.read("join", e -> measuring.notNegative(e, WIDEST)).orElse(Length.ZERO),
                one.read("price", price),
                one.read("sold-by", measuring::positive));
    }

    private Seam seam(Entry entry) throws JobException {
        Fields one = entry.fields("{stitch: 504, length: 18 cm, each: 2}", "stitch", "ratio", "length", "each");
        Entry stitch = one.need("stitch", "301");
        String number = stitch.text("a stitch class of ISO 4915, such as 301");
        if (!STITCH.matcher(number).matches()) {
            throw stitch.error(
                    "found %s; write a stitch class of ISO 4915, such as 301 or 504".formatted(Quote.of(number)));
        }
        Optional<Double> ratio = one.read("ratio", Measuring::factor);
        if (ratio.isEmpty() && Stitch.of(Integer.parseInt(number)).isEmpty()) {
            throw stitch.error(
                    "found %s, for which no figure is known; add ratio: the thread that 1 cm of its seam takes, in cm (known: %s)"
                            .formatted(
                                    number,
                                    Stitch.known().stream().map(String::valueOf).collect(Collectors.joining(", "))));
        }
        return new Seam(
                entry.name(),
                Integer.parseInt(number),
                ratio.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                lengths.read(one.need("length", LengthReading.EXAMPLE)),
                each(one));
    }

    private JobSewing.Spools thread(Entry entry) throws JobException {
        Fields thread = entry.fields("{spool: 500 m, price: 3.20 per spool, waste: 15 %}", "spool", "price", "waste");
        Optional<Length> spool = thread.read("spool", e -> measuring.positive(e, LONGEST_SPOOL));
        Optional<Double> perSpool = thread.read("price", SewingReading::perSpool);
        if (perSpool.isPresent() && spool.isEmpty()) {
            throw entry.missing("spool", "spool: 500 m, since the price is of one");
        }
        return new JobSewing.Spools(
                spool,
                perSpool.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                thread.read("waste", Measuring::share).map(OptionalDouble::of).orElse(OptionalDouble.empty()));
    }

    private static double perSpool(Entry entry) throws JobException {
        String example = "a price such as 3.20 per spool, without a currency";
        String text = entry.text(example);
        Matcher price = PER_SPOOL.matcher(text);
        if (!price.matches()) {
            throw entry.error("found " + Quote.of(text) + "; write " + example);
        }
        return new BigDecimal(price.group(1)).doubleValue();
    }

    private Binding binding(Entry entry) throws JobException {
        Fields one = entry.fields(
                "{from: shell, cut-width: 32 mm, length: 60 cm, cut: bias}",
                "from",
                "cut-width",
                "length",
                "each",
                "cut");
        Entry from = one.need("from", roles.get(0));
        String role = from.text("what the fabric is for");
        if (!roles.contains(role)) {
            throw from.error("found %s; no fabric is for this, they are for %s%s"
                    .formatted(Quote.of(role), String.join(", ", roles), Entry.meant(role, roles)));
        }
        return new Binding(
                entry.name(),
                role,
                measuring.positive(one.need("cut-width", "32 mm"), WIDEST),
                lengths.read(one.need("length", LengthReading.EXAMPLE)),
                each(one),
                one.need("cut", "bias, or straight").word(Run.class, Set.of()));
    }

    private static Label label(Entry entry) throws JobException {
        Fields one = entry.fields("{each: 1, price: 0.15 each, sold-by: 20}", "each", "price", "sold-by");
        return new Label(
                entry.name(),
                each(one),
                one.read("price", SewingReading::byThePiece),
                one.read("sold-by", e -> Measuring.count(e, MOST_SOLD, "how many are in a pack, such as 20")));
    }

    private static PriceOf byThePiece(Entry entry) throws JobException {
        String example = "a price such as 0.15 each, or 3 per 20, without a currency";
        String text = entry.text(example);
        Matcher price = BY_THE_PIECE.matcher(text);
        if (!price.matches()) {
            throw entry.error("found " + Quote.of(text) + "; write " + example);
        }
        return new PriceOf(
                new BigDecimal(price.group(1)).doubleValue(),
                price.group(2) == null ? 1 : Integer.parseInt(price.group(2)));
    }

    private static int each(Fields one) throws JobException {
        return one.read("each", e -> Measuring.count(e, MOST_EACH, "how many a garment has, such as 2"))
                .orElse(1);
    }
}
