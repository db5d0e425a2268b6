package lengthwise.drawing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;

/**
 * Recognises the pieces of a pattern in a drawing. A piece is a closed, visible outline that lies in no other outline
 * of its size; what lies in it is a cut-out, a line of stitching, a mark or lettering. What is none of these is left
 * out, and said.
 */
public final class Recognition {
    /** Closed outlines smaller than this (mm²) are no pieces. */
    static final double SMALLEST_PIECE = 100;

    private static final int MOST_OUTLINES = 20_000;
    private static final int MOST_FRAMES = 5;
    private static final int MOST_NAMED = 20;

    private final Drawing drawing;
    private final ScaleStatement scale;
    private final Findings findings;
    private final List<String> uncuttable = new ArrayList<>();
    private final Effort effort;
    private final Sizes sizes;
    private final List<Contour> contours = new ArrayList<>();
    private final Set<LooseLines.Line> lines = new LinkedHashSet<>();
    private final Set<Contour> joined = new LinkedHashSet<>();
    private final Set<Contour> crossed = new LinkedHashSet<>();
    private final List<PieceSketch> pieces = new ArrayList<>();

    private Recognition(Drawing drawing, ScaleStatement scale) {
        this.drawing = drawing;
        this.scale = scale;
        this.findings = new Findings(drawing);
        this.effort = new Effort(drawing.file());
        this.sizes = new Sizes(drawing);
    }

    /**
     * Returns the size of a unit, in millimetres, that makes the drawing's test square right; empty if the drawing
     * states its scale, or nobody says what the square measures.
     */
    public static OptionalDouble millimetresPerUnit(Drawing drawing, ScaleStatement scale) throws DrawingException {
        return ScaleBoxes.millimetresPerUnit(drawing, scale);
    }

    /**
     * Recognises the pieces of a drawing.
     *
     * @throws DrawingException if the drawing is too intricate, or its scale box does not measure what it should
     */
    public static PatternDrawing of(Drawing drawing, ScaleStatement scale) throws DrawingException {
        return new Recognition(drawing, scale).pattern();
    }

    private PatternDrawing pattern() throws DrawingException {
        List<ScaleBoxes.Found> boxes = ScaleBoxes.in(drawing, scale);
        ScaleBoxes.check(drawing, boxes);
        boxes.forEach(box -> findings.leaveOut("scale box", box.spoken()));

        closeOutlines(boxes.stream().map(ScaleBoxes.Found::shape).toList());
        joinLooseLines();
        dropDuplicates();
        Nesting nesting = withoutFrames();
        sortOut(nesting);
        nameThem();
        List<DrawnText> texts = new ArrayList<>(drawing.texts());
        Map<PieceSketch, List<DrawnText>> lettering = placeLettering(boxes, texts);
        nameTheRest();
        Mirrors.mark(pieces, effort);
        numberTheNameless();
        List<Mark> left = readMarks(nesting, lettering);
        sayWhatIsLeft(left, texts);
        return new PatternDrawing(
                drawing.file(),
                pieces.stream().map(PieceSketch::piece).toList(),
                drawing.scaleStated(),
                uncuttable,
                findings.warnings(),
                findings.leftOut());
    }

    private void closeOutlines(List<DrawnShape> boxes) throws DrawingException {
        for (DrawnShape shape : drawing.shapes()) {
            if (boxes.contains(shape)) {
                continue;
            }
            if (!shape.visible()) {
                findings.leaveOut("hidden shape", shape.spoken());
                continue;
            }
            Optional<String> size = sizes.of(shape.groups());
            for (Chain chain : shape.chains()) {
                Mending mending = Mending.of(chain);
                if (mending.ring().isPresent()) {
                    contours.add(new Contour(shape, mending.ring().get(), size));
                    sayWhatWasMended(shape, mending);
                } else if (chain.points().size() >= 2 && chain.length() > 0) {
                    lines.add(new LooseLines.Line(shape, chain));
                }
            }
        }
        if (contours.size() > MOST_OUTLINES) {
            throw new DrawingException(drawing.file() + ": " + contours.size()
                    + " closed outlines are too many for a pattern; remove textures and lettering drawn as outlines.");
        }
    }

