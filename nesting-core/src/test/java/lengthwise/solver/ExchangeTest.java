package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ExchangeTest {
    private static final long FIRST = 1000;
    /** Meetings each worker goes to before it leaves with something shorter by one. */
    private static final int[] MEETINGS = {40, 3, 40, 17};

    /** Whatever the pace of each, a meeting tells the shortest that was brought to the one before. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void whatIsLearntDoesNotDependOnWhoIsFaster(long seed) throws Exception {
        Exchange exchange = new Exchange(MEETINGS.length, layout(FIRST));
        ExecutorService threads = Executors.newFixedThreadPool(MEETINGS.length);
        try {
            List<Callable<List<Long>>> workers = new ArrayList<>();
            for (int worker = 0; worker < MEETINGS.length; worker++) {
                int number = worker;
                workers.add(() -> learnt(exchange, number, new SplittableRandom(31 * seed + number)));
            }
            List<Future<List<Long>>> all = threads.invokeAll(workers);
            for (int worker = 0; worker < MEETINGS.length; worker++) {
                assertThat(all.get(worker).get()).isEqualTo(expected(worker));
            }
            assertThat(exchange.shortest().length()).isEqualTo(brought(2, MEETINGS[2] - 1) - 1);
        } finally {
            threads.shutdownNow();
        }
    }

    private static List<Long> learnt(Exchange exchange, int worker, SplittableRandom pace) throws InterruptedException {
        List<Long> learnt = new ArrayList<>();
        for (int meeting = 0; meeting < MEETINGS[worker]; meeting++) {
            if (pace.nextInt(4) == 0) {
                Thread.sleep(pace.nextInt(3));
            }
            learnt.add(exchange.meet(worker, layout(brought(worker, meeting))).length());
        }
        exchange.leave(worker, layout(brought(worker, MEETINGS[worker] - 1) - 1));
        return learnt;
    }

    private static List<Long> expected(int worker) {
        List<Long> expected = new ArrayList<>();
        for (int meeting = 0; meeting < MEETINGS[worker]; meeting++) {
            long shortest = brought(worker, meeting);
            for (int other = 0; other < MEETINGS.length && meeting > 0; other++) {
                shortest = Math.min(
                        shortest,
                        meeting - 1 < MEETINGS[other]
                                ? brought(other, meeting - 1)
                                : brought(other, MEETINGS[other] - 1) - 1);
            }
            expected.add(shortest);
        }
        return expected;
    }

    /** What a worker brings to a meeting; the second one is ahead until it leaves. */
    private static long brought(int worker, int meeting) {
        return FIRST - 10L * (meeting + 1) - worker - (worker == 1 ? 100 : 0);
    }

    private static Layout layout(long length) {
        return new Layout(List.of(), length);
    }
}
