package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.model.Length;
import lengthwise.model.Size;

/** How long something is cut for one line of the order: the sum of some parts. */
public record LengthRule(List<Part> parts) {
    public LengthRule {
        parts = List.copyOf(parts);
    }

    /**
     * Something measured, times a factor, and a length added to it.
     *
     * @param plus may be negative
     */
    public record Part(Source source, double times, Length plus) {
        Part(Source source) {
            this(source, 1, Length.ZERO);
        }
    }

    /** What a length is taken from. */
    public sealed interface Source {
        /** The same for every garment. */
        record Fixed(Length length) implements Source {}

        /** A measure of the order line, by its name. */
        record OfMeasure(String measure) implements Source {}

        /** An edge that the job names a length for. */
        record OfEdge(String edge) implements Source {}

        /** A length for each size, by the names of the sizes, in the order of the file. */
        record BySize(Map<String, Length> lengths) implements Source {
            public BySize {
                lengths = new LinkedHashMap<>(lengths);
            }
        }
    }

    /** Returns the rule of what is as long for every garment. */
    public static LengthRule of(Length length) {
        return new LengthRule(List.of(new Part(new Source.Fixed(length))));
    }

    /** Returns the rule of what has a length by size. */
    static LengthRule bySize(Map<String, Length> lengths) {
        return new LengthRule(List.of(new Part(new Source.BySize(lengths))));
    }

    /** Says whether all edges that it goes by have a length; those that are measured have none before that. */
    boolean isKnown(Map<String, LengthRule> edges) {
        return parts.stream()
                .allMatch(part -> !(part.source instanceof Source.OfEdge of) || edges.containsKey(of.edge));
    }

    /** Returns the names of the measures that the order has to give. */
    List<String> measures() {
        return parts.stream()
                .flatMap(part -> part.source instanceof Source.OfMeasure of ? Stream.of(of.measure) : Stream.empty())
                .distinct()
                .toList();
    }

    /** Says whether it is the same for every garment. */
    boolean isFixed() {
        return parts.stream().allMatch(part -> part.source instanceof Source.Fixed);
    }

    /**
     * Returns what a line of the order would have to give and does not, a clause.
     *
     * @param edges the lengths that the job names; they go by no edges themselves. What lacks there lacks nothing of the order
     */
    Optional<String> lacking(OrderLine line, Map<String, LengthRule> edges) {
        for (Part part : parts) {
            if (part.source instanceof Source.OfEdge of && edges.containsKey(of.edge)) {
                Optional<String> lacking = edge(of, edges)
                        .lacking(line)
                        .map(what -> "goes by the edge %s, which %s".formatted(of.edge, what));
                if (lacking.isPresent()) {
                    return lacking;
                }
            }
            if (part.source instanceof Source.OfMeasure of
                    && line.measure(of.measure).isEmpty()) {
                return Optional.of("goes by the measure %s, which this line does not give; add %s: 70 cm"
                        .formatted(of.measure, of.measure));
            }
            if (part.source instanceof Source.BySize by
                    && !by.lengths.containsKey(line.size().name())) {
                return Optional.of("has a length by size, and none for %s; it has %s"
                        .formatted(
                                line.size().equals(Size.ONE)
                                        ? "a line without a size"
                                        : line.size().name(),
                                String.join(", ", by.lengths.keySet())));
            }
        }
        return Optional.empty();
    }

    /** Returns likewise what a line does not give, where no edge can be meant. */
    Optional<String> lacking(OrderLine line) {
        return lacking(line, Map.of());
    }

    /**
     * Returns how long it is for a line of the order that lacks nothing.
     *
     * @throws JobException in one clause, without a place, if it comes to nothing
     */
    public Length lengthFor(OrderLine line) throws JobException {
        return lengthFor(line, Map.of());
    }

    /**
     * Returns likewise how long it is where it may go by edges.
     *
     * @param edges the lengths that the job names
     * @throws JobException likewise
     */
    Length lengthFor(OrderLine line, Map<String, LengthRule> edges) throws JobException {
        Length sum = Length.ZERO;
        List<String> found = new ArrayList<>();
        for (Part part : parts) {
            Length length = source(part.source, line, edges).scaled(part.times).plus(part.plus);
            found.add(LengthText.print(length, LengthUnit.CM));
            sum = sum.plus(length);
        }
        if (sum.micrometres() <= 0) {
            throw new JobException("comes to %s; it must be more than 0".formatted(String.join(" + ", found)));
        }
        return sum;
    }

    private static LengthRule edge(Source.OfEdge of, Map<String, LengthRule> edges) {
        return Objects.requireNonNull(edges.get(of.edge), "no edge " + of.edge);
    }

    private static Length source(Source source, OrderLine line, Map<String, LengthRule> edges) throws JobException {
        if (source instanceof Source.OfEdge of) {
            return edge(of, edges).lengthFor(line);
        }
        if (source instanceof Source.OfMeasure of) {
            return line.measure(of.measure).orElseThrow();
        }
        return source instanceof Source.BySize by
                ? Objects.requireNonNull(by.lengths.get(line.size().name()))
                : ((Source.Fixed) source).length;
    }
}
