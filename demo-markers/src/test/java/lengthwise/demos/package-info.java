@NullMarked
package lengthwise.demos;

import org.jspecify.annotations.NullMarked;