    private void sayWhatWasMended(DrawnShape shape, Mending mending) {
        if (mending.gap() > Mending.SILENT) {
            findings.warn("The outline %s was open by %.2f mm and is closed."
                    .formatted(shape.spoken(), mending.gap() / 1000));
        }
        if (mending.spike() > Mending.ROUNDING) {
            findings.warn("A spike without width, %.2f mm long, is cut off the outline %s."
                    .formatted(mending.spike() / 1000, shape.spoken()));
        }
    }

    private void joinLooseLines() {
        Map<Optional<String>, List<LooseLines.Line>> bySize = new LinkedHashMap<>();
        for (LooseLines.Line line : lines) {
            boolean plain = MarkKind.of(line.shape().names())
                    .filter(kind -> kind != MarkKind.CUT)
                    .isEmpty();
            if (plain && !line.shape().dashed()) {
                bySize.computeIfAbsent(sizes.of(line.shape().groups()), size -> new ArrayList<>())
                        .add(line);
            }
        }
        bySize.forEach((size, loose) -> {
            for (LooseLines.Joined found : LooseLines.join(loose, LooseLines.REACH)) {
                Mending mending = Mending.of(found.chain());
                if (mending.ring().isPresent()) {
                    DrawnShape shape = found.lines().get(0).shape();
                    Contour contour = new Contour(shape, mending.ring().get(), size);
                    contours.add(contour);
                    found.lines().forEach(lines::remove);
                    found.doubles().forEach(lines::remove);
                    joined.add(contour);
                    findings.warn("An outline is joined from %d lines, the first %s%s."
                            .formatted(
                                    found.lines().size(),
                                    shape.spoken(),
                                    drawnTwice(found.doubles().size())));
                }
            }
            sayWhatNearlyJoins(loose.stream().filter(lines::contains).toList());
        });
    }

    private static String drawnTwice(int lines) {
        return lines == 0
                ? ""
                : lines == 1
                        ? "; 1 line drawn twice is taken once"
                        : "; %d lines drawn twice are taken once".formatted(lines);
    }

    /** Lines that surround something, and end near to one another without meeting, are a piece that is missing. */
    private void sayWhatNearlyJoins(List<LooseLines.Line> loose) {
        LooseLines.join(loose, Math.round(Mending.WARNED)).stream()
                .filter(found -> OpenOutlines.enclosed(found.chain()) > SMALLEST_PIECE)
                .limit(MOST_NAMED)
                .filter(found ->
                        contours.stream().noneMatch(contour -> contour.box().contains(room(found))))
                .forEach(found -> findings.warn(
                        "%d lines would make an outline, the first %s, but their ends lie up to %.1f mm apart; join them in the drawing."
                                .formatted(
                                        found.lines().size(),
                                        found.lines().get(0).shape().spoken(),
                                        Mending.WARNED / 1000)));
    }

    private static Box room(LooseLines.Joined found) {
        return Box.around(found.chain().points().stream()).orElseThrow();
    }

    /** Drops outlines drawn twice at the same place, as a fill and its line often are. */
    private void dropDuplicates() throws DrawingException {
        Map<Long, List<Contour>> byPlace = new HashMap<>();
        for (Contour contour : List.copyOf(contours)) {
            long cell = Math.floorDiv(contour.box().minX(), 1000) * 4_000_037L
                    + Math.floorDiv(contour.box().minY(), 1000);
            List<Contour> near = new ArrayList<>();
            for (long x = -1; x <= 1; x++) {
                for (long y = -1; y <= 1; y++) {
                    near.addAll(byPlace.getOrDefault(cell + x * 4_000_037L + y, List.of()));
                }
            }
            Optional<Contour> same = Optional.empty();
            for (Contour known : near) {
                effort.spend(known.ring().size());
                if (same.isEmpty() && known.size().equals(contour.size()) && known.coincides(contour)) {
                    same = Optional.of(known);
                }
            }
            if (same.isPresent()) {
                contours.remove(contour);
                findings.warn("The outline %s is drawn twice at the same place, also as %s; it is taken once."
                        .formatted(same.get().shape().spoken(), contour.shape().spoken()));
            } else {
                byPlace.computeIfAbsent(cell, c -> new ArrayList<>()).add(contour);
            }
        }
    }

