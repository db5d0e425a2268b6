package lengthwise.drawing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * Names pieces: by their label, else by the group that holds the piece alone, else by their id, else by the layer that
 * holds it alone. Names that a program made up, and words such as "cut line", name nothing.
 */
final class PieceNames {
    /** Ids that drawing programs give by themselves. */
    private static final Pattern MADE_UP = Pattern.compile(
            "(?:path|rect|circle|ellipse|polygon|polyline|line|use|svg|text|SVGID|XMLID|_?image)[-_\\d]*"
                    + "|_?\\d+_?");

    private static final String UNNAMED = "(unnamed)";
    private static final String JOINED = "(joined)";

    private final Map<Integer, Integer> outlinesInGroup = new HashMap<>();

    /** Counts in which groups the outlines of pieces lie; hidden ones count as well. */
    PieceNames(List<DrawnShape> outlines) {
        for (DrawnShape shape : outlines) {
            shape.groups().forEach(group -> outlinesInGroup.merge(group.number(), 1, Integer::sum));
        }
    }

    /** Says whether this stands for a name where there is none. */
    static boolean isNone(String name) {
        return name.equals(UNNAMED) || name.equals(JOINED);
    }

    /** Returns the name of a piece by its cut line; "(unnamed)" where it has none. */
    String of(DrawnShape outline) {
        return outline.names()
                .label()
                .filter(PieceNames::namesAPiece)
                .or(() -> alone(outline, group -> !group.layer()))
                .or(() -> outline.names().id().filter(PieceNames::namesAPiece))
                .or(() -> alone(outline, Group::layer))
                .or(() -> outline.names().spoken())
                .orElse(UNNAMED);
    }

    /** Returns the name of a piece whose outline was joined: of the group that holds it alone, else "(joined)". */
    String ofJoined(DrawnShape firstLine) {
        return alone(firstLine, group -> true).orElse(JOINED);
    }

    private Optional<String> alone(DrawnShape outline, Predicate<Group> wanted) {
        List<Group> groups = new ArrayList<>(outline.groups());
        java.util.Collections.reverse(groups);
        return groups.stream()
                .filter(group -> outlinesInGroup.getOrDefault(group.number(), 0) == 1)
                .filter(wanted)
                .flatMap(group -> group.names().spoken().stream())
                .filter(PieceNames::namesAPiece)
                .findFirst();
    }

    private static boolean namesAPiece(String name) {
        return !MADE_UP.matcher(name).matches()
                && !SizeNames.isGenericLayer(name)
                && SizeNames.of(name).isEmpty()
                && !MarkKind.isAllThereIs(name);
    }
}
