package lengthwise.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.drawing.Chain;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Painted.Anchor;
import lengthwise.drawing.Painted.Line;
import lengthwise.geometry.Point;
import lengthwise.model.LengthWords;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.MarkerPainting;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/**
 * The pieces of a marker as paper pieces, at true size: each once per size, on a page of its own that is turned so that it
 * fits, or on as few pages as hold it. A piece stands as it was first laid, with its grain arrow along the page.
 */
public final class PiecePrint {
    private static final double HEADING = 4;
    private static final String ON_FOLD = "on fold";

    /** What the label of a piece says of how it is cut. */
    private static final List<String> MANNERS = List.of(ON_FOLD, "L + R", "bias");

    /** Micrometres. */
    private static final double SHORTEST_FOLD = 5_000;

    /** The line of the edge of the cloth is half a millimetre wide. */
    private static final double ON_THE_EDGE = 0.3;

    private final MarkerPainting painting;
    private final PageSetup setup;
    private final Book book;

    private PiecePrint(MarkerPainting painting, PageSetup setup, Book book) {
        this.painting = painting;
        this.setup = setup;
        this.book = book;
    }

    public static Printed of(MarkerPainting painting, PageSetup setup) throws IOException {
        try (Book book = new Book(MarkerPrint.caption(painting))) {
            return new PiecePrint(painting, setup, book).print();
        }
    }

    private record Name(String piece, String size) {}

    /** Returns name and size, and how it is cut where the marker says so: on the fold, both hands at once, on the bias. */
    private String called(Name name, List<Integer> laid) {
        Set<String> words = new LinkedHashSet<>();
        words.add(name.piece);
        if (!name.size.isEmpty()) {
            words.add("size " + name.size);
        }
        for (int piece : laid) {
            written(piece)
                    .flatMap(line -> Stream.of(line.split(" · ", -1)))
                    .filter(part -> !part.equals(name.piece))
                    .forEach(part -> MANNERS.stream()
                            .filter(manner ->
                                    part.equals(manner) || part.startsWith(manner + " ") || part.endsWith(" " + manner))
                            .forEach(words::add));
        }
        return String.join(" · ", words);
    }

    /** Returns what is written on a piece, and beside the marker where the piece bears only its number. */
    private Stream<String> written(int piece) {
        String key = painting.marker().numbers().get(piece) + " = ";
        return Stream.concat(
                        painting.pieces().get(piece).stream(),
                        painting.beside().stream()
                                .filter(one -> one instanceof Painted.Words words
                                        && words.words().startsWith(key)))
                .filter(Painted.Words.class::isInstance)
                .map(one -> ((Painted.Words) one).words());
    }

    private Printed print() throws IOException {
        Map<Name, List<Integer>> pieces = IntStream.range(0, painting.pieces().size())
                .boxed()
                .sorted(Comparator.comparing(i -> painting.marker().numbers().get(i)))
                .collect(Collectors.groupingBy(
                        i -> new Name(
                                painting.marker().pieces().get(i).piece(),
                                painting.marker().pieces().get(i).size()),
                        LinkedHashMap::new,
                        Collectors.toList()));
        firstPage(pieces);
        int read = book.pages();
        int number = 0;
        for (Map.Entry<Name, List<Integer>> piece : pieces.entrySet()) {
            number++;
            List<Integer> laid = piece.getValue();
            piece(number, "%s of %s: %s".formatted(number, pieces.size(), called(piece.getKey(), laid)), laid);
        }
        int pages = book.pages();
        return new Printed(book.bytes(), pages, pages - read, 0, 0, List.of(), book.missingLetters());
    }

    private void firstPage(Map<Name, List<Integer>> pieces) throws IOException {
        Flow.Page check = page();
        List<String> how = new ArrayList<>(MarkerPrint.measuring());
        how.add(
                "%s; margin %s. Pieces that are larger than a sheet go over several: cut along the whole blue line, lay it on"
                                .formatted(setup.paper().called(), LengthWords.metric(setup.margin()))
                        + " the dashed one, and tape where the corners of the diamonds meet.");
        how.add("Each piece is there once for its size. A piece for the other hand is the same paper turned over.");
        how.add(
                "Cut along the middle of the black line. Blades cut hands: fingers behind the ruler's edge, blades closed"
                        + " when laid down.");
        CheckSheet.paint(
                check.canvas(),
                check.area(),
                painting.marker().fabric(),
                painting.marker().job(),
                how,
                this::page);
        Flow flow = new Flow(page(), this::page);
        flow.heading("Paper pieces");
        List<List<String>> rows = new ArrayList<>();
        for (Map.Entry<Name, List<Integer>> piece : pieces.entrySet()) {
            rows.add(List.of(
                    Integer.toString(rows.size() + 1),
                    called(new Name(piece.getKey().piece, ""), piece.getValue()),
                    piece.getKey().size,
                    counts(piece.getValue())));
        }
        flow.table(List.of(0.0, 0.07, 0.45, 0.6), List.of("no.", "piece", "size", "laid on the marker"), rows);
        flow.skip(6);
        flow.heading("Written beside the marker");
        new Notes(painting).set(flow);
    }

    private Flow.Page page() throws IOException {
        return MarkerPrint.page(book, setup.paper().width(), setup.paper().height(), setup.margin());
    }

