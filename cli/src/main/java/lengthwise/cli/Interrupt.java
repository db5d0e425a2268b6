package lengthwise.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Turns Ctrl-C into a request: the search is asked to stop, and the process waits a bounded time while the best marker
 * is written.
 */
final class Interrupt implements AutoCloseable {
    private static final long PATIENCE_SECONDS = 20;

    private final CountDownLatch finished = new CountDownLatch(1);
    private final Thread hook = new Thread(this::await, "interrupt");
    private volatile boolean requested;

    private Interrupt() {}

    static Interrupt listen() {
        Interrupt interrupt = new Interrupt();
        Runtime.getRuntime().addShutdownHook(interrupt.hook);
        return interrupt;
    }

    boolean isRequested() {
        return requested;
    }

    private void await() {
        requested = true;
        try {
            boolean inTime = finished.await(PATIENCE_SECONDS, TimeUnit.SECONDS);
            if (!inTime) {
                System.err.println("lengthwise: stopped before the marker was written.");
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** Says that everything is written; after an interrupt the process may end now. */
    @Override
    public void close() {
        finished.countDown();
        if (!requested) {
            try {
                Runtime.getRuntime().removeShutdownHook(hook);
            } catch (IllegalStateException alreadyStopping) {
                requested = true;
            }
        }
    }
}
