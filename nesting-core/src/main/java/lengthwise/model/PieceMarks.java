package lengthwise.model;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import lengthwise.geometry.Point;

/**
 * What is drawn on a piece and not cut: for the eye, the pen and the awl.
 *
 * @param grainLine drawn from its tail to its head
 * @param notches short lines that begin on the cut line
 * @param innerLines sew lines, folds, placement lines: polylines of two or more points
 */
public record PieceMarks(
        Optional<Segment> grainLine, List<Segment> notches, List<Point> drillHoles, List<List<Point>> innerLines) {
    public static final PieceMarks NONE = new PieceMarks(Optional.empty(), List.of(), List.of(), List.of());

    public PieceMarks {
        notches = List.copyOf(notches);
        drillHoles = List.copyOf(drillHoles);
        innerLines = innerLines.stream().map(List::copyOf).toList();
    }

    /** Returns where a mark is: a notch where it begins, on the cut line. */
    public Optional<Point> at(MarkRef mark) {
        List<Point> marks = switch (mark.kind()) {
            case DRILL_HOLE -> drillHoles;
            case NOTCH -> notches.stream().map(Segment::from).toList();
        };
        return mark.number() <= marks.size() ? Optional.of(marks.get(mark.number() - 1)) : Optional.empty();
    }

    public PieceMarks mapped(UnaryOperator<Point> map) {
        return new PieceMarks(
                grainLine.map(line -> mapped(line, map)),
                notches.stream().map(notch -> mapped(notch, map)).toList(),
                drillHoles.stream().map(map).toList(),
                innerLines.stream().map(line -> line.stream().map(map).toList()).toList());
    }

    private static Segment mapped(Segment segment, UnaryOperator<Point> map) {
        return new Segment(map.apply(segment.from()), map.apply(segment.to()));
    }
}
