/**
 * Exact plane geometry on a grid of whole micrometres.
 *
 * <p>Units: every coordinate and length is a {@code long} in micrometres (µm), every area in square micrometres.
 * x runs along the fabric, y across it and down the page, seen on the right side of the fabric. Coordinates stay
 * below 2<sup>30</sup> µm (about 1 km), so that a cross product fits a {@code long} and nothing overflows.
 *
 * <p>A ring is simple and not closed (the first vertex is not repeated). Its orientation is said by the sign of
 * {@link lengthwise.geometry.Ring#doubleArea()}: positive rings enclose, as the textbook draws them with y up.
 *
 * <p>This package is the only one that uses JTS.
 */
@NullMarked
package lengthwise.geometry;

import org.jspecify.annotations.NullMarked;
