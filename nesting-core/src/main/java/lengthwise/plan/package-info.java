/** Before buying and cutting: purchase lengths, costs, cut order planning. */
@NullMarked
package lengthwise.plan;

import org.jspecify.annotations.NullMarked;
