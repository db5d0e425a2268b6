/**
 * The job file: YAML in, a {@link lengthwise.job.Job} out, with errors that name the place.
 *
 * <p>A job says what the maker said and nothing more: what she left out stays empty, so that whoever fills it can list
 * what was assumed. No drawing is opened here.
 */
@NullMarked
package lengthwise.job;

import org.jspecify.annotations.NullMarked;
