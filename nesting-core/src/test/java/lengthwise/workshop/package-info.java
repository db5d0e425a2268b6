@NullMarked
package lengthwise.workshop;

import org.jspecify.annotations.NullMarked;
