package lengthwise.drawing;

import java.util.List;

/**
 * What was recognised in one drawing file.
 *
 * @param scaleStated whether the file states its physical size; if not, {@code warnings} say what was assumed, and a
 *     marker must not be made from it before the maker has stated the scale
 * @param uncuttable outlines that look like pieces and cannot be cut, a sentence each with the place; no marker may be made
 *     without them
 * @param warnings sentences for the maker, with the place in the file
 * @param leftOut what is not a piece, and why: page frames, lettering, hidden shapes, open lines
 */
public record PatternDrawing(
        String file,
        List<DrawnPiece> pieces,
        boolean scaleStated,
        List<String> uncuttable,
        List<String> warnings,
        List<String> leftOut) {
    public PatternDrawing {
        pieces = List.copyOf(pieces);
        uncuttable = List.copyOf(uncuttable);
        warnings = List.copyOf(warnings);
        leftOut = List.copyOf(leftOut);
    }
}
