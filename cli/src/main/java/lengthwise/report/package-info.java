/** The report of a run: JSON, HTML, placement sheets. */
@NullMarked
package lengthwise.report;

import org.jspecify.annotations.NullMarked;
