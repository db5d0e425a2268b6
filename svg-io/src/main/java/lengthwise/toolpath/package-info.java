/**
 * The way of a cutting tool through a marker: what it cuts, in which order, how far it goes. Micrometres in the frame of
 * the marker, x along the fabric, y across it and down the page.
 */
@NullMarked
package lengthwise.toolpath;

import org.jspecify.annotations.NullMarked;
