@NullMarked
package lengthwise.job;

import org.jspecify.annotations.NullMarked;