    /** Says how often a piece is laid, and for which hand. */
    private String counts(List<Integer> laid) {
        Map<String, Long> hands = laid.stream()
                .map(i -> painting.marker().pieces().get(i))
                .collect(Collectors.groupingBy(PlacedPiece::hand, LinkedHashMap::new, Collectors.counting()));
        return laid.size()
                + (laid.size() == 1 ? " time" : " times")
                + (hands.size() == 1 && hands.containsKey("")
                        ? ""
                        : hands.entrySet().stream()
                                .map(hand -> hand.getValue() + " "
                                        + (hand.getKey().isEmpty() ? "without hand" : hand.getKey()))
                                .collect(Collectors.joining(", ", ": ", "")));
    }

    private void piece(int number, String called, List<Integer> laid) throws IOException {
        int first = laid.get(0);
        List<Painted> drawn = withOwnWords(first, called);
        Extent outline = Extent.of(painting.cutLine(first));
        Stream<Painted> heading = Stream.of(
                new Painted.Words(
                        called, outline.minX(), outline.minY() - 6.5, HEADING, 0, Anchor.START, true, Canvas.BLACK),
                new Painted.Words(
                        "Laid " + counts(laid) + " on " + painting.marker().fabric() + shown(first),
                        outline.minX(),
                        outline.minY() - 2,
                        3,
                        0,
                        Anchor.START,
                        false,
                        Canvas.BLACK));
        List<Painted> all =
                new ArrayList<>(Stream.concat(heading, drawn.stream()).toList());
        if (called.contains(" · " + ON_FOLD)) {
            all.addAll(foldEdges(first));
        }
        Extent extent = book.extent(all).grown(1);
        MarkerPrint.Shape shape = MarkerPrint.Shape.of(painting.pieces().get(first));
        Tiles upright = new Tiles(setup, extent, shape::meets);
        Tiles turned = new Tiles(setup.landscape(), extent, shape::meets);
        Tiles best = turned.needed().size() < upright.needed().size() ? turned : upright;
        PDFormXObject form = book.form(extent, canvas -> canvas.paint(all));
        best.print(book, form, number, called + " · " + MarkerPrint.caption(painting));
    }

    private String shown(int piece) {
        String hand = painting.marker().pieces().get(piece).hand();
        return hand.isEmpty() ? "" : "; this side up it is " + hand;
    }

    /** On the cloth a piece on the fold lies with that edge along the edge of the cloth; on paper the edge is marked. */
    private List<Painted> foldEdges(int piece) {
        Extent cloth = Extent.of(painting.clothEdge());
        List<Chain> edges = new ArrayList<>();
        for (Chain chain : painting.cutLine(piece).chains()) {
            for (int i = 0; i < chain.points().size(); i++) {
                Point from = chain.points().get(i);
                Point to = chain.points().get((i + 1) % chain.points().size());
                boolean along = both(from.y(), to.y(), cloth.minY()) || both(from.y(), to.y(), cloth.maxY());
                if (from.distance(to) > SHORTEST_FOLD && (along || both(from.x(), to.x(), cloth.minX()))) {
                    edges.add(new Chain(List.of(from, to), false));
                }
            }
        }
        if (edges.isEmpty()) {
            return List.of();
        }
        Line line = new Line(Canvas.BLACK, 1.2, List.of(14.0, 3.0, 2.0, 3.0), 1);
        List<Point> first = edges.get(0).points();
        double x = (first.get(0).x() + first.get(1).x()) / 2000.0;
        double y = (first.get(0).y() + first.get(1).y()) / 2000.0;
        boolean upright = first.get(0).x() == first.get(1).x();
        return List.of(
                new Painted.Path(edges, Optional.empty(), Optional.of(line), List.of(), "fold"),
                new Painted.Words(
                        "this edge on the fold",
                        upright ? x + 5 : x,
                        upright ? y : y + (y < (cloth.minY() + cloth.maxY()) / 2 ? 5.5 : -2.5),
                        4,
                        upright ? Math.PI / 2 : 0,
                        Anchor.MIDDLE,
                        true,
                        Canvas.BLACK));
    }

    private static boolean both(long one, long other, double edge) {
        return Math.abs(one / 1000.0 - edge) < ON_THE_EDGE && Math.abs(other / 1000.0 - edge) < ON_THE_EDGE;
    }

    /** A paper piece serves every garment of its size, so what is written on it names none. */
    private List<Painted> withOwnWords(int piece, String called) throws IOException {
        List<Painted> kept = new ArrayList<>();
        List<Painted.Words> words = new ArrayList<>();
        for (Painted one : painting.pieces().get(piece)) {
            if (one instanceof Painted.Words line) {
                words.add(line);
            } else if (one instanceof Painted.Path path) {
                // Paper is white, and tints cost ink.
                kept.add(
                        path.mark().isEmpty()
                                ? new Painted.Path(path.chains(), Optional.empty(), path.line(), path.clip(), "")
                                : path);
            }
        }
        if (!words.isEmpty()) {
            Painted.Words middle = words.get(words.size() / 2);
            Extent room = book.extent(words);
            double along = Math.abs(Math.cos(middle.radians())) > 0.5 ? room.width() : room.height();
            double size = middle.size() * Math.min(1, along / Math.max(1e-6, book.width(called, middle.size())));
            kept.add(new Painted.Words(
                    called, middle.x(), middle.y(), size, middle.radians(), middle.anchor(), true, Canvas.BLACK));
        }
        return kept;
    }
}
