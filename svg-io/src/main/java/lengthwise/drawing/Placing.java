package lengthwise.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;

/**
 * Says on which pieces a mark lies: the piece whose group holds it, else the smallest piece around it. A mark without a
 * size lies on the piece in every size.
 */
final class Placing {
    /** Marks of a piece's group may lie this far outside it, in micrometres. */
    private static final long REACH = 20_000;

    private static final double TOUCH = 1_000;

    private final List<PieceSketch> pieces;
    private final Effort effort;

    Placing(List<PieceSketch> pieces, Effort effort) {
        this.pieces = pieces;
        this.effort = effort;
    }

    List<PieceSketch> of(Optional<String> size, List<Group> groups, List<Point> probes) throws DrawingException {
        List<PieceSketch> candidates = new ArrayList<>();
        for (PieceSketch piece : pieces) {
            boolean fits = size.isEmpty() || piece.size().isEmpty() || size.equals(piece.size());
            if (fits && isNear(piece.cutLine().box(), probes)) {
                effort.spend(piece.cutLine().ring().size());
                candidates.add(piece);
            }
        }
        Optional<PieceSketch> byGroup = byGroup(groups, candidates);
        if (byGroup.isPresent()) {
            return List.of(byGroup.get());
        }
        Set<Optional<String>> sizes = candidates.stream().map(PieceSketch::size).collect(Collectors.toSet());
        List<PieceSketch> around = new ArrayList<>();
        for (Optional<String> each : sizes) {
            candidates.stream()
                    .filter(piece -> piece.size().equals(each))
                    .filter(piece -> touches(piece.cutLine(), probes))
                    .min(Comparator.comparingDouble(piece -> piece.cutLine().area()))
                    .ifPresent(around::add);
        }
        around.sort(Comparator.comparingInt(pieces::indexOf));
        return around;
    }

    private static boolean isNear(Box box, List<Point> probes) {
        Box wide = new Box(box.minX() - REACH, box.minY() - REACH, box.maxX() + REACH, box.maxY() + REACH);
        return probes.stream().anyMatch(wide::contains);
    }

    private Optional<PieceSketch> byGroup(List<Group> groups, List<PieceSketch> candidates) {
        for (int i = groups.size() - 1; i >= 0; i--) {
            Group group = groups.get(i);
            List<PieceSketch> held = pieces.stream()
                    .filter(piece -> piece.cutLine().shape().groups().contains(group))
                    .toList();
            if (!held.isEmpty()) {
                return held.size() == 1 && candidates.contains(held.get(0)) && !group.layer()
                        ? Optional.of(held.get(0))
                        : Optional.empty();
            }
        }
        return Optional.empty();
    }

    private static boolean touches(Contour cutLine, List<Point> probes) {
        return probes.stream().anyMatch(cutLine::covers)
                || probes.stream().anyMatch(probe -> cutLine.nearest(probe).distance() <= TOUCH);
    }
}
