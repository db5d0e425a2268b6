package lengthwise.drawing;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Says what a mark is by its own names, else by the innermost named group of marks that holds it. A group that holds a
 * cut line names a piece, not a mark.
 */
final class MarkGroups {
    private final Set<Integer> holdPieces;

    MarkGroups(List<PieceSketch> pieces) {
        holdPieces = pieces.stream()
                .flatMap(piece -> piece.cutLine().shape().groups().stream())
                .map(Group::number)
                .collect(Collectors.toSet());
    }

    Optional<MarkKind> kindOf(DrawnShape shape) {
        Optional<MarkKind> own = MarkKind.of(shape.names());
        for (int i = shape.groups().size() - 1; i >= 0 && own.isEmpty(); i--) {
            Group group = shape.groups().get(i);
            if (!holdPieces.contains(group.number())) {
                own = MarkKind.of(group.names());
            }
        }
        return own.filter(kind -> kind != MarkKind.CUT && kind != MarkKind.FRAME);
    }
}
