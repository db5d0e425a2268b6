package lengthwise.solver;

import java.time.InstantSource;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * How to search: nothing here changes what is a legal layout.
 *
 * @param cancelled asked between sweeps; when it says yes the search returns its best layout
 * @param watcher called on the searching threads, by one at a time; must return fast
 */
public record Search(
        StopRule stop,
        long seed,
        int workers,
        InstantSource clock,
        BooleanSupplier cancelled,
        Consumer<SearchEvent> watcher) {
    public static Search of(StopRule stop, long seed, int workers) {
        return new Search(stop, seed, workers, InstantSource.system(), () -> false, event -> {});
    }

    public Search stoppedBy(StopRule rule) {
        return new Search(rule, seed, workers, clock, cancelled, watcher);
    }

    public Search watchedBy(Consumer<SearchEvent> consumer) {
        return new Search(stop, seed, workers, clock, cancelled, consumer);
    }

    public Search cancelledBy(BooleanSupplier flag) {
        return new Search(stop, seed, workers, clock, flag, watcher);
    }
}
