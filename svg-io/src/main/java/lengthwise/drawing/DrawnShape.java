package lengthwise.drawing;

import java.util.List;

/**
 * One shape of a drawing: a path with its parts, a polygon, a circle.
 *
 * @param groups what holds it, outermost first
 * @param chains its parts in the order drawn, curves flattened
 * @param fillRule how its parts enclose an area
 * @param visible whether anything of it shows
 * @param filled whether its inside is painted
 * @param dashed whether its line is dashed
 * @param headAtStart whether an arrow head drawn by the file's own means points out of the start of the line
 * @param headAtEnd likewise for the end of the line
 * @param reflected whether what holds it draws it as in a mirror
 * @param place where it stands in the file, such as "line 12"
 */
public record DrawnShape(
        Names names,
        List<Group> groups,
        List<Chain> chains,
        FillRule fillRule,
        boolean visible,
        boolean filled,
        boolean dashed,
        boolean headAtStart,
        boolean headAtEnd,
        boolean reflected,
        String place) {
    /** How the parts of a shape enclose an area. */
    public enum FillRule {
        NONZERO,
        EVENODD
    }

    public DrawnShape {
        groups = List.copyOf(groups);
        chains = List.copyOf(chains);
    }

    /** Returns the same shape of other parts. */
    public DrawnShape with(List<Chain> otherChains) {
        return new DrawnShape(
                names,
                groups,
                otherChains,
                fillRule,
                visible,
                filled,
                dashed,
                headAtStart,
                headAtEnd,
                reflected,
                place);
    }

    /** Returns its name and place for a sentence: {@code 'front' (line 12)}. */
    String spoken() {
        return names.spoken().map(name -> "'" + name + "' (" + place + ")").orElse("the shape on " + place);
    }
}