    private Nesting withoutFrames() throws DrawingException {
        Nesting nesting = Nesting.of(contours, effort);
        for (int i = 0; i < MOST_FRAMES; i++) {
            Optional<Contour> frame = new Frames(drawing, nesting).first();
            if (frame.isEmpty()) {
                break;
            }
            findings.leaveOut(
                    "frame",
                    "%s, %.1f × %.1f mm"
                            .formatted(
                                    frame.get().shape().spoken(),
                                    frame.get().box().width() / 1000.0,
                                    frame.get().box().height() / 1000.0));
            contours.remove(frame.get());
            nesting = Nesting.of(contours, effort);
        }
        return nesting;
    }

    private void sortOut(Nesting nesting) throws DrawingException {
        for (Contour root : nesting.roots()) {
            double room = root.box().width() / 1000.0 * root.box().height() / 1000.0;
            if (room < SMALLEST_PIECE) {
                continue;
            }
            Optional<Point> crossing = SelfCrossing.of(root.ring(), effort);
            if (crossing.isEmpty() && root.area() < SMALLEST_PIECE) {
                continue;
            }
            if (crossing.isPresent()) {
                crossed.add(root);
                String sentence = "The outline %s crosses or touches itself at %.1f, %.1f mm and cannot be cut."
                        .formatted(
                                root.shape().spoken(),
                                crossing.get().x() / 1000.0,
                                crossing.get().y() / 1000.0);
                uncuttable.add(sentence);
                findings.warn(sentence);
                findings.leaveOut("outline that crosses itself", root.shape().spoken());
                continue;
            }
            PieceSketch piece = new PieceSketch(root);
            for (Contour inner : nesting.inside(root)) {
                if (nesting.isCutOut(inner)) {
                    addHole(piece, inner);
                }
            }
            pieces.add(piece);
        }
    }

    private void addHole(PieceSketch piece, Contour hole) throws DrawingException {
        if (SelfCrossing.of(hole.ring(), effort).isEmpty()) {
            piece.holes().add(hole.ring());
        } else {
            piece.innerLines().add(closed(hole.ring()));
            findings.warn("The cut-out %s crosses itself; it is kept as a line inside the piece."
                    .formatted(hole.shape().spoken()));
        }
    }

    private void nameThem() {
        PieceNames names = new PieceNames(Stream.concat(
                        pieces.stream().map(piece -> piece.cutLine().shape()),
                        drawing.shapes().stream()
                                .filter(shape -> !shape.visible()
                                        && shape.chains().stream().anyMatch(Chain::closed)))
                .toList());
        for (PieceSketch piece : pieces) {
            DrawnShape shape = piece.cutLine().shape();
            piece.name(joined.contains(piece.cutLine()) ? names.ofJoined(shape) : names.of(shape));
        }
    }

    /** Pieces that nothing in the file names go by their lettering, else by the page that they have to themselves. */
    private void nameTheRest() {
        for (PieceSketch piece : pieces) {
            if (PieceNames.isNone(piece.name())) {
                LetteredNames.of(piece.lettering()).ifPresent(piece::name);
            }
        }
        Map<String, Long> onPage = pieces.stream()
                .collect(Collectors.groupingBy(piece -> piece.cutLine().shape().place(), Collectors.counting()));
        for (PieceSketch piece : pieces) {
            String place = piece.cutLine().shape().place();
            if (PieceNames.isNone(piece.name()) && drawing.pages().size() > 1 && onPage.getOrDefault(place, 0L) == 1) {
                piece.name(place);
            }
        }
    }

