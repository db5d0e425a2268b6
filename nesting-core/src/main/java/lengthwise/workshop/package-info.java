/**
 * From a customer to her garment, and from an order to what has to be bought for it: sizes by measures, thread, elastic,
 * bindings, the shopping list. Lengths are in micrometres.
 */
@NullMarked
package lengthwise.workshop;

import org.jspecify.annotations.NullMarked;
