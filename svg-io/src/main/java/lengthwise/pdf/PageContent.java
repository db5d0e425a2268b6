package lengthwise.pdf;

import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnShape;
import lengthwise.drawing.DrawnShape.FillRule;
import lengthwise.drawing.Group;
import lengthwise.drawing.Names;
import lengthwise.drawing.Pen;
import lengthwise.pdf.Letters.Letter;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.jspecify.annotations.Nullable;

/**
 * Follows the content of a page as it would be painted and notes the geometry and the lettering of what shows. Clips,
 * colours and line widths make no difference to an outline; pictures, shadings and patterns have none.
 *
 * <p>Reference: ISO 32000-1, annex A (operators).
 */
final class PageContent {
    private static final int DEEPEST_FORM = 50;
    private static final int DEEPEST_STATE = 5_000;
    private static final String END = "end-of-content";
    private static final int MOST_OPERANDS = 100_000;

    /** Operators that draw no line and set no word: colours, widths, clips, shadings, compatibility, glyphs of a font. */
    private static final Set<String> WITHOUT_OUTLINE = Set.of(
            "w", "J", "j", "M", "i", "ri", "W", "W*", "CS", "cs", "SC", "SCN", "sc", "scn", "G", "g", "RG", "rg", "K",
            "k", "sh", "ID", "EI", "MP", "DP", "BX", "EX", "d0", "d1", "ET");

    /** What belongs to a page and not to what is drawn on it (14.8.2.2): its number, marks for cutting the paper. */
    static final COSName ARTIFACT = COSName.getPDFName("Artifact");

    private static final Set<String> FURNITURE = Set.of("Pagination", "Page", "Background");

    private final String file;
    private final String place;
    private final Sources sources;
    private final PathPen pen;
    private final LetteringPen lettering;
    private final List<DrawnShape> shapes = new ArrayList<>();
    private final Set<String> warnings;
    private final Set<COSStream> inUse = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Deque<GraphicsState> saved = new ArrayDeque<>();
    private GraphicsState state;
    private AffineTransform text = new AffineTransform();
    private AffineTransform textLine = new AffineTransform();
    private List<Content> contents = List.of();
    private boolean upright;
    private int pictures;

    /** What all pages of a file share. */
    static final class Sources {
        private static final long MOST_OPERATORS = 20_000_000;
        private static final int MOST_FORMS = 50_000;

        private final Layers layers;
        private final Unpacking unpacking;
        private final IdentityHashMap<COSDictionary, Letters> fonts = new IdentityHashMap<>();
        private long operators;
        private int forms;

        Sources(Layers layers, Unpacking unpacking) {
            this.layers = layers;
            this.unpacking = unpacking;
        }

        byte[] unpack(COSStream stream, String place) throws DrawingException {
            return unpacking.bytes(stream, place);
        }
    }

    /** A part of the content that something marks: a layer that shows or not, or a mark of another kind. */
    private record Content(Optional<Group> group, boolean shows, boolean furniture) {
        Content(Optional<Group> group, boolean shows) {
            this(group, shows, false);
        }
    }

    PageContent(
            String file,
            String place,
            Sources sources,
            AffineTransform toPage,
            Pen.Budget budget,
            Set<String> warnings) {
        this.file = file;
        this.place = place;
        this.sources = sources;
        this.state = new GraphicsState(toPage);
        this.pen = new PathPen(budget);
        this.lettering = new LetteringPen(place);
        this.warnings = warnings;
        this.upright = toPage.getDeterminant() < 0;
    }

    List<DrawnShape> shapes() {
        return shapes;
    }

    LetteringPen lettering() {
        return lettering;
    }

    int pictures() {
        return pictures;
    }

    /** Follows the content of the page itself. */
    void follow(byte[] content, COSDictionary resources) throws DrawingException {
        run(content, resources);
    }

    private void run(byte[] content, COSDictionary resources) throws DrawingException {
        int states = saved.size();
        List<COSBase> operands = new ArrayList<>();
        boolean whole = false;
        try {
            // The parser holds nothing but these bytes, so there is nothing to close.
            PDFStreamParser tokens = new PDFStreamParser(withEnd(content));
            for (Object token = tokens.parseNextToken(); token != null && !whole; token = tokens.parseNextToken()) {
                if (token instanceof Operator operator) {
                    if (++sources.operators > Sources.MOST_OPERATORS) {
                        throw refused("so much is drawn that it is no pattern; export the pattern's own layers alone");
                    }
                    whole = operator.getName().equals(END) && operands.isEmpty();
                    if (!whole) {
                        operate(operator, operands, resources, states);
                    }
                    operands.clear();
                } else if (token instanceof COSBase operand && operands.size() < MOST_OPERANDS) {
                    operands.add(operand);
                }
            }
        } catch (IOException damaged) {
            throw new DrawingException(
                    "%s, %s: what is drawn there is damaged and cannot be read whole; export the pattern again."
                            .formatted(file, place),
                    damaged);
        }
        if (!whole) {
            notUnderstood();
        }
        while (saved.size() > states) {
            state = saved.pop();
        }
    }

