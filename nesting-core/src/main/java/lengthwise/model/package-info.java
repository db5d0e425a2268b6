/**
 * The words of the cutting room as immutable values: fabric, piece, cut, garment, order, placement, marker.
 *
 * <p>Lengths are {@link lengthwise.model.Length}; raw numbers are micrometres. A piece stands here in the frame of its
 * fabric: +x runs lengthwise (parallel to the selvedge), y crosswise and down the page, right side up; in a fabric
 * with a print, the print's up end points to +x.
 */
@NullMarked
package lengthwise.model;

import org.jspecify.annotations.NullMarked;
