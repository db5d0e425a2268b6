package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/**
 * Finds the straight edge of a piece that lies on the fold: a line named as fold on that edge, a bracket whose arrows
 * point to it, or lettering that runs along it.
 */
final class FoldMarks {
    private static final double SHORTEST_EDGE = 10_000;
    private static final double ON_EDGE = 600;
    private static final double BRACKET_REACH = 40_000;
    private static final double LETTERING_REACH = 25_000;

    private final PieceSketch piece;
    private final List<Segment> edges;
    private final Findings findings;

    private FoldMarks(PieceSketch piece, Findings findings) {
        this.piece = piece;
        this.findings = findings;
        this.edges = StraightRuns.of(piece.cutLine().ring(), StraightRuns.EDGE).stream()
                .filter(edge -> edge.length() >= SHORTEST_EDGE)
                .toList();
    }

    /** Sets the piece's fold edge and takes the marks that say so out of the list. */
    static void find(PieceSketch piece, List<Mark> marks, List<DrawnText> texts, Findings findings) {
        FoldMarks fold = new FoldMarks(piece, findings);
        for (Mark mark : List.copyOf(marks)) {
            if (mark.is(MarkKind.FOLD)) {
                fold.read(mark, marks);
            }
        }
        if (piece.foldEdge().isEmpty()) {
            fold.readLettering(texts);
        }
    }

    private void read(Mark mark, List<Mark> marks) {
        Optional<Segment> line = StraightRuns.longest(mark.runs());
        if (line.isEmpty()) {
            return;
        }
        Optional<Segment> edge = nearest(line.get(), ON_EDGE);
        boolean bracket = mark.runs().size() >= 3
                || mark.shape().headAtStart()
                || mark.shape().headAtEnd();
        if (edge.isEmpty() && bracket) {
            edge = nearest(line.get(), BRACKET_REACH);
        }
        if (edge.isPresent()) {
            marks.remove(mark);
            set(edge.get());
        } else {
            findings.warn("The fold line %s lies on no straight edge of %s; it is kept as a line inside the piece."
                    .formatted(mark.shape().spoken(), piece.spoken()));
        }
    }

    private void set(Segment edge) {
        if (piece.foldEdge().isPresent() && !piece.foldEdge().get().equals(edge)) {
            findings.warn("%s has two edges marked as the fold; the first is taken.".formatted(piece.spoken()));
            return;
        }
        piece.foldEdge(edge);
    }

    /** Returns the edge that runs beside a line, within a reach. */
    private Optional<Segment> nearest(Segment line, double reach) {
        Optional<Segment> best = Optional.empty();
        double least = reach;
        for (Segment edge : edges) {
            double off =
                    Math.max(Math.abs(Vectors.across(edge, line.from())), Math.abs(Vectors.across(edge, line.to())));
            boolean beside = Vectors.overlap(edge, line) >= Math.min(line.length(), edge.length()) / 2;
            if (off <= least && beside && Vectors.degreesBetween(edge, line) <= 3) {
                least = off;
                best = Optional.of(edge);
            }
        }
        return best;
    }

    private void readLettering(List<DrawnText> texts) {
        for (DrawnText text : texts) {
            List<String> words = Names.words(text.words()).toList();
            if (!words.contains("fold")) {
                continue;
            }
            List<Segment> beside = words.contains("cut") ? List.of() : edgesAlong(text);
            if (beside.size() == 1) {
                piece.foldEdge(beside.get(0));
                findings.warn(
                        "The fold edge of %s is taken from its lettering \"%s\"; draw a line named \"fold\" on it to be"
                                        .formatted(piece.spoken(), text.words())
                                + " sure.");
                return;
            }
        }
        boolean said = texts.stream()
                .anyMatch(
                        text -> text.words().toLowerCase(java.util.Locale.ROOT).contains("on fold"));
        if (said) {
            findings.warn(
                    "%s is lettered \"on fold\", but no edge is marked as the fold; draw a line named \"fold\" on it."
                            .formatted(piece.spoken()));
        }
    }

    private List<Segment> edgesAlong(DrawnText text) {
        Point reading = new Point(
                StrictMath.round(StrictMath.cos(text.radians()) * 10_000),
                StrictMath.round(StrictMath.sin(text.radians()) * 10_000));
        Segment line = new Segment(text.middle().minus(reading), text.middle().plus(reading));
        List<Segment> beside = new ArrayList<>();
        for (Segment edge : edges) {
            if (edge.length() >= 40_000
                    && Vectors.degreesBetween(edge, line) <= 5
                    && Vectors.distance(edge, text.middle()) <= LETTERING_REACH) {
                beside.add(edge);
            }
        }
        return beside;
    }
}