    /** Where the library loses its way it passes over what follows, and this last word with it. */
    private static byte[] withEnd(byte[] content) {
        byte[] end = ("\n" + END).getBytes(StandardCharsets.US_ASCII);
        byte[] all = Arrays.copyOf(content, content.length + end.length);
        System.arraycopy(end, 0, all, content.length, end.length);
        return all;
    }

    private void notUnderstood() {
        warnings.add("On " + place + " something is drawn in a way that is not understood; compare the pieces with your"
                + " pattern, and export it again if one is missing.");
    }

    private DrawingException refused(String why) {
        return new DrawingException("%s, %s: %s.".formatted(file, place, why));
    }

    private void operate(Operator operator, List<COSBase> operands, COSDictionary resources, int states)
            throws DrawingException {
        double[] n = numbers(operands);
        switch (operator.getName() + "/" + Math.min(n.length, 6)) {
            case "m/2" -> pen.moveTo(state.toPage, n[0], n[1]);
            case "l/2" -> pen.lineTo(state.toPage, n[0], n[1]);
            case "c/6" -> pen.curveTo(state.toPage, n[0], n[1], n[2], n[3], n[4], n[5]);
            case "v/4" -> pen.curveTo(state.toPage, pen.x(), pen.y(), n[0], n[1], n[2], n[3]);
            case "y/4" -> pen.curveTo(state.toPage, n[0], n[1], n[2], n[3], n[2], n[3]);
            case "re/4" -> pen.rectangle(state.toPage, n[0], n[1], n[2], n[3]);
            case "cm/6" -> state.transform(new AffineTransform(n));
            case "Tm/6" -> {
                textLine = new AffineTransform(n);
                text = new AffineTransform(textLine);
            }
            case "Td/2" -> nextLine(n[0], n[1]);
            case "TD/2" -> {
                state.leading = -n[1];
                nextLine(n[0], n[1]);
            }
            case "Tc/1" -> state.letterSpacing = n[0];
            case "Tw/1" -> state.wordSpacing = n[0];
            case "Tz/1" -> state.stretch = n[0] / 100;
            case "TL/1" -> state.leading = n[0];
            case "Ts/1" -> state.rise = n[0];
            case "Tr/1" -> state.textMode = (int) n[0];
            default -> operateOtherwise(operator.getName(), operands, n, resources, states);
        }
    }

    private void operateOtherwise(
            String operator, List<COSBase> operands, double[] n, COSDictionary resources, int states)
            throws DrawingException {
        switch (operator) {
            case "h" -> pen.close();
            case "q" -> save();
            case "Q" -> {
                if (saved.size() > states) {
                    state = saved.pop();
                }
            }
            case "S" -> paint(true, false, false);
            case "s" -> {
                pen.close();
                paint(true, false, false);
            }
            case "f", "F" -> paint(false, true, false);
            case "f*" -> paint(false, true, true);
            case "B" -> paint(true, true, false);
            case "B*" -> paint(true, true, true);
            case "b" -> {
                pen.close();
                paint(true, true, false);
            }
            case "b*" -> {
                pen.close();
                paint(true, true, true);
            }
            case "n" -> pen.lift();
            case "d" -> dash(operands.isEmpty() ? null : operands.get(0));
            case "gs" -> extended(resource(resources, "ExtGState", operands));
            case "Do" -> external(resource(resources, "XObject", operands), resources);
            case "BI" -> pictures += isShown() && !isFurniture() ? 1 : 0;
            case "BMC" -> begin(new Content(Optional.empty(), true));
            case "BDC" -> begin(marked(operands, resources));
            case "EMC" -> {
                if (!contents.isEmpty()) {
                    contents = contents.subList(0, contents.size() - 1);
                }
            }
            case "BT" -> {
                text = new AffineTransform();
                textLine = new AffineTransform();
            }
            case "Tf" -> font(resource(resources, "Font", operands), n);
            case "T*" -> nextLine(0, -state.leading);
            case "Tj" -> show(operands);
            case "TJ" -> {
                if (!operands.isEmpty() && operands.get(0) instanceof COSArray array) {
                    List<COSBase> parts = new ArrayList<>();
                    array.forEach(parts::add);
                    show(parts);
                }
            }
            case "'" -> {
                nextLine(0, -state.leading);
                show(operands);
            }
            case "\"" -> {
                if (n.length == 2) {
                    state.wordSpacing = n[0];
                    state.letterSpacing = n[1];
                }
                nextLine(0, -state.leading);
                show(operands.subList(Math.min(2, operands.size()), operands.size()));
            }
            default -> {
                if (!WITHOUT_OUTLINE.contains(operator)) {
                    notUnderstood();
                }
            }
        }
    }

