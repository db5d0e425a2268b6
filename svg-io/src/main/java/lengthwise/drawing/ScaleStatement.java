package lengthwise.drawing;

import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.model.Length;

/**
 * What the maker says about the scale of a drawing; empty where she says nothing.
 *
 * @param millimetresPerUnit size of one drawing unit (of the outermost viewBox), overriding what the file states
 * @param scaleBox a square in the drawing that must measure this; checked against what the file states, or taken as
 *     the scale where the file states none
 */
public record ScaleStatement(OptionalDouble millimetresPerUnit, Optional<ScaleBox> scaleBox) {
    public static final ScaleStatement NONE = new ScaleStatement(OptionalDouble.empty(), Optional.empty());

    /** The square's id or label in the drawing, and the length of its side. */
    public record ScaleBox(String id, Length measures) {}
}
