/**
 * Markers for pen plotters, in the vector language HP-GL/2. Lengths in micrometres; one plotter unit is 25 µm, so that a
 * point is off by 12.5 µm along either axis at most.
 */
@NullMarked
package lengthwise.hpgl;

import org.jspecify.annotations.NullMarked;
