package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/**
 * A shape that is no cut line: what is drawn on, or beside, the pieces.
 *
 * @param kind what its name, or that of a group of marks that holds it, says it is
 * @param lines its open parts
 * @param contours its closed parts
 */
record Mark(DrawnShape shape, Optional<MarkKind> kind, List<Chain> lines, List<Contour> contours) {
    /** Returns the straight parts of all its lines, in the order drawn. */
    List<Segment> runs() {
        return lines.stream()
                .flatMap(line -> StraightRuns.of(line, StraightRuns.LINE).stream())
                .toList();
    }

    Box box() {
        return Box.around(points()).orElseThrow();
    }

    private Stream<Point> points() {
        return Stream.concat(
                lines.stream().flatMap(line -> line.points().stream()),
                contours.stream().flatMap(contour -> contour.ring().vertices().stream()));
    }

    /** Returns its greatest extent in x or y, in micrometres. */
    long extent() {
        return Math.max(box().width(), box().height());
    }

    /** Returns the length of all its lines, in micrometres. */
    double length() {
        return lines.stream().mapToDouble(Chain::length).sum();
    }

    /** Returns points to judge by which piece it lies on: the middle of its longest part first, then its ends. */
    List<Point> probes() {
        List<Point> probes = new ArrayList<>();
        StraightRuns.longest(runs()).map(Vectors::middle).ifPresent(probes::add);
        contours.forEach(contour -> probes.add(contour.ring().vertex(0)));
        lines.forEach(line -> {
            probes.add(line.first());
            probes.add(line.last());
        });
        return probes;
    }

    boolean is(MarkKind wanted) {
        return kind.filter(wanted::equals).isPresent();
    }

    boolean isUnnamed() {
        return kind.isEmpty();
    }
}