    /**
     * Where several pieces have no name at all they are numbered, so that they can be told apart. A mirror image goes with the
     * first, and so is no piece of its own; sizes are not numbered, for nobody says which piece of one is which of another.
     */
    private void numberTheNameless() {
        List<PieceSketch> nameless = pieces.stream()
                .filter(piece ->
                        PieceNames.isNone(piece.name()) && !piece.piece().mirrored())
                .toList();
        if (nameless.size() > 1
                && pieces.stream().allMatch(piece -> piece.size().isEmpty())) {
            for (PieceSketch piece : pieces) {
                if (PieceNames.isNone(piece.name())) {
                    piece.name("piece " + Math.max(1, nameless.indexOf(piece) + 1));
                }
            }
        }
    }

    /** Gives the pieces their lettering; takes it out of the list. */
    private Map<PieceSketch, List<DrawnText>> placeLettering(List<ScaleBoxes.Found> boxes, List<DrawnText> texts)
            throws DrawingException {
        Placing placing = new Placing(pieces, effort);
        Map<PieceSketch, List<DrawnText>> lettering = new HashMap<>();
        for (DrawnText text : List.copyOf(texts)) {
            if (!text.visible() || ScaleBoxes.lettersABox(boxes, text.middle())) {
                continue;
            }
            List<PieceSketch> on = placing.of(sizes.of(text.groups()), text.groups(), List.of(text.middle()));
            for (PieceSketch piece : on) {
                piece.lettering().add(text.words());
                lettering.computeIfAbsent(piece, p -> new ArrayList<>()).add(text);
                texts.remove(text);
            }
        }
        return lettering;
    }

    private List<Mark> readMarks(Nesting nesting, Map<PieceSketch, List<DrawnText>> lettering) throws DrawingException {
        Placing placing = new Placing(pieces, effort);
        Map<PieceSketch, List<Mark>> onPieces = new HashMap<>();
        List<Mark> left = new ArrayList<>();
        for (Mark mark : marks(nesting)) {
            List<PieceSketch> on =
                    placing.of(sizes.of(mark.shape().groups()), mark.shape().groups(), mark.probes());
            on.forEach(piece ->
                    onPieces.computeIfAbsent(piece, p -> new ArrayList<>()).add(mark));
            if (on.isEmpty()) {
                left.add(mark);
            }
        }
        for (PieceSketch piece : pieces) {
            List<Mark> marks = onPieces.getOrDefault(piece, new ArrayList<>());
            List<DrawnText> texts = lettering.getOrDefault(piece, List.of());
            readCutOuts(piece, marks);
            GrainMarks.find(piece, marks, texts, findings);
            FoldMarks.find(piece, marks, texts, findings);
            NotchMarks.find(piece, marks);
            DrillMarks.find(piece, marks);
            for (Mark mark : marks) {
                readInnerLine(piece, mark);
            }
        }
        return left;
    }

    /** Returns all visible shapes, or parts of shapes, that are neither cut lines nor their cut-outs. */
    private List<Mark> marks(Nesting nesting) {
        MarkGroups groups = new MarkGroups(pieces);
        IdentityHashMap<DrawnShape, List<Contour>> closed = new IdentityHashMap<>();
        IdentityHashMap<DrawnShape, List<Chain>> open = new IdentityHashMap<>();
        Set<Contour> cutLines = new LinkedHashSet<>();
        pieces.forEach(piece -> cutLines.add(piece.cutLine()));
        for (Contour contour : contours) {
            boolean root = nesting.holder(contour).isEmpty();
            boolean tooSmall = root && contour.area() < SMALLEST_PIECE;
            if ((tooSmall && !crossed.contains(contour)) || (!root && !isHole(nesting, contour, cutLines))) {
                closed.computeIfAbsent(contour.shape(), s -> new ArrayList<>()).add(contour);
            }
        }
        lines.forEach(line ->
                open.computeIfAbsent(line.shape(), s -> new ArrayList<>()).add(line.chain()));
        return drawing.shapes().stream()
                .filter(shape -> closed.containsKey(shape) || open.containsKey(shape))
                .map(shape -> new Mark(
                        shape,
                        groups.kindOf(shape),
                        open.getOrDefault(shape, List.of()),
                        closed.getOrDefault(shape, List.of())))
                .toList();
    }

