/**
 * Removes the last small overlaps of a layout and shortens it, by linear programs. Only what lies here, in {@code plan}
 * and in {@code solver.exact} uses OR-Tools.
 */
@NullMarked
package lengthwise.solver.compaction;

import org.jspecify.annotations.NullMarked;
