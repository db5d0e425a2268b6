package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.drawing.EdgePoint;

/** Reads the edges that lengths are named for: a length, or edges of drawn pieces that are measured. */
final class EdgeReading {
    private static final String EXAMPLE = "{piece: brief-front, from: corner 2, to: notch 1}";
    private static final Pattern POINT = Pattern.compile("([a-z]+) ([0-9]{1,4})");

    private final LengthReading lengths;

    EdgeReading(LengthReading lengths) {
        this.lengths = lengths;
    }

    JobSewing.Edge read(Entry entry) throws JobException {
        if (!entry.isMapping() || !entry.named(EXAMPLE).containsKey("drawn")) {
            return new JobSewing.Edge(Optional.of(lengths.read(entry)), List.of());
        }
        Fields edge = entry.fields("{drawn: %s, stated: 62 cm}".formatted(EXAMPLE), "drawn", "stated");
        return new JobSewing.Edge(edge.read("stated", lengths::read), drawn(edge.need("drawn", EXAMPLE)));
    }

    private static List<DrawnEdge> drawn(Entry entry) throws JobException {
        if (entry.isMapping()) {
            return List.of(one(entry));
        }
        List<DrawnEdge> edges = new ArrayList<>();
        for (Entry item : entry.items(EXAMPLE)) {
            edges.add(one(item));
        }
        if (edges.isEmpty()) {
            throw entry.error("found no edge; write " + EXAMPLE);
        }
        return edges;
    }

    private static DrawnEdge one(Entry entry) throws JobException {
        Fields edge = entry.fields(EXAMPLE, "piece", "edge", "from", "to", "past", "counts");
        String piece = edge.need("piece", "brief-front").text("the name of a drawn piece");
        Optional<DrawnEdge.Edge> whole = edge.read("edge", e -> e.word(DrawnEdge.Edge.class, Set.of()));
        Optional<DrawnEdge.Counts> counts = edge.read("counts", e -> e.word(DrawnEdge.Counts.class, Set.of()));
        if (whole.isEmpty()) {
            return new DrawnEdge(
                    piece,
                    Optional.of(new DrawnEdge.Between(
                            point(edge.need("from", "corner 2, or edge: whole-outline")),
                            point(edge.need("to", "notch 1")),
                            edge.read("past", EdgeReading::point))),
                    counts);
        }
        for (String key : List.of("from", "to", "past")) {
            if (edge.get(key).isPresent()) {
                throw edge.get(key)
                        .get()
                        .keyError("the whole outline has no ends; leave %s out, or edge".formatted(key));
            }
        }
        return new DrawnEdge(piece, Optional.empty(), counts);
    }

    private static EdgePoint point(Entry at) throws JobException {
        String example =
                "corner or notch and its number on the piece, such as corner 2; lengthwise inspect --picture shows them";
        String text = at.text(example);
        Matcher point = POINT.matcher(text);
        for (EdgePoint.Kind kind : EdgePoint.Kind.values()) {
            if (point.matches() && point.group(1).equals(Entry.word(kind)) && Integer.parseInt(point.group(2)) > 0) {
                return new EdgePoint(kind, Integer.parseInt(point.group(2)));
            }
        }
        throw at.error("found " + Quote.of(text) + "; write " + example);
    }
}
