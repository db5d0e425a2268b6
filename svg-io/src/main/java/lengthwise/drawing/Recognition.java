package lengthwise.drawing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.geometry.Point;

/**
 * Recognises the pieces of a pattern in a drawing. A piece is a closed, visible outline that lies in no other outline
 * of its size; what lies in it is a cut-out, a line of stitching, a mark or lettering. What is none of these is left
 * out, and said.
 */
public final class Recognition {
    /** Closed outlines smaller than this (mm²) are no pieces. */
    private static final double SMALLEST_PIECE = 100;

    private static final int MOST_OUTLINES = 20_000;

    private final Drawing drawing;
    private final Findings findings;
    private final Effort effort;
    private final List<Contour> contours = new ArrayList<>();
    private final List<LooseLines.Line> lines = new ArrayList<>();
    private final Map<Contour, String> joinedNames = new HashMap<>();
    private final List<PieceSketch> pieces = new ArrayList<>();

    private Recognition(Drawing drawing) {
        this.drawing = drawing;
        this.findings = new Findings(drawing);
        this.effort = new Effort(drawing.file());
    }

    /**
     * Recognises the pieces of a drawing.
     *
     * @throws DrawingException if the drawing is too intricate, or its scale box does not measure what it should
     */
    public static PatternDrawing of(Drawing drawing, ScaleStatement scale) throws DrawingException {
        return new Recognition(drawing).pattern();
    }

    private PatternDrawing pattern() throws DrawingException {
        closeOutlines();
        joinLooseLines();
        Nesting nesting = Nesting.of(contours, effort);
        sortOut(nesting);
        nameThem();
        sayWhatIsLeft();
        return new PatternDrawing(
                drawing.file(),
                pieces.stream().map(PieceSketch::piece).toList(),
                drawing.scaleStated(),
                findings.warnings(),
                findings.leftOut());
    }

    private void closeOutlines() throws DrawingException {
        for (DrawnShape shape : drawing.shapes()) {
            if (!shape.visible()) {
                findings.leaveOut("hidden shapes", shape.spoken());
                continue;
            }
            for (Chain chain : shape.chains()) {
                Mending mending = Mending.of(chain);
                if (mending.ring().isPresent()) {
                    contours.add(new Contour(shape, mending.ring().get()));
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
        Map<Optional<String>, List<LooseLines.Line>> bySize = new HashMap<>();
        List<Optional<String>> order = new ArrayList<>();
        for (LooseLines.Line line : lines) {
            Optional<String> size = SizeNames.of(line.shape().groups());
            if (!bySize.containsKey(size)) {
                order.add(size);
            }
            bySize.computeIfAbsent(size, s -> new ArrayList<>()).add(line);
        }
        for (Optional<String> size : order) {
            for (LooseLines.Joined joined : LooseLines.join(bySize.getOrDefault(size, List.of()))) {
                Mending mending = Mending.of(joined.chain());
                if (mending.ring().isEmpty()) {
                    continue;
                }
                DrawnShape shape = joined.lines().get(0).shape();
                Contour contour = new Contour(shape, mending.ring().get());
                contours.add(contour);
                lines.removeAll(joined.lines());
                if (joined.lines().stream()
                                .map(LooseLines.Line::shape)
                                .distinct()
                                .count()
                        > 1) {
                    joinedNames.put(contour, "(joined)");
                }
                findings.warn("An outline is joined from %d lines, the first %s."
                        .formatted(joined.lines().size(), shape.spoken()));
            }
        }
    }

    private void sortOut(Nesting nesting) throws DrawingException {
        for (Contour root : nesting.roots()) {
            if (root.area() < SMALLEST_PIECE) {
                findings.leaveOut("outlines of less than 1 cm²", root.shape().spoken());
                continue;
            }
            Optional<Point> crossing = SelfCrossing.of(root.ring(), effort);
            if (crossing.isPresent()) {
                findings.warn("The outline %s crosses itself at %.1f, %.1f mm and cannot be cut; it is left out."
                        .formatted(
                                root.shape().spoken(),
                                crossing.get().x() / 1000.0,
                                crossing.get().y() / 1000.0));
                findings.leaveOut("outlines that cross themselves", root.shape().spoken());
                continue;
            }
            PieceSketch piece = new PieceSketch(root);
            piece.size(SizeNames.of(root.shape().groups()));
            nesting.inside(root).forEach(inner -> {
                if (nesting.isCutOut(inner)) {
                    piece.holes().add(inner.ring());
                }
            });
            pieces.add(piece);
        }
    }

    private void nameThem() {
        List<DrawnShape> outlines = Stream.concat(
                        pieces.stream().map(piece -> piece.cutLine().shape()),
                        drawing.shapes().stream().filter(shape -> !shape.visible()))
                .toList();
        PieceNames names = new PieceNames(outlines);
        for (PieceSketch piece : pieces) {
            String joined = joinedNames.get(piece.cutLine());
            piece.name(joined == null ? names.of(piece.cutLine().shape(), "(unnamed)") : joined);
        }
        Mirrors.mark(pieces);
    }

    private void sayWhatIsLeft() {
        for (LooseLines.Line line : lines) {
            double gap = line.chain().first().distance(line.chain().last());
            if (Openings.isOpenOutline(line.chain())) {
                findings.warn("The outline %s is open by %.1f mm and is no piece; close it in the drawing."
                        .formatted(line.shape().spoken(), gap / 1000));
                findings.leaveOut("open outlines", line.shape().spoken());
            } else {
                findings.leaveOut("open lines", line.shape().spoken());
            }
        }
        for (DrawnText text : drawing.texts()) {
            findings.leaveOut(
                    text.visible() ? "lines of lettering" : "hidden lines of lettering", "\"" + text.words() + "\"");
        }
        if (pieces.isEmpty()) {
            findings.warn("There is no closed outline in the drawing, so there is nothing to cut."
                    + (drawing.leftOut().isEmpty() ? "" : " A picture is no outline: trace it first."));
        }
    }

    /** Tells an outline left open from a mere line. */
    private static final class Openings {
        static boolean isOpenOutline(Chain chain) {
            double length = chain.length();
            double gap = chain.first().distance(chain.last());
            return chain.points().size() >= 3 && gap < length / 3 && enclosed(chain) > SMALLEST_PIECE;
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
