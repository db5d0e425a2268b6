/**
 * Packs rectangles into a strip, as short as possible and with a proof: at once where all have one width or one height,
 * by constraint programming (OR-Tools) otherwise. Knows nothing of pieces and fabrics; micrometres.
 */
@NullMarked
package lengthwise.solver.exact;

import org.jspecify.annotations.NullMarked;
