/**
 * The judge: lists what is wrong with a marker, from the order and the outlines as they lie. It shares no overlap code
 * with the search, and knows neither the rules' code nor the solver.
 */
@NullMarked
package lengthwise.check;

import org.jspecify.annotations.NullMarked;
