/**
 * What spreading and fabric rules mean: they turn a marker order into demands with placement domains, obstacles and
 * bonds, which is all that the search knows. One file a rule.
 */
@NullMarked
package lengthwise.rules;

import org.jspecify.annotations.NullMarked;
