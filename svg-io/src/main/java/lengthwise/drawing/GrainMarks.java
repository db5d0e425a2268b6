package lengthwise.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lengthwise.drawing.Arrow.Heads;
import lengthwise.model.Segment;

/**
 * Finds the grain line or stretch arrow of a piece: the one named or lettered as such, else the one long arrow on it.
 * Where several unnamed arrows point different ways, none is taken and the maker is asked.
 */
final class GrainMarks {
    private static final double NEAR_LETTERING = 15_000;

    private final PieceSketch piece;
    private final List<Mark> marks;
    private final List<DrawnText> texts;
    private final Findings findings;

    private GrainMarks(PieceSketch piece, List<Mark> marks, List<DrawnText> texts, Findings findings) {
        this.piece = piece;
        this.marks = marks;
        this.texts = texts;
        this.findings = findings;
    }

    /** Sets the piece's arrow and takes the marks it is made of out of the list. */
    static void find(PieceSketch piece, List<Mark> marks, List<DrawnText> texts, Findings findings) {
        new GrainMarks(piece, marks, texts, findings).find();
    }

    private record Candidate(Mark mark, Arrow arrow, List<Mark> heads) {
        double length() {
            return arrow.line().length();
        }
    }

    private void find() {
        List<Mark> named =
                marks.stream().filter(mark -> mark.is(MarkKind.GRAIN)).toList();
        List<Candidate> arrows = candidates(named);
        if (arrows.isEmpty() && !named.isEmpty()) {
            findings.warn("The grain line of %s, %s, is not straight and is not taken; draw it as one straight line."
                    .formatted(piece.spoken(), named.get(0).shape().spoken()));
        }
        if (arrows.isEmpty()) {
            List<Mark> unnamed = marks.stream().filter(Mark::isUnnamed).toList();
            List<Candidate> lines = candidates(unnamed);
            arrows = lines.stream().filter(this::isLettered).toList();
            if (arrows.isEmpty()) {
                arrows = lines.stream()
                        .filter(line -> line.arrow.heads() != Heads.NONE && line.length() >= 30_000)
                        .toList();
            }
        }
        choose(arrows).ifPresent(chosen -> {
            piece.arrow(chosen.arrow);
            marks.remove(chosen.mark);
            marks.removeAll(chosen.heads);
        });
        marks.removeIf(mark -> mark.is(MarkKind.GRAIN) && piece.arrow().isPresent());
    }

    private List<Candidate> candidates(List<Mark> from) {
        List<Candidate> found = new ArrayList<>();
        List<Mark> beside = marks.stream()
                .filter(other -> other.isUnnamed() || other.is(MarkKind.GRAIN))
                .filter(other -> other.extent() <= ArrowShapes.LONGEST_BARB)
                .toList();
        for (Mark mark : from) {
            ArrowShapes.of(mark, beside)
                    .ifPresent(arrow -> found.add(new Candidate(
                            mark,
                            arrow.arrow(),
                            arrow.heads().stream().map(beside::get).toList())));
        }
        return found;
    }

    private boolean isLettered(Candidate line) {
        return texts.stream()
                .filter(text ->
                        Names.words(text.words()).anyMatch(word -> word.startsWith("grain") || word.equals("stretch")))
                .anyMatch(text -> Vectors.distance(line.arrow.line(), text.middle()) <= NEAR_LETTERING);
    }

    private Optional<Candidate> choose(List<Candidate> arrows) {
        Optional<Candidate> longest = arrows.stream().max(Comparator.comparingDouble(Candidate::length));
        if (longest.isPresent()) {
            Segment line = longest.get().arrow.line();
            boolean disagree = arrows.stream()
                    .anyMatch(other -> Vectors.degreesBetween(line, other.arrow.line()) > 1
                            || pointsAgainst(longest.get().arrow, other.arrow));
            if (disagree) {
                findings.warn(
                        ("%s has %d arrows that do not point the same way; none is taken as its grain line. Name the"
                                        + " right one \"grain\" in the drawing.")
                                .formatted(piece.spoken(), arrows.size()));
                return Optional.empty();
            }
        }
        return longest;
    }

    private static boolean pointsAgainst(Arrow one, Arrow other) {
        return one.heads() == Heads.ONE
                && other.heads() == Heads.ONE
                && one.line()
                                .to()
                                .minus(one.line().from())
                                .dot(other.line().to().minus(other.line().from()))
                        < 0;
    }
}
