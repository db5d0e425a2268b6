/** Quality runs over instances, and microbenchmarks. */
@NullMarked
package lengthwise.benchmarks;

import org.jspecify.annotations.NullMarked;
