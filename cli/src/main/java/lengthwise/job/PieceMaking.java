package lengthwise.job;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import lengthwise.drawing.Arrow;
import lengthwise.drawing.DrawnPiece;
import lengthwise.geometry.Outline;
import lengthwise.geometry.OutlineOffset;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Axis;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkRef;
import lengthwise.model.MatchPoint;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Segment;
import lengthwise.model.Shrinkage;
import lengthwise.model.Size;
import lengthwise.model.Unfolding;

/**
 * Turns a drawn piece onto its fabric: grain or stretch along the right axis, up end to the print's up end where that
 * is a half turn away, seam allowance and shrinkage added where the job says so. One rounding to the grid.
 */
final class PieceMaking {
    /** A drawn up end may lean this far from the arrow's axes; beyond it nobody can say which end is meant. */
    private static final double CLEARLY_UP_DEGREES = 30;

    /** Vertices this near a fold edge are meant to lie on it (µm). */
    private static final long FOLD_SNAP = 30;

    /** A fold edge this far from the grain's axes is taken for a slip of the hand, more for a mistake. */
    private static final double FOLD_OFF_GRAIN_DEGREES = 1;

    private static final Length MATCH_TOLERANCE = Length.ofMillimetres(2);

    private final DrawnPiece drawn;
    private final JobDrawing drawing;
    private final Optional<JobPiece> said;
    private final Fabric fabric;
    private final boolean onFold;
    private final Assumptions assumed;

    private PieceMaking(
            DrawnPiece drawn,
            JobDrawing drawing,
            Optional<JobPiece> said,
            Fabric fabric,
            boolean onFold,
            Assumptions assumed) {
        this.drawn = drawn;
        this.drawing = drawing;
        this.said = said;
        this.fabric = fabric;
        this.onFold = onFold;
        this.assumed = assumed;
    }

    /**
     * Returns the piece in the frame of the fabric.
     *
     * @param onFold whether it is cut on the fold, and so needs its fold edge
     * @param wrongSideOut whether the right side of the cloth looks to the body, so that the piece is mirrored
     * @throws JobException with a question, if something cannot be assumed: no grain line, no up end on one-way cloth,
     *     stretch unknown, no fold edge
     */
    static Piece of(
            DrawnPiece drawn,
            JobDrawing drawing,
            Optional<JobPiece> said,
            Fabric fabric,
            Size size,
            boolean onFold,
            boolean wrongSideOut,
            Assumptions assumed)
            throws JobException {
        PieceMaking making = new PieceMaking(drawn, drawing, said, fabric, onFold, assumed);
        Piece piece = making.isOnBias() ? making.onBias(size) : making.turned(size);
        if (wrongSideOut) {
            // about the piece's own line
            piece = piece.mapped(
                    making.isOnBias()
                            ? point -> new Point(point.y(), point.x())
                            : point -> new Point(point.x(), -point.y()));
        }
        return canonical(withShrinkage(making.withSeamAllowance(piece), fabric));
    }

    private Piece turned(Size size) throws JobException {
        ArrowMeaning meaning = meaning();
        Vector alongArrow = arrowDirection();
        // the arrow goes to +x, or to +y where it marks the stretch and the fabric stretches most crosswise
        boolean arrowAcross = meaning == ArrowMeaning.STRETCH
                && fabric.mostStretch()
                                .orElseThrow(() -> new JobException(
                                        "The arrow on %s means stretch, but nothing says which way %s stretches most: say most-stretch: lengthwise or crosswise."
                                                .formatted(drawn.name(), fabric.name())))
                        == Axis.CROSSWISE;
        Vector axis = arrowAcross ? alongArrow.quarterTurned(-1) : alongArrow;
        axis = foldAligned(axis);
        Optional<QuarterTurn> up = up(meaning, axis);
        if (up.isPresent() && up.get() == QuarterTurn.HALF) {
            axis = axis.quarterTurned(2);
            up = Optional.of(QuarterTurn.NONE);
        }
        UnaryOperator<Point> turn = axis.toX();
        Segment grain = new Segment(
                turn.apply(grainLine(axis).from()), turn.apply(grainLine(axis).to()));
        Optional<Segment> fold = onFold ? drawn.foldEdge().map(edge -> level(edge, turn)) : Optional.empty();
        List<List<Point>> inner = new ArrayList<>(drawn.sewLines());
        inner.addAll(drawn.innerLines());
        PieceMarks marks = new PieceMarks(Optional.empty(), drawn.notches(), drawn.drillHoles(), inner).mapped(turn);
        PieceMarks withGrain =
                new PieceMarks(Optional.of(pointingUp(grain)), marks.notches(), marks.drillHoles(), marks.innerLines());
        Outline outline = drawn.outline().mapped(turn);
        return new Piece(
                drawn.name(),
                size,
                fold.isPresent() ? snapped(outline, fold.get()) : outline,
                up,
                Piece.Turning.ALONG_GRAIN,
                fold,
                matchPoint(withGrain),
                false,
                withGrain);
    }