    private static double[] numbers(List<COSBase> operands) {
        return operands.stream()
                .filter(COSNumber.class::isInstance)
                .limit(7)
                .mapToDouble(number -> ((COSNumber) number).floatValue())
                .toArray();
    }

    private void save() throws DrawingException {
        if (saved.size() >= DEEPEST_STATE) {
            throw refused("states are saved too deep in each other; export the pattern again");
        }
        saved.push(new GraphicsState(state));
    }

    private boolean isShown() {
        return contents.stream().allMatch(Content::shows);
    }

    private boolean isFurniture() {
        return contents.stream().anyMatch(Content::furniture);
    }

    private List<Group> groups() {
        return contents.stream().flatMap(content -> content.group.stream()).toList();
    }

    private void begin(Content content) throws DrawingException {
        if (contents.size() >= DEEPEST_STATE) {
            throw refused("marks are set too deep in each other; export the pattern again");
        }
        List<Content> more = new ArrayList<>(contents);
        more.add(content);
        contents = more;
    }

    private Content marked(List<COSBase> operands, COSDictionary resources) {
        COSBase properties = operands.size() > 1 && operands.get(1) instanceof COSDictionary direct
                ? direct
                : resource(resources, "Properties", operands.subList(Math.min(1, operands.size()), operands.size()));
        if (!operands.isEmpty() && COSName.OC.equals(operands.get(0))) {
            return optional(properties);
        }
        boolean furniture = !operands.isEmpty()
                && ARTIFACT.equals(operands.get(0))
                && properties instanceof COSDictionary artifact
                && FURNITURE.contains(String.valueOf(artifact.getNameAsString(COSName.TYPE)));
        return new Content(Optional.empty(), true, furniture);
    }

    private Content optional(@Nullable COSBase layer) {
        return layer instanceof COSDictionary content
                ? new Content(sources.layers.group(content), sources.layers.shows(content))
                : new Content(Optional.empty(), true);
    }

    private static @Nullable COSBase resource(COSDictionary resources, String kind, List<COSBase> operands) {
        return !operands.isEmpty()
                        && operands.get(0) instanceof COSName name
                        && resources.getDictionaryObject(kind) instanceof COSDictionary all
                ? all.getDictionaryObject(name)
                : null;
    }

    private void dash(@Nullable COSBase pattern) {
        boolean dashed = false;
        if (pattern instanceof COSArray array) {
            for (int i = 0; i < Math.min(20, array.size()); i++) {
                dashed |= array.getObject(i) instanceof COSNumber length && length.floatValue() > 0;
            }
        }
        state.dashed = dashed;
    }

    private void extended(@Nullable COSBase parameters) throws DrawingException {
        if (!(parameters instanceof COSDictionary all)) {
            return;
        }
        if (all.getDictionaryObject(COSName.D) instanceof COSArray dash && dash.size() > 0) {
            dash(dash.getObject(0));
        }
        if (all.getDictionaryObject(COSName.CA) instanceof COSNumber opacity) {
            state.lineShows = opacity.floatValue() > 0;
        }
        if (all.getDictionaryObject(COSName.CA_NS) instanceof COSNumber opacity) {
            state.fillShows = opacity.floatValue() > 0;
        }
        if (all.getDictionaryObject(COSName.FONT) instanceof COSArray font
                && font.size() > 1
                && font.getObject(1) instanceof COSNumber size) {
            font(font.getObject(0), new double[] {size.floatValue()});
        }
    }

