package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lengthwise.job.LengthRule.Part;
import lengthwise.job.LengthRule.Source;
import lengthwise.model.Length;

/** Reads how long something is cut: a length, a rule, or a list of them that are added up. */
final class LengthReading {
    static final String EXAMPLE = "46 cm, or {measure: bust, times: 0.5, plus: 30 cm}";

    /** No strip and no seam of a garment is longer. */
    static final Length LONGEST = Length.ofMillimetres(100_000);

    private static final List<String> SOURCES = List.of("length", "measure", "by-size", "edge");

    private final Measuring measuring;
    private final Optional<Set<String>> edges;

    LengthReading(Measuring measuring) {
        this(measuring, Optional.empty());
    }

    private LengthReading(Measuring measuring, Optional<Set<String>> edges) {
        this.measuring = measuring;
        this.edges = edges;
    }

    /** Returns one that knows the edges that the job names. */
    LengthReading alongEdges(Set<String> names) {
        return new LengthReading(measuring, Optional.of(names));
    }

    LengthRule read(Entry entry) throws JobException {
        if (entry.isText() || entry.isMapping()) {
            return new LengthRule(List.of(part(entry)));
        }
        List<Part> parts = new ArrayList<>();
        for (Entry item : entry.items(EXAMPLE)) {
            parts.add(part(item));
        }
        if (parts.isEmpty()) {
            throw entry.error("found no length; write " + EXAMPLE);
        }
        return new LengthRule(parts);
    }

    private Part part(Entry entry) throws JobException {
        if (entry.isText()) {
            return new Part(new Source.Fixed(measuring.positive(entry, LONGEST)));
        }
        Fields part = edges.isPresent()
                ? entry.fields(EXAMPLE, "length", "measure", "by-size", "edge", "times", "plus")
                : entry.fields(EXAMPLE, "length", "measure", "by-size", "times", "plus");
        List<String> said =
                SOURCES.stream().filter(key -> part.get(key).isPresent()).toList();
        if (said.size() > 1) {
            throw part.need(said.get(1), "")
                    .keyError(
                            "a length goes by one of %s; for a sum write a list".formatted(String.join(" and ", said)));
        }
        if (said.isEmpty()) {
            throw entry.missing("measure", "measure: ribcage");
        }
        Entry source = part.need(said.get(0), "");
        return new Part(
                switch (said.get(0)) {
                    case "length" -> new Source.Fixed(measuring.positive(source, LONGEST));
                    case "edge" -> new Source.OfEdge(edge(source));
                    case "measure" -> new Source.OfMeasure(measure(source));
                    default -> new Source.BySize(bySize(source));
                },
                part.read("times", Measuring::factor).orElse(1.0),
                part.read("plus", measuring::signed).orElse(Length.ZERO));
    }

    private String edge(Entry entry) throws JobException {
        String edge = entry.text("the name of an edge");
        Set<String> known = edges.orElse(Set.of());
        if (!known.contains(edge)) {
            throw entry.error("found %s; %s%s"
                    .formatted(
                            Quote.of(edge),
                            known.isEmpty()
                                    ? "no edge is named: write edges: {leg: 62 cm} under sewing"
                                    : "the edges are " + String.join(", ", known),
                            Entry.meant(edge, known)));
        }
        return edge;
    }

    private static String measure(Entry entry) throws JobException {
        String measure = entry.text("the name of a measure in the order");
        if (OrderReading.KEYS.contains(measure)) {
            throw entry.error("found %s, which is a key of its own in the order; give the measure another name"
                    .formatted(Quote.of(measure)));
        }
        return measure;
    }

    private Map<String, Length> bySize(Entry entry) throws JobException {
        Map<String, Length> lengths = new LinkedHashMap<>();
        for (Entry size : entry.named("a length for each size, such as {S: 40 cm, M: 44 cm}")
                .values()) {
            lengths.put(size.name(), measuring.positive(size, LONGEST));
        }
        if (lengths.isEmpty()) {
            throw entry.error("found no size; write a length for each, such as {S: 40 cm, M: 44 cm}");
        }
        return lengths;
    }
}
