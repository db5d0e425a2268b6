package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.EdgePoint;
import lengthwise.drawing.PieceEdges;
import lengthwise.drawing.PieceEdges.Line;
import lengthwise.drawing.PieceEdges.Measured;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Size;
import lengthwise.workshop.MeasuredEdge;
import lengthwise.workshop.MeasuredEdge.Along;

/**
 * The lengths that a job names for its edges, once its drawings are read. What is stated counts; what is only drawn is measured,
 * size by size, as it is sewn: along the line of stitching, along the outline where the job adds the allowance to it, else along
 * the cut line. Shrinkage that is added to the pieces is not in it.
 *
 * @param lengths of every edge by its name
 * @param measured what was measured, edge by edge and size by size
 */
public record SewnEdges(Map<String, LengthRule> lengths, List<MeasuredEdge> measured) {
    /** There are none. */
    public static final SewnEdges NONE = new SewnEdges(Map.of(), List.of());

    /** A named point lies at nearly the same part of the piece in every size: within this share of its length and width. */
    private static final double SAME_PLACE = 0.2;

    public SewnEdges {
        lengths = new LinkedHashMap<>(lengths);
        measured = List.copyOf(measured);
    }

    /**
     * Measures the edges of a job.
     *
     * @throws JobException if a piece or a point is not there, lies elsewhere in another size, or something comes to nothing
     */
    static SewnEdges of(Job job, PatternBook book, Orders.Complaints complaints) throws JobException {
        Map<String, LengthRule> lengths = new LinkedHashMap<>();
        List<MeasuredEdge> measured = new ArrayList<>();
        for (Map.Entry<String, JobSewing.Edge> entry : job.sewing().edges().entrySet()) {
            Edge edge = new Edge(job, book, complaints, entry.getKey(), entry.getValue());
            lengths.put(edge.name, edge.length());
            measured.addAll(edge.measured());
        }
        SewnEdges edges = new SewnEdges(lengths, measured);
        edges.refuseNothing(job, complaints);
        return edges;
    }

    /** Returns where a stated length is not what is drawn, a sentence each. */
    List<String> warnings() {
        return measured.stream()
                .filter(MeasuredEdge::isOff)
                .map(edge -> "The edge %s%s is stated as %s, and drawn it measures %s: %s. The stated length counts."
                        .formatted(
                                edge.edge(),
                                edge.size().isEmpty() ? "" : " in size " + edge.size(),
                                LengthWords.both(edge.stated().orElseThrow()),
                                LengthWords.both(edge.drawn()),
                                edge.difference().orElseThrow()))
                .toList();
    }

    private void refuseNothing(Job job, Orders.Complaints complaints) throws JobException {
        for (JobSewing.Keyed keyed : job.sewing().rules()) {
            for (OrderLine line : job.order()) {
                try {
                    keyed.rule().lengthFor(line, lengths);
                } catch (JobException nothing) {
                    throw complaints.at(
                            "sewing." + keyed.key(),
                            "%s%s"
                                    .formatted(
                                            line.size().equals(Size.ONE)
                                                    ? ""
                                                    : "for size " + line.size().name() + " it ",
                                            nothing.getMessage()));
                }
            }
        }
    }

    /** One edge while it is measured. */
    private static final class Edge {
        private final Job job;
        private final PatternBook book;
        private final Orders.Complaints complaints;
        private final String name;
        private final JobSewing.Edge said;
        private final Map<String, MeasuredEdge> bySize = new LinkedHashMap<>();

        Edge(Job job, PatternBook book, Orders.Complaints complaints, String name, JobSewing.Edge said)
                throws JobException {
            this.job = job;
            this.book = book;
            this.complaints = complaints;
            this.name = name;
            this.said = said;
            if (!said.drawn().isEmpty()) {
                for (OrderLine line : job.order()) {
                    if (!bySize.containsKey(line.size().name())) {
                        bySize.put(line.size().name(), measure(line.size()));
                    }
                }
            }
        }

        LengthRule length() {
            return said.length()
                    .orElseGet(() -> LengthRule.bySize(bySize.entrySet().stream()
                            .collect(Collectors.toMap(
                                    Map.Entry::getKey,
                                    size -> size.getValue().drawn(),
                                    (a, b) -> a,
                                    LinkedHashMap::new))));
        }

        /** Returns what was measured: for each size, and again where lines of one size state different lengths. */
        List<MeasuredEdge> measured() throws JobException {
            if (said.length().isEmpty() || bySize.isEmpty()) {
                return List.copyOf(bySize.values());
            }
            Map<MeasuredEdge, Boolean> stated = new LinkedHashMap<>();
            for (OrderLine line : job.order()) {
                MeasuredEdge edge = bySize.get(line.size().name());
                if (edge != null) {
                    stated.put(edge.stated(said.length().get().lengthFor(line)), true);
                }
            }
            return List.copyOf(stated.keySet());
        }

