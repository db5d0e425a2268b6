/** The front door: an order in, a checked marker out. */
@NullMarked
package lengthwise;

import org.jspecify.annotations.NullMarked;
