package lengthwise.drawing;

import java.util.List;
import lengthwise.geometry.Box;

/**
 * What is drawn in one file, whatever its format: shapes and lettering in micrometres from the upper left corner of the
 * page, y down. Several pages lie side by side.
 *
 * @param pages where the pages are
 * @param millimetresPerUnit the scale at which it was read
 * @param scaleStated whether the file or the maker states that scale
 * @param warnings sentences for the maker about the reading
 * @param leftOut what the reading left out, and why
 */
public record Drawing(
        String file,
        List<Box> pages,
        double millimetresPerUnit,
        boolean scaleStated,
        List<DrawnShape> shapes,
        List<DrawnText> texts,
        List<String> warnings,
        List<String> leftOut) {
    public Drawing {
        pages = List.copyOf(pages);
        shapes = List.copyOf(shapes);
        texts = List.copyOf(texts);
        warnings = List.copyOf(warnings);
        leftOut = List.copyOf(leftOut);
    }
}
