package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lengthwise.job.OrderLine.Measure;
import lengthwise.model.Length;
import lengthwise.model.Size;
import lengthwise.workshop.SizeChoice;
import lengthwise.workshop.SizeTable;

/** Reads the order of a job file. Where a line has no size, its measures choose it. */
final class OrderReading {
    /** The keys of a line that are no measures. */
    static final List<String> KEYS = List.of("size", "make", "customer", "colour", "priority");

    /** More garments than this are no small batch but a slip of the finger. */
    private static final int MOST_GARMENTS = 10_000;

    /** A longer name finds no room on a small piece. */
    private static final int LONGEST_NAME = 40;

    private static final Length LONGEST_MEASURE = Length.ofMillimetres(100_000);

    private final Measuring measuring;
    private final Optional<SizeTable> sizes;
    private final List<String> measures;

    /** @param measures the names of the measures that the job asks for */
    OrderReading(Measuring measuring, Optional<SizeTable> sizes, List<String> measures) {
        this.measuring = measuring;
        this.sizes = sizes;
        this.measures = measures;
    }

    List<OrderLine> read(Entry entry) throws JobException {
        List<OrderLine> order = new ArrayList<>();
        int garments = 0;
        for (Entry item : entry.items("- {size: M, make: 1}")) {
            OrderLine line = line(item);
            garments += line.make();
            if (garments > MOST_GARMENTS) {
                throw item.error(
                        "the order comes to %d garments; a job takes at most %d".formatted(garments, MOST_GARMENTS));
            }
            order.add(line);
        }
        refuseHalfColoured(entry, order);
        if (order.isEmpty()) {
            throw entry.error("the order is empty; write - {size: M, make: 1}");
        }
        return order;
    }

    private static void refuseHalfColoured(Entry entry, List<OrderLine> order) throws JobException {
        long coloured = order.stream().filter(line -> line.colour().isPresent()).count();
        if (coloured > 0 && coloured < order.size()) {
            throw entry.error("found a colour on %d lines of %d; give every line a colour, or none"
                    .formatted(coloured, order.size()));
        }
    }

    private OrderLine line(Entry entry) throws JobException {
        Map<String, Entry> entries = new LinkedHashMap<>(entry.named("{size: M, make: 1}"));
        Entry make = entries.remove("make");
        Entry size = entries.remove("size");
        Entry customer = entries.remove("customer");
        Entry colour = entries.remove("colour");
        Entry priority = entries.remove("priority");
        if (make == null && customer == null) {
            throw entry.missing("make", "make: 1" + Entry.mistaken("make", entries.keySet()));
        }
        List<Measure> said = new ArrayList<>();
        for (Entry measure : entries.values()) {
            if (!measures.contains(measure.name())) {
                List<String> allowed = new ArrayList<>(KEYS);
                allowed.addAll(measures);
                throw measure.unknown("there is no such key here, and nothing goes by a measure of this name", allowed);
            }
            said.add(new Measure(measure.name(), measuring.positive(measure, LONGEST_MEASURE)));
        }
        Optional<String> name = customer == null ? Optional.empty() : Optional.of(name(customer));
        return new OrderLine(
                size == null ? chosen(entry, name, said) : new Size(size.text("a size, such as M")),
                make == null ? 1 : Measuring.count(make, MOST_GARMENTS, "how many garments, such as 3"),
                name,
                colour == null ? Optional.empty() : Optional.of(colour.text("a colour, such as red")),
                priority == null
                        ? Optional.empty()
                        : Optional.of(Measuring.count(priority, MOST_GARMENTS, "1 for what is made first")),
                said);
    }

    private static String name(Entry entry) throws JobException {
        String name = entry.text("the name of a customer, as it shall stand on her pieces");
        if (name.length() > LONGEST_NAME) {
            throw entry.error("found %s, which is longer than %d letters and finds no room on a piece; shorten it"
                    .formatted(Quote.of(name), LONGEST_NAME));
        }
        return name;
    }

    /** Cloth cut in the wrong size is gone, so that nothing is rounded: what lies between two sizes is asked. */
    private Size chosen(Entry entry, Optional<String> customer, List<Measure> said) throws JobException {
        if (sizes.isEmpty()) {
            return Size.ONE;
        }
        String whose = customer.orElse("this line");
        Map<String, Length> body = said.stream().collect(Collectors.toMap(Measure::name, Measure::length));
        SizeChoice choice = sizes.get().choose(body);
        if (choice.findings().isEmpty()) {
            throw entry.error("%s has no size, and none of the measures that choose it; add size: or %s"
                    .formatted(
                            whose,
                            String.join(
                                    " or ",
                                    sizes.get().measures().stream()
                                            .map(measure -> measure + ":")
                                            .toList())));
        }
        if (choice.isOutside()) {
            throw entry.error("%s has no size of the table: %s; draft one for her, or write the size to cut as size:"
                    .formatted(whose, choice.words()));
        }
        if (choice.size().isEmpty()) {
            throw entry.error("%s is between sizes: %s; write %s"
                    .formatted(
                            whose,
                            choice.words(),
                            choice.offered().stream()
                                    .map(size -> "size: " + size.name())
                                    .collect(Collectors.joining(" or "))));
        }
        return choice.size().get();
    }
}
