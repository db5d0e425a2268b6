/**
 * Cut order planning: how an order of sizes and colours is shared out over lays, each with a size ratio and its plies.
 * OR-Tools does the search.
 */
@NullMarked
package lengthwise.plan.lays;

import org.jspecify.annotations.NullMarked;
