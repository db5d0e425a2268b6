/** What all uses of OR-Tools have in common: its native library, and a search that can be stopped. */
@NullMarked
package lengthwise.ortools;

import org.jspecify.annotations.NullMarked;
