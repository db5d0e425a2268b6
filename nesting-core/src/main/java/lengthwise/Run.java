package lengthwise;

import java.util.List;

/**
 * A whole run: one job, a marker for each of its fabrics.
 *
 * @param version of Lengthwise
 * @param reproducible false when a clock or an interrupt ended the search: the same seed may then give another marker
 */
public record Run(
        String job,
        String version,
        long seed,
        int workers,
        boolean reproducible,
        List<FabricRun> fabrics,
        List<String> warnings) {}
