/**
 * Search for a short layout: irregular strip packing with placement domains, obstacles and bonds. One public door,
 * {@link lengthwise.solver.StripSearch}.
 */
@NullMarked
package lengthwise.solver;

import org.jspecify.annotations.NullMarked;
