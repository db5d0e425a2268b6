package lengthwise.benchmarks;

import java.util.Collections;
import java.util.List;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;

/**
 * A packing instance on our grid.
 *
 * @param micrometresPerUnit how long one unit of the source is here
 * @param totalArea of all pieces, in square units of the source
 */
record Instance(String name, LayoutTask task, long micrometresPerUnit, double totalArea) {
    /** Returns the instance with every piece demanded so many times as often. */
    Instance times(int copies) {
        List<Demand> demands = Collections.nCopies(copies, task.demands()).stream()
                .flatMap(List::stream)
                .toList();
        return new Instance(
                copies == 1 ? name : name + "*" + copies,
                new LayoutTask(task.height(), demands, task.obstacles(), task.bonds()),
                micrometresPerUnit,
                totalArea * copies);
    }

    /** Returns a length of the grid in units of the source. */
    double units(long micrometres) {
        return micrometres / (double) micrometresPerUnit;
    }

    /** Returns total area / (length × height), in per cent. */
    double density(long length) {
        return 100 * totalArea / (units(length) * units(task.height()));
    }
}
