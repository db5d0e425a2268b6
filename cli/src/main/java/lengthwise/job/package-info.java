/** The job file: YAML in, marker orders out, with errors that name the place. */
@NullMarked
package lengthwise.job;

import org.jspecify.annotations.NullMarked;