    private boolean isOnBias() {
        return said.flatMap(piece -> piece.lying().grain())
                .filter(grain -> grain == JobPiece.Grain.BIAS)
                .isPresent();
    }

    /**
     * Turned onto its line like any other, then once more by 45°, about a point of its own so that it does not matter where
     * on the page it was drawn. No fold of the cloth runs on the bias: a half piece is opened in between.
     */
    private Piece onBias(Size size) throws JobException {
        refuseBias(meaning());
        Piece straight = turned(size);
        Point about = straight.foldEdge()
                .map(Segment::from)
                .orElse(new Point(
                        straight.outline().box().minX(),
                        straight.outline().box().minY()));
        UnaryOperator<Point> turn = new Vector(1, 0).onBias().toX();
        Piece turned = opened(straight).mapped(point -> turn.apply(point.minus(about)));
        return new Piece(
                turned.name(),
                turned.size(),
                turned.outline(),
                turned.up(),
                Piece.Turning.ON_BIAS,
                Optional.empty(),
                turned.matchPoint(),
                false,
                turned.marks());
    }

    private Piece opened(Piece half) throws JobException {
        try {
            return Unfolding.whole(half);
        } catch (IllegalArgumentException cannotOpen) {
            throw new JobException(drawing.file() + ": " + cannotOpen.getMessage());
        }
    }

    private void refuseBias(ArrowMeaning meaning) throws JobException {
        if (meaning == ArrowMeaning.STRETCH) {
            throw new JobException(
                    ("%s is cut on the bias (grain: bias), but its arrow means the greatest stretch, which lies along or"
                                    + " across the cloth: leave grain: bias out, or say arrow-means: grain for this piece.")
                            .formatted(drawn.name()));
        }
        if (addsUnevenShrinkage(fabric)) {
            throw new JobException(biasShrinksUnevenly(drawn.name(), fabric));
        }
    }

    static String biasShrinksUnevenly(String piece, Fabric fabric) {
        return ("%s is cut on the bias, but %s shrinks differently each way and the shrinkage is added to the pieces: it"
                        + " would come out skewed on one bias or the other. Wash the cloth first (handled: pre-wash).")
                .formatted(piece, fabric.name());
    }

    private ArrowMeaning meaning() throws JobException {
        Optional<ArrowMeaning> meaning = said.flatMap(JobPiece::arrowMeans).or(drawing::arrowMeans);
        if (meaning.isPresent() || drawn.arrow().isEmpty()) {
            return meaning.orElse(ArrowMeaning.GRAIN);
        }
        if (fabric.mostStretch().isPresent() && fabric.mostStretch().get() == Axis.CROSSWISE) {
            throw new JobException(("What does the arrow on %s (%s) mean? %s stretches most crosswise, so grain and"
                            + " stretch lie differently: say arrow-means: grain or arrow-means: stretch.")
                    .formatted(drawn.name(), drawing.file(), fabric.name()));
        }
        assumed.note("The arrows drawn on the pieces are grain lines, parallel to the selvedge.");
        return ArrowMeaning.GRAIN;
    }

    private Vector arrowDirection() throws JobException {
        if (drawn.arrow().isPresent()) {
            Segment line = drawn.arrow().get().line();
            return new Vector(
                    line.to().x() - line.from().x(), line.to().y() - line.from().y());
        }
        if (said.flatMap(JobPiece::up).filter(up -> up == JobPiece.Up.AS_DRAWN).isPresent()) {
            assumed.note("%s has no grain line; its grain runs up the page, as drawn.".formatted(drawn.name()));
            return Vector.UP_THE_PAGE;
        }
        throw new JobException(
                ("%s in %s has no grain line. Draw a straight line with one arrow head along its grain, or"
                                + " say up: as-drawn for this piece if its grain runs up the page.")
                        .formatted(drawn.name(), drawing.file()));
    }

