/** The commands. */
@NullMarked
package lengthwise.cli;

import org.jspecify.annotations.NullMarked;
