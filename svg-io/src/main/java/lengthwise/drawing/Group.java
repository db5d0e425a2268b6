package lengthwise.drawing;

/**
 * A group or layer that holds part of a drawing.
 *
 * @param number tells two groups of the same name apart
 * @param layer whether the file calls it a layer
 */
public record Group(int number, Names names, boolean layer) {}
