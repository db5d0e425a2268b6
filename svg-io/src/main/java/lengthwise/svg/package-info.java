/** SVG in (through Batik) and out. */
@NullMarked
package lengthwise.svg;

import org.jspecify.annotations.NullMarked;