    /** A fold edge along or across the grain is the better straight line of the two: the piece is turned by it. */
    private Vector foldAligned(Vector axis) throws JobException {
        if (!onFold) {
            return axis;
        }
        Segment edge = drawn.foldEdge()
                .orElseThrow(() -> new JobException(
                        ("%s in %s is cut on the fold, but no fold edge is marked on it. Draw a line along the edge that lies on the"
                                        + " fold and name it fold, or letter \"fold\" beside it.")
                                .formatted(drawn.name(), drawing.file())));
        Vector fold = new Vector(
                edge.to().x() - edge.from().x(), edge.to().y() - edge.from().y());
        double off = axis.degreesTo(fold);
        int quarters = (int) StrictMath.round(off / 90);
        if (Math.abs(off - 90.0 * quarters) > FOLD_OFF_GRAIN_DEGREES) {
            throw new JobException(
                    "The fold edge of %s (%s) lies %.1f° off its grain line. Draw one parallel to the other."
                            .formatted(drawn.name(), drawing.file(), Math.abs(off - 90.0 * quarters)));
        }
        return fold.quarterTurned(-quarters);
    }

    private Optional<QuarterTurn> up(ArrowMeaning meaning, Vector axis) throws JobException {
        Optional<JobPiece.Up> saidUp = said.flatMap(JobPiece::up);
        if (saidUp.isPresent() && saidUp.get() == JobPiece.Up.NONE) {
            return Optional.empty();
        }
        boolean oneHead = drawn.arrow().isPresent() && drawn.arrow().get().heads() == Arrow.Heads.ONE;
        if (saidUp.isPresent() && saidUp.get() == JobPiece.Up.AS_DRAWN) {
            return Optional.of(turnTo(axis, Vector.UP_THE_PAGE));
        }
        if (oneHead && (meaning == ArrowMeaning.GRAIN || saidUp.isPresent())) {
            Segment line = drawn.arrow().orElseThrow().line();
            return Optional.of(turnTo(
                    axis,
                    new Vector(
                            line.to().x() - line.from().x(),
                            line.to().y() - line.from().y())));
        }
        if (saidUp.isPresent()) {
            throw new JobException("%s says up: arrow, but its arrow in %s does not have one head at one end."
                    .formatted(drawn.name(), drawing.file()));
        }
        if (fabric.direction() != Direction.EITHER_WAY) {
            throw new JobException(
                    ("Which end of %s is up? %s has an up and a down, and %s does not say: give its grain"
                                    + " line in %s one arrow head at the upper end, or say up: as-drawn, or up: none if it may lie"
                                    + " either way round.")
                            .formatted(drawn.name(), fabric.name(), drawn.name(), drawing.file()));
        }
        return Optional.empty();
    }

    private QuarterTurn turnTo(Vector axis, Vector up) throws JobException {
        double degrees = axis.degreesTo(up);
        int quarters = (int) StrictMath.round(degrees / 90);
        if (Math.abs(degrees - 90.0 * quarters) > CLEARLY_UP_DEGREES) {
            throw new JobException(
                    ("The up end of %s in %s lies %.0f° from its arrow, neither along nor across it: draw the"
                                    + " piece upright or give its grain line one head.")
                            .formatted(drawn.name(), drawing.file(), Math.abs(degrees)));
        }
        return QuarterTurn.of(quarters);
    }

    private Segment grainLine(Vector axis) {
        Segment drawnLine = drawn.arrow()
                .map(Arrow::line)
                .orElseGet(() -> Vector.UP_THE_PAGE.through(drawn.outline().box()));
        Vector line = new Vector(
                drawnLine.to().x() - drawnLine.from().x(),
                drawnLine.to().y() - drawnLine.from().y());
        boolean across = Math.abs(Math.abs(axis.degreesTo(line)) - 90) < 45;
        return across ? axis.through(drawn.outline().box()) : drawnLine;
    }

    private static Segment pointingUp(Segment grain) {
        return grain.from().x() <= grain.to().x() ? grain : new Segment(grain.to(), grain.from());
    }

    /** The fold edge turned, both ends brought to one coordinate: a half micrometre of rounding must not tilt it. */
    private static Segment level(Segment edge, UnaryOperator<Point> turn) {
        Point from = turn.apply(edge.from());
        Point to = turn.apply(edge.to());
        return Math.abs(from.y() - to.y()) < Math.abs(from.x() - to.x())
                ? new Segment(from, new Point(to.x(), from.y()))
                : new Segment(from, new Point(from.x(), to.y()));
    }

