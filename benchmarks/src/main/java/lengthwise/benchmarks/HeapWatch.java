package lengthwise.benchmarks;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.lang.management.MemoryUsage;
import java.util.List;

/** The most memory seen on the heap, in megabytes, as often as one looks. */
final class HeapWatch {
    private final List<MemoryPoolMXBean> pools = ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(pool -> pool.getType() == MemoryType.HEAP)
            .toList();
    private final long collectionsBefore;
    private long used;
    private long afterCollection = -1;

    /** Starts after a collection of what others left. */
    HeapWatch() {
        System.gc();
        collectionsBefore = collections();
    }

    synchronized void look() {
        long now = 0;
        long after = 0;
        for (MemoryPoolMXBean pool : pools) {
            now += pool.getUsage().getUsed();
            MemoryUsage collected = pool.getCollectionUsage();
            after += collected == null ? 0 : collected.getUsed();
        }
        used = Math.max(used, now);
        if (collections() > collectionsBefore) {
            afterCollection = Math.max(afterCollection, after);
        }
    }

    private static long collections() {
        return ManagementFactory.getGarbageCollectorMXBeans().stream()
                .mapToLong(collector -> collector.getCollectionCount())
                .sum();
    }

    synchronized double used() {
        return used / 1e6;
    }

    /** Returns NaN if nothing was collected since the start. */
    synchronized double afterCollection() {
        return afterCollection < 0 ? Double.NaN : afterCollection / 1e6;
    }
}
