/** A neutral drawing, and what is recognised in it: pieces, grain lines, folds, notches. Micrometres, y down the page. */
@NullMarked
package lengthwise.drawing;

import org.jspecify.annotations.NullMarked;
