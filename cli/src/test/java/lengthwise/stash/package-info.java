@NullMarked
package lengthwise.stash;

import org.jspecify.annotations.NullMarked;