    private void external(@Nullable COSBase object, COSDictionary resources) throws DrawingException {
        if (!(object instanceof COSStream stream)) {
            return;
        }
        Content content = optional(stream.getDictionaryObject(COSName.OC));
        begin(content);
        if (COSName.FORM.equals(stream.getCOSName(COSName.SUBTYPE))) {
            form(stream, resources);
        } else if (isShown() && !isFurniture()) {
            pictures++;
        }
        contents = contents.subList(0, contents.size() - 1);
    }

    private void form(COSStream form, COSDictionary outer) throws DrawingException {
        if (!inUse.add(form)) {
            throw refused("a part of the drawing draws itself; export the pattern again");
        }
        if (inUse.size() > DEEPEST_FORM || ++sources.forms > Sources.MOST_FORMS) {
            throw refused("parts of the drawing are used so deep in each other, or so often, that it is no pattern;"
                    + " export the pattern's own layers alone");
        }
        List<Content> around = contents;
        save();
        AffineTransform textBefore = text;
        AffineTransform textLineBefore = textLine;
        pen.lift();
        if (form.getDictionaryObject(COSName.MATRIX) instanceof COSArray matrix && matrix.size() == 6) {
            List<COSBase> entries = new ArrayList<>();
            matrix.forEach(entries::add);
            double[] n = numbers(entries);
            if (n.length == 6) {
                state.transform(new AffineTransform(n));
            }
        }
        COSDictionary own =
                form.getDictionaryObject(COSName.RESOURCES) instanceof COSDictionary resources ? resources : outer;
        run(sources.unpack(form, place), own);
        pen.lift();
        text = textBefore;
        textLine = textLineBefore;
        state = saved.pop();
        contents = around;
        inUse.remove(form);
    }

    private void paint(boolean line, boolean fill, boolean evenOdd) {
        PathPen.Path path = pen.lift();
        if (path.tooFar().isPresent()) {
            warnings.add("A shape on %s is left out: %s; move the drawing onto its page."
                    .formatted(place, path.tooFar().get()));
            return;
        }
        if (path.chains().isEmpty() || isFurniture()) {
            return;
        }
        shapes.add(new DrawnShape(
                Names.NONE,
                groups(),
                line ? path.chains() : filled(path.chains()),
                evenOdd ? FillRule.EVENODD : FillRule.NONZERO,
                isShown() && ((line && state.lineShows) || (fill && state.fillShows)),
                fill,
                line && state.dashed,
                false,
                false,
                (state.toPage.getDeterminant() < 0) != upright,
                place));
    }

    /** What is filled and not drawn along ends where it begins, whether or not that is said. */
    private static List<Chain> filled(List<Chain> chains) {
        return chains.stream()
                .map(chain -> chain.points().size() > 2 ? new Chain(chain.points(), true) : chain)
                .toList();
    }

    private void font(@Nullable COSBase font, double[] n) throws DrawingException {
        state.fontSize = n.length > 0 ? n[0] : 0;
        state.font = Optional.empty();
        if (font instanceof COSDictionary dictionary) {
            Letters letters = sources.fonts.get(dictionary);
            if (letters == null) {
                letters = new Letters(dictionary, sources.unpacking, place);
                sources.fonts.put(dictionary, letters);
            }
            state.font = Optional.of(letters);
        }
    }

    private void nextLine(double x, double y) {
        textLine.translate(x, y);
        text = new AffineTransform(textLine);
    }

    /** Shows strings; numbers between them move back by thousandths of the size. */
    private void show(List<COSBase> parts) {
        if (state.font.isEmpty() || isFurniture()) {
            return;
        }
        boolean visible = isShown()
                && state.textMode != 3
                && state.textMode != 7
                && (state.textMode == 1 ? state.lineShows : state.fillShows);
        List<Group> groups = groups();
        for (COSBase part : parts) {
            if (part instanceof COSNumber back) {
                text.translate(-back.floatValue() / 1000 * state.fontSize * state.stretch, 0);
            } else if (part instanceof COSString string) {
                for (Letter letter : state.font.get().of(string.getBytes())) {
                    AffineTransform toPage = new AffineTransform(state.toPage);
                    toPage.concatenate(text);
                    toPage.concatenate(
                            new AffineTransform(state.fontSize * state.stretch, 0, 0, state.fontSize, 0, state.rise));
                    lettering.letter(letter, toPage, visible, groups);
                    double advance = letter.width() * state.fontSize
                            + state.letterSpacing
                            + (letter.blank() ? state.wordSpacing : 0);
                    text.translate(advance * state.stretch, 0);
                }
            }
        }
    }
}
