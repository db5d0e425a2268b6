package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import lengthwise.job.JobPlan.Bolt;
import lengthwise.model.Length;

/** Reads how an order may be shared out over lays. */
final class PlanReading {
    private static final int MOST_PLIES = 1_000;
    private static final int MOST_GARMENTS = 1_000;
    private static final Length LONGEST_TABLE = Length.ofMillimetres(100_000);
    private static final Length LONGEST_BOLT = Length.ofMillimetres(1_000_000);
    private static final String EXAMPLE = "{max-plies: 2, max-garments: 4, table-length: 3 m}";

    private final Measuring measuring;
    private final Map<String, JobFabric> fabrics;
    private final Set<String> colours;

    PlanReading(Measuring measuring, List<JobFabric> fabrics, List<OrderLine> order) {
        this.measuring = measuring;
        this.fabrics = fabrics.stream()
                .collect(Collectors.toMap(JobFabric::name, fabric -> fabric, (a, b) -> a, TreeMap::new));
        this.colours = order.stream()
                .flatMap(line -> line.colour().stream())
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    JobPlan read(Entry entry) throws JobException {
        Fields keys = entry.fields(
                EXAMPLE, "max-plies", "max-garments", "table-length", "over", "under", "least", "one-colour", "bolts");
        List<String> oneColour = new ArrayList<>();
        if (keys.get("one-colour").isPresent()) {
            for (Entry item : keys.get("one-colour").get().items("- oat-lining")) {
                oneColour.add(fabric(item).name());
            }
        }
        List<Bolt> bolts = new ArrayList<>();
        boolean fromStash = keys.get("bolts").filter(Entry::isText).isPresent();
        if (fromStash) {
            Entry text = keys.get("bolts").orElseThrow();
            String word = text.text("stash, or a list of bolts");
            if (!word.equals(JobBuying.STASH)) {
                throw text.error(
                        "found %s; write stash, or a list: - {of: reef-print, length: 12 m}".formatted(Quote.of(word)));
            }
        } else if (keys.get("bolts").isPresent()) {
            for (Entry item : keys.get("bolts").get().items("- {of: reef-print, length: 12 m}")) {
                bolts.add(bolt(item, oneColour));
            }
        }
        return new JobPlan(
                keys.read("max-plies", e -> Measuring.count(e, MOST_PLIES, "how many plies, such as 2")),
                keys.read("max-garments", e -> Measuring.count(e, MOST_GARMENTS, "how many garments, such as 4")),
                keys.read("table-length", e -> measuring.positive(e, LONGEST_TABLE)),
                keys.read("over", Measuring::share).orElse(0.0),
                keys.read("under", Measuring::share).orElse(0.0),
                keys.read("least", e -> e.word(JobPlan.Least.class, Set.of())),
                oneColour,
                bolts,
                fromStash);
    }

    private JobFabric fabric(Entry entry) throws JobException {
        String name = entry.text("a fabric of this job");
        JobFabric fabric = fabrics.get(name);
        if (fabric == null) {
            throw entry.error("found %s; the fabrics of this job are %s%s"
                    .formatted(
                            Quote.of(name), String.join(", ", fabrics.keySet()), Entry.meant(name, fabrics.keySet())));
        }
        return fabric;
    }

    private Bolt bolt(Entry entry, List<String> oneColour) throws JobException {
        Fields keys = entry.fields("{of: reef-print, length: 12 m}", "name", "of", "colour", "length", "width");
        JobFabric fabric = fabric(keys.need("of", fabrics.keySet().iterator().next()));
        boolean inColours = !colours.isEmpty() && !oneColour.contains(fabric.name());
        Optional<String> colour = keys.read("colour", this::colour);
        if (inColours && colour.isEmpty()) {
            throw entry.keyError("this bolt of %s has no colour; the order's are %s"
                    .formatted(fabric.name(), String.join(", ", colours)));
        }
        if (!inColours && colour.isPresent()) {
            throw entry.keyError(
                    colours.isEmpty()
                            ? "this bolt has a colour and the lines of the order have none; give each line a colour too"
                            : "%s is listed under one-colour; its bolts have no colour".formatted(fabric.name()));
        }
        Optional<Length> width = keys.read("width", e -> measuring.positive(e, LONGEST_TABLE));
        if (width.isPresent() && width.get().compareTo(fabric.reach()) < 0) {
            throw entry.keyError("this bolt is %s wide, and what the job says of %s reaches %s across it"
                    .formatted(
                            LengthText.print(width.get(), LengthUnit.CM),
                            fabric.name(),
                            LengthText.print(fabric.reach(), LengthUnit.CM)));
        }
        return new Bolt(
                keys.read("name", e -> e.text("the label on the bolt, such as reef-1")),
                fabric.name(),
                colour,
                measuring.positive(keys.need("length", "12 m"), LONGEST_BOLT),
                width);
    }

    private String colour(Entry entry) throws JobException {
        String colour = entry.text("a colour of the order");
        if (!colours.contains(colour) && !colours.isEmpty()) {
            throw entry.error("found %s; the colours of the order are %s%s"
                    .formatted(Quote.of(colour), String.join(", ", colours), Entry.meant(colour, colours)));
        }
        return colour;
    }
}
