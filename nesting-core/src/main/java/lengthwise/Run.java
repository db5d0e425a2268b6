package lengthwise;

import java.util.List;
import java.util.Optional;
import lengthwise.workshop.MadeToMeasure;
import lengthwise.workshop.ShoppingList;

/**
 * A whole run: one job, a marker for each of its fabrics.
 *
 * @param version of Lengthwise
 * @param reproducible false when a clock or an interrupt ended the search: the same seed may then give another marker
 * @param customers what is made for whom, in the order of the order
 * @param shopping all that has to be bought, where the job says what its garments are sewn with
 */
public record Run(
        String job,
        String version,
        long seed,
        int workers,
        boolean reproducible,
        List<FabricRun> fabrics,
        List<String> warnings,
        List<MadeToMeasure> customers,
        Optional<ShoppingList> shopping) {
    /** A run for nobody by name. */
    public Run(
            String job,
            String version,
            long seed,
            int workers,
            boolean reproducible,
            List<FabricRun> fabrics,
            List<String> warnings) {
        this(job, version, seed, workers, reproducible, fabrics, warnings, List.of(), Optional.empty());
    }
}