    private static boolean isHole(Nesting nesting, Contour contour, Set<Contour> cutLines) {
        return nesting.isCutOut(contour)
                && nesting.holder(contour).filter(cutLines::contains).isPresent();
    }

    private void readCutOuts(PieceSketch piece, List<Mark> marks) throws DrawingException {
        for (Mark mark : List.copyOf(marks)) {
            if (mark.is(MarkKind.CUT_OUT) && !mark.contours().isEmpty()) {
                for (Contour contour : mark.contours()) {
                    if (piece.cutLine().covers(contour, effort)) {
                        addHole(piece, contour);
                    }
                }
                marks.remove(mark);
            }
        }
    }

    private void readInnerLine(PieceSketch piece, Mark mark) {
        if (mark.is(MarkKind.NOTCH)) {
            findings.warn("The notch %s does not reach the cut line of %s; it is kept as a line inside the piece."
                    .formatted(mark.shape().spoken(), piece.spoken()));
        }
        for (Chain line : mark.lines()) {
            (mark.is(MarkKind.SEW_LINE) ? piece.sewLines() : piece.innerLines()).add(line.points());
        }
        for (Contour contour : mark.contours()) {
            boolean sewn = mark.is(MarkKind.SEW_LINE)
                    || (mark.isUnnamed() && (mark.shape().dashed() || SewLines.runsAlong(piece.cutLine(), contour)));
            if (sewn) {
                piece.sewLines().add(closed(contour.ring()));
            } else if (mark.isUnnamed() && mark.shape().filled() && mark.extent() <= 40_000) {
                findings.leaveOut(
                        "letter or sign drawn as an outline", mark.shape().spoken());
            } else {
                piece.innerLines().add(closed(contour.ring()));
            }
        }
    }

    private static List<Point> closed(Ring ring) {
        List<Point> points = new ArrayList<>(ring.vertices());
        points.add(ring.vertex(0));
        return points;
    }

    private void sayWhatIsLeft(List<Mark> marks, List<DrawnText> texts) {
        for (Mark mark : marks) {
            for (Contour contour : mark.contours()) {
                findings.leaveOut("outline of less than 1 cm²", contour.shape().spoken());
            }
            for (Chain line : mark.lines()) {
                if (mark.isUnnamed() && OpenOutlines.isOne(line)) {
                    findings.warn("The outline %s is open by %.1f mm and is no piece; close it in the drawing."
                            .formatted(mark.shape().spoken(), line.first().distance(line.last()) / 1000));
                    findings.leaveOut("open outline", mark.shape().spoken());
                } else {
                    findings.leaveOut("open line", mark.shape().spoken());
                }
            }
        }
        for (DrawnText text : texts) {
            findings.leaveOut(
                    text.visible() ? "line of lettering" : "hidden line of lettering", "\"" + text.words() + "\"");
        }
        if (pieces.isEmpty()) {
            findings.warn("There is no closed outline in the drawing, so there is nothing to cut."
                    + (drawing.leftOut().isEmpty() ? "" : " A picture has no outlines: trace it first."));
        }
    }

    /** Tells an outline left open from a mere line. */
    private static final class OpenOutlines {
        static boolean isOne(Chain chain) {
            double gap = chain.first().distance(chain.last());
            return chain.points().size() >= 3 && gap < chain.length() / 3 && enclosed(chain) > SMALLEST_PIECE;
        }

        private static double enclosed(Chain chain) {
            double sum = 0;
            Point first = chain.first();
            for (int i = 1; i + 1 < chain.points().size(); i++) {
                sum += chain.points()
                        .get(i)
                        .minus(first)
                        .cross(chain.points().get(i + 1).minus(first));
            }
            return Math.abs(sum) / 2e6;
        }
    }
}
