package lengthwise.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Length;

/**
 * What garments are sewn with, all of it by names of the maker's own.
 *
 * @param edges lengths that others go by, in the order of the file
 * @param thread what is said of it, where there are seams
 */
public record JobSewing(
        Map<String, Edge> edges,
        List<Elastic> elastic,
        List<Seam> seams,
        Optional<Spools> thread,
        List<Binding> bindings,
        List<Label> labels) {
    /** Nothing is said. */
    public static final JobSewing UNSAID =
            new JobSewing(Map.of(), List.of(), List.of(), Optional.empty(), List.of(), List.of());

    public JobSewing {
        edges = new LinkedHashMap<>(edges);
        elastic = List.copyOf(elastic);
        seams = List.copyOf(seams);
        bindings = List.copyOf(bindings);
        labels = List.copyOf(labels);
    }

    /**
     * How long an edge is: as stated, or as drawn, or both, and then the stated length counts.
     *
     * @param drawn edges of pieces, which are added up
     */
    public record Edge(Optional<LengthRule> length, List<DrawnEdge> drawn) {
        public Edge {
            drawn = List.copyOf(drawn);
        }
    }

    /** Returns the lengths of the edges that have one before the drawings are read. */
    Map<String, LengthRule> stated() {
        Map<String, LengthRule> stated = new LinkedHashMap<>();
        edges.forEach((name, edge) -> edge.length().ifPresent(length -> stated.put(name, length)));
        return stated;
    }

    /**
     * Elastic along an edge.
     *
     * @param width by the size, where said
     * @param length of one, as cut, without the join
     * @param each how many a garment has
     * @param join what its ends lie over each other
     */
    public record Elastic(
            String name,
            Optional<LengthRule> width,
            LengthRule length,
            int each,
            Length join,
            Optional<Price> price,
            Optional<Length> soldBy) {}

    /**
     * A seam.
     *
     * @param stitch the class of ISO 4915
     * @param ratio of thread to seam, where it is not that of the class
     * @param each how many a garment has
     */
    public record Seam(String name, int stitch, OptionalDouble ratio, LengthRule length, int each) {}

    /**
     * The spools that the thread for all seams is bought on.
     *
     * @param spool how much is on one
     * @param price of one
     * @param waste a share, 0.15 for 15 %
     */
    public record Spools(Optional<Length> spool, OptionalDouble price, OptionalDouble waste) {}

    /**
     * A strip that is cut from a fabric bought for it, not laid in its marker.
     *
     * @param role what the fabric is for
     * @param each how many a garment has
     */
    public record Binding(String name, String role, Length cutWidth, LengthRule length, int each, Run cut) {}

    /** How the strips of a binding run. */
    public enum Run {
        STRAIGHT,
        BIAS
    }

    /**
     * A label, or anything else that is bought by the piece.
     *
     * @param each how many a garment has
     * @param price of so many
     */
    public record Label(String name, int each, Optional<PriceOf> price, Optional<Integer> soldBy) {}

    /** The price of a number of pieces. */
    public record PriceOf(double amount, int pieces) {}

    /** A rule and the key that it stands under. */
    record Keyed(String key, LengthRule rule) {}

    /** Returns every rule in it. */
    List<Keyed> rules() {
        return Stream.of(
                        edges.entrySet().stream()
                                .flatMap(edge -> edge.getValue().length().stream()
                                        .map(length -> new Keyed(
                                                "edges." + edge.getKey()
                                                        + (edge.getValue()
                                                                        .drawn()
                                                                        .isEmpty()
                                                                ? ""
                                                                : ".stated"),
                                                length))),
                        elastic.stream()
                                .flatMap(one -> one.width().stream()
                                        .map(width -> new Keyed("elastic." + one.name() + ".width", width))),
                        elastic.stream().map(one -> new Keyed("elastic." + one.name() + ".length", one.length())),
                        seams.stream().map(one -> new Keyed("seams." + one.name() + ".length", one.length())),
                        bindings.stream().map(one -> new Keyed("bindings." + one.name() + ".length", one.length())))
                .flatMap(rules -> rules)
                .toList();
    }
}
