package lengthwise.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Painted.Anchor;
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

    private record Name(String piece, String size) {
        String called() {
            return size.isEmpty() ? piece : piece + " · size " + size;
        }
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
            piece("%s of %s: %s".formatted(number, pieces.size(), piece.getKey().called()), piece.getValue());
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
                how);
        Flow.Page list = page();
        Flow flow = new Flow(list, this::page);
        double wide = list.area().width();
        List<Double> columns = List.of(0.0, 0.06 * wide, 0.45 * wide, 0.6 * wide);
        flow.heading("Paper pieces");
        flow.row(columns, List.of("no.", "piece", "size", "laid on the marker"), true);
        int number = 0;
        for (Map.Entry<Name, List<Integer>> piece : pieces.entrySet()) {
            flow.row(
                    columns,
                    List.of(
                            Integer.toString(++number),
                            piece.getKey().piece,
                            piece.getKey().size,
                            counts(piece.getValue())),
                    false);
        }
        flow.skip(6);
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

    private void piece(String called, List<Integer> laid) throws IOException {
        int first = laid.get(0);
        List<Painted> drawn = withOwnWords(first, called);
        Extent outline = Extent.of(painting.cutLine(first));
        Stream<Painted> heading = Stream.of(
                new Painted.Words(
                        called, outline.minX(), outline.minY() - 6.5, HEADING, 0, Anchor.START, true, Canvas.BLACK),
                new Painted.Words(
                        "Laid " + counts(laid) + " on " + painting.marker().fabric(),
                        outline.minX(),
                        outline.minY() - 2,
                        3,
                        0,
                        Anchor.START,
                        false,
                        Canvas.BLACK));
        List<Painted> all = Stream.concat(heading, drawn.stream()).toList();
        Extent extent = book.extent(all).grown(1);
        MarkerPrint.Shape shape = MarkerPrint.Shape.of(painting.pieces().get(first));
        Tiles upright = new Tiles(setup, extent, shape::meets);
        Tiles turned = new Tiles(setup.landscape(), extent, shape::meets);
        Tiles best = turned.needed().size() < upright.needed().size() ? turned : upright;
        PDFormXObject form = book.form(extent, canvas -> canvas.paint(all));
        best.print(book, form, called + " · " + MarkerPrint.caption(painting));
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
