package lengthwise.drawing;

import java.util.OptionalInt;
import lengthwise.model.Length;

/**
 * How the pages of a file are laid to make one drawing: in reading order, row by row.
 *
 * @param columns how many pages lie side by side
 * @param rows how many rows there are; as many as the pages give where not said
 * @param overlap how far two neighbouring pages lie on each other, from paper edge to paper edge
 * @param firstPage the page that lies at the upper left, counted from 1
 */
public record PageGrid(int columns, OptionalInt rows, Length overlap, int firstPage) {
    /** @throws IllegalArgumentException if a count is not positive or the overlap negative */
    public PageGrid {
        if (columns < 1 || rows.orElse(1) < 1 || overlap.micrometres() < 0 || firstPage < 1) {
            throw new IllegalArgumentException("A grid of pages has columns, rows and a first page, not " + columns
                    + ", " + rows + ", " + firstPage);
        }
    }
}