    private static Outline snapped(Outline outline, Segment fold) {
        boolean along = fold.from().y() == fold.to().y();
        return outline.mapped(point -> {
            if (along && Math.abs(point.y() - fold.from().y()) <= FOLD_SNAP) {
                return new Point(point.x(), fold.from().y());
            }
            if (!along && Math.abs(point.x() - fold.from().x()) <= FOLD_SNAP) {
                return new Point(fold.from().x(), point.y());
            }
            return point;
        });
    }

    private Optional<MatchPoint> matchPoint(PieceMarks marks) throws JobException {
        Optional<JobPiece.MatchMark> wanted = said.flatMap(JobPiece::matchPoint);
        if (wanted.isEmpty()) {
            return Optional.empty();
        }
        MarkRef mark = wanted.get().at();
        Point at = marks.at(mark)
                .orElseThrow(() -> new JobException("%s has its match point on %s, but %s shows only %d of them."
                        .formatted(drawn.name(), mark.called(), drawing.file(), count(marks, mark.kind()))));
        Length tolerance = wanted.get().tolerance().orElseGet(() -> {
            assumed.note("Match points may be 2 mm off the print.");
            return MATCH_TOLERANCE;
        });
        return Optional.of(
                new MatchPoint(at, tolerance, wanted.get().along(), wanted.get().to()));
    }

    private static int count(PieceMarks marks, MarkRef.Kind kind) {
        return switch (kind) {
            case DRILL_HOLE -> marks.drillHoles().size();
            case NOTCH -> marks.notches().size();
        };
    }

    private Piece withSeamAllowance(Piece piece) throws JobException {
        Optional<SeamAllowance> allowance = drawing.seamAllowance();
        if (allowance.isEmpty()) {
            assumed.note("The outlines are cut lines: seam allowance is included.");
        }
        long add = allowance.map(said -> said.toAdd().micrometres()).orElse(0L);
        if (add == 0) {
            return piece;
        }
        // there is no allowance on a fold: the whole piece is enlarged and folded again
        Outline grown = OutlineOffset.grow(Unfolding.whole(piece).outline(), add);
        if (piece.foldEdge().isPresent()) {
            grown = Unfolding.half(grown, piece);
        }
        return new Piece(
                piece.name(),
                piece.size(),
                grown,
                piece.up(),
                piece.turning(),
                piece.foldEdge(),
                piece.matchPoint(),
                piece.strip(),
                piece.marks());
    }

    static boolean addsShrinkage(Fabric fabric) {
        return fabric.shrinkage().handled() == Shrinkage.Handling.ADD_TO_PIECES;
    }

    static boolean addsUnevenShrinkage(Fabric fabric) {
        return addsShrinkage(fabric)
                && fabric.shrinkage().lengthwise() != fabric.shrinkage().crosswise();
    }

    /** Enlarges a piece by 1 / (1 − s) lengthwise and crosswise, where the shrinkage is added to the pieces. */
    static Piece withShrinkage(Piece piece, Fabric fabric) {
        if (!addsShrinkage(fabric)) {
            return piece;
        }
        double along = fabric.shrinkage().kept(Axis.LENGTHWISE);
        double across = fabric.shrinkage().kept(Axis.CROSSWISE);
        return piece.mapped(
                point -> new Point(StrictMath.round(point.x() / along), StrictMath.round(point.y() / across)));
    }

    /** The same piece, its box at the origin and its outline from the leftmost vertex: where it was drawn is forgotten. */
    private static Piece canonical(Piece piece) {
        Point corner =
                new Point(piece.outline().box().minX(), piece.outline().box().minY());
        Piece moved = piece.mapped(point -> point.minus(corner));
        return new Piece(
                moved.name(),
                moved.size(),
                new Outline(
                        fromLeftmost(moved.outline().shell()), moved.outline().holes()),
                moved.up(),
                moved.turning(),
                moved.foldEdge(),
                moved.matchPoint(),
                moved.strip(),
                moved.marks());
    }

    private static Ring fromLeftmost(Ring ring) {
        int first = 0;
        for (int i = 1; i < ring.size(); i++) {
            if (ring.x(i) < ring.x(first) || (ring.x(i) == ring.x(first) && ring.y(i) < ring.y(first))) {
                first = i;
            }
        }
        List<Point> vertices = new ArrayList<>(ring.vertices());
        Collections.rotate(vertices, -first);
        return Ring.of(vertices);
    }
}