        private MeasuredEdge measure(Size size) throws JobException {
            long sum = 0;
            List<String> where = new ArrayList<>();
            boolean sewn = true;
            for (int i = 0; i < said.drawn().size(); i++) {
                DrawnEdge part = said.drawn().get(i);
                String key =
                        "sewing.edges.%s.drawn%s".formatted(name, said.drawn().size() > 1 ? "[" + (i + 1) + "]" : "");
                PatternBook.Page page = page(part, size, key);
                Measured measured = measured(part, page, size, key);
                boolean twice = part.counts()
                        .map(counts -> counts == DrawnEdge.Counts.TWICE)
                        .orElse(measured.meetsFold());
                sum += StrictMath.round(measured.micrometres() * (twice ? 2 : 1));
                where.add(words(part) + (twice ? ", twice" : ""));
                sewn &= measured.along() == Line.SEW_LINE
                        || page.drawing()
                                .seamAllowance()
                                .filter(allowance -> allowance.toAdd().micrometres() > 0)
                                .isPresent();
            }
            return new MeasuredEdge(
                    name,
                    size.name(),
                    new Length(sum),
                    sewn ? Along.SEW_LINE : Along.CUT_LINE,
                    String.join("; ", where),
                    Optional.empty());
        }

        private static String words(DrawnEdge part) {
            return part.piece()
                    + part.between()
                            .map(ends -> " from %s to %s%s"
                                    .formatted(
                                            ends.from().called(),
                                            ends.to().called(),
                                            ends.past()
                                                    .map(past -> " past " + past.called())
                                                    .orElse("")))
                            .orElse(" all round");
        }

        private PatternBook.Page page(DrawnEdge part, Size size, String key) throws JobException {
            if (book.pages(part.piece()).isEmpty()) {
                throw complaints.at(
                        key + ".piece",
                        "found %s; the drawings hold %s%s"
                                .formatted(
                                        Quote.of(part.piece()),
                                        book.names().isEmpty() ? "no piece" : String.join(", ", book.names()),
                                        Entry.meant(part.piece(), book.names())));
            }
            try {
                return book.page(part.piece(), size);
            } catch (JobException notInThatSize) {
                throw complaints.at(key, String.valueOf(notInThatSize.getMessage()));
            }
        }

        private Measured measured(DrawnEdge part, PatternBook.Page page, Size size, String key) throws JobException {
            PieceEdges edges = PieceEdges.of(page.piece());
            if (part.between().isEmpty()) {
                return edges.whole();
            }
            DrawnEdge.Between ends = part.between().get();
            try {
                Measured measured = edges.between(ends.from(), ends.to(), ends.past());
                refuseElsewhere(part.piece(), edges, page, size, ends.from(), key + ".from");
                refuseElsewhere(part.piece(), edges, page, size, ends.to(), key + ".to");
                if (ends.past().isPresent()) {
                    refuseElsewhere(part.piece(), edges, page, size, ends.past().get(), key + ".past");
                }
                return measured;
            } catch (DrawingException unclear) {
                throw complaints.at(
                        key,
                        "%s%s: %s. lengthwise inspect --picture numbers them"
                                .formatted(
                                        part.piece(),
                                        page.size().map(in -> " in size " + in).orElse(""),
                                        unclear.getMessage()));
            }
        }

        /** Notches are counted as they were drawn: in another size the same number may be another notch. */
        private void refuseElsewhere(
                String piece, PieceEdges edges, PatternBook.Page page, Size size, EdgePoint point, String key)
                throws JobException {
            PatternBook.Page first = book.page(piece, job.order().get(0).size());
            Optional<Point> there = PieceEdges.of(first.piece()).at(point);
            if (first.equals(page) || there.isEmpty()) {
                return;
            }
            double[] a = place(first, there.get());
            double[] b = place(page, edges.at(point).orElseThrow());
            if (Math.abs(a[0] - b[0]) > SAME_PLACE || Math.abs(a[1] - b[1]) > SAME_PLACE) {
                throw complaints.at(
                        key,
                        "%s of %s lies elsewhere in size %s than in size %s: %s of its width and %s of its height from the upper left, not %s and %s; draw the marks of every size in the same order"
                                .formatted(
                                        point.called(),
                                        piece,
                                        size.name(),
                                        job.order().get(0).size().name(),
                                        percent(b[0]),
                                        percent(b[1]),
                                        percent(a[0]),
                                        percent(a[1])));
            }
        }

        private static double[] place(PatternBook.Page page, Point point) {
            Box box = page.piece().outline().box();
            return new double[] {
                (point.x() - box.minX()) / (double) Math.max(1, box.width()),
                (point.y() - box.minY()) / (double) Math.max(1, box.height())
            };
        }

        private static String percent(double share) {
            return StrictMath.round(share * 100) + " %";
        }
    }
}
