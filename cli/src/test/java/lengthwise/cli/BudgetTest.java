package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import lengthwise.job.FabricOrder;
import lengthwise.job.JobException;
import lengthwise.job.JobReader;
import lengthwise.job.Orders;
import lengthwise.job.SewnEdges;
import lengthwise.model.MarkerOrder;
import lengthwise.solver.Progress;
import lengthwise.solver.Search;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A one-way cloth with 30 contours and a rule to cost, and a lining with 10. */
class BudgetTest {
    private static final String JOB = """
            version: 1
            job: bands
            fabrics:
              shell: {width: 100 cm, direction: one-way}
              lining: {width: 100 cm, direction: either-way}
            pieces:
              band: {strip: {cut-width: 20 cm, length: 40 cm}, print: follow, cut: {shell: 3 alike}}
              facing: {strip: {cut-width: 10 cm, length: 40 cm}, cut: {lining: 1}}
            gap: 0 cm
            order:
              - {size: M, make: 10}
            """;

    @TempDir
    Path folder;

    private Orders orders = new Orders(List.of(), List.of(), SewnEdges.NONE);
    private Instant now = Instant.EPOCH;
    private final InstantSource clock = () -> now;

    @BeforeEach
    void read() throws IOException, JobException {
        orders = Orders.of(JobReader.read(Files.writeString(folder.resolve("job.yaml"), JOB)));
    }

    /** Of 46 parts: 30, a fifth of that, and 10. */
    @Test
    void theTimeOfAJobIsSharedByWhatThereIsToLayAndUsedUp() {
        Budget budget = budget(23.0, null);
        assertThat(used(budget.next(shell(), 1, 1))).isCloseTo(15.0, within(0.002));
        assertThat(used(budget.aside(shell(), 1, 1))).isCloseTo(3.0, within(0.002));
        assertThat(used(budget.next(lining(), 1, 1))).isCloseTo(5.0, within(0.002));
    }

    @Test
    void whatOneSearchLeavesOverGoesToTheNext() {
        Budget budget = budget(23.0, null);
        budget.next(shell(), 1, 1);
        now = now.plusSeconds(2);
        budget.aside(shell(), 1, 1);
        assertThat(used(budget.next(lining(), 1, 1))).isCloseTo(21.0, within(0.002));
    }

    /** Each marker gets 2.5 s a contour, and the search aside a fifth of what its marker gets on top. */
    @Test
    void withoutATimeTheSearchAsideComesOnTop() {
        Budget budget = budget(null, null);
        assertThat(used(budget.next(shell(), 1, 1))).isCloseTo(75.0, within(0.002));
        assertThat(used(budget.aside(shell(), 1, 1))).isCloseTo(15.0, within(0.002));
        assertThat(used(budget.next(lining(), 1, 1))).isCloseTo(25.0, within(0.002));
    }

    /** 30 / 4 + 900 / 70 and 10 / 4 + 100 / 70. */
    @Test
    void aMarkerToBuyByGetsWhatItDeserves() {
        Budget budget = Budget.forEach(List.of(shell(), lining()), null, null, clock);
        assertThat(used(budget.next(shell(), 1, 1))).isCloseTo(20.357, within(0.002));
        assertThat(used(budget.next(lining(), 1, 1))).isCloseTo(3.929, within(0.002));
    }

    @Test
    void onlyWhereTheMakerSaidNoTimeASearchGivesUpBeforeItsTimeIsOver() {
        assertThat(budget(null, null).next(shell(), 1, 1).stop().patience()).isCloseTo(0.333, within(0.001));
        assertThat(budget(28.0, null).next(shell(), 1, 1).stop().patience()).isInfinite();
        assertThat(budget(null, 1000L).next(shell(), 1, 1).stop().patience()).isInfinite();
    }

    @Test
    void roundsAloneSwitchTheClockOff() {
        Budget budget = budget(null, 1000L);
        Search search = budget.next(shell(), 1, 1);
        assertThat(search.stop().fraction(progress(250, 86_400))).isEqualTo(0.25);
        assertThat(budget.aside(shell(), 1, 1).stop().fraction(progress(100, 86_400)))
                .isEqualTo(0.5);
        assertThat(budget(1.0, 1000L).next(shell(), 1, 1).stop().isMet(progress(1, 2)))
                .isTrue();
    }

    /** Half of 23 s: a fifth of that, then no more than half of what is left of it, then nothing. */
    @Test
    void findingOutWhatFitsTakesHalfOfTheTime() {
        Budget budget = budget(23.0, null);
        assertThat(used(budget.attempt(0.2, 1, 1, () -> false))).isCloseTo(2.3, within(0.002));
        now = Instant.EPOCH.plusSeconds(10);
        assertThat(used(budget.attempt(0.2, 1, 1, () -> false))).isCloseTo(0.75, within(0.002));
        now = Instant.EPOCH.plusSeconds(12);
        assertThat(used(budget.attempt(0.2, 1, 1, () -> false))).isCloseTo(0.001, within(0.0001));
        assertThat(budget.secondsLeft()).isCloseTo(11.0, within(0.01));
        assertThat(budget(null, 1000L).attempt(0.2, 1, 1, () -> false).stop().fraction(progress(100, 86_400)))
                .isEqualTo(0.5);
    }

    /** Of 20 s ten are for choosing, and two more where the looks take longer than they should. */
    @Test
    void choosingEndsInTime() {
        Budget budget = budget(20.0, null);
        now = Instant.EPOCH.plusMillis(11_900);
        assertThat(budget.isChoosingOver()).isFalse();
        now = Instant.EPOCH.plusMillis(12_100);
        assertThat(budget.isChoosingOver()).isTrue();
        assertThat(budget(null, 100L).isChoosingOver()).isFalse();
    }

    /** A look of 2.3 s has a quarter of that for its last step, and is over at once where the maker wants no more. */
    @Test
    void aLookIsBrokenOffWhenItsTimeIsOver() {
        Search look = budget(23.0, null).attempt(0.2, 1, 1, () -> false);
        now = Instant.EPOCH.plusMillis(2_870);
        assertThat(look.cancelled().getAsBoolean()).isFalse();
        now = Instant.EPOCH.plusMillis(2_880);
        assertThat(look.cancelled().getAsBoolean()).isTrue();
        assertThat(budget(23.0, null).attempt(0.2, 1, 1, () -> true).cancelled().getAsBoolean())
                .isTrue();
        Search byRounds = budget(null, 100L).attempt(0.2, 1, 1, () -> false);
        now = Instant.EPOCH.plusSeconds(86_400);
        assertThat(byRounds.cancelled().getAsBoolean()).isFalse();
    }

    private MarkerOrder shell() {
        return named("shell");
    }

    private MarkerOrder lining() {
        return named("lining");
    }

    private MarkerOrder named(String name) {
        return orders.fabrics().stream()
                .map(FabricOrder::order)
                .filter(order -> order.fabric().name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private Budget budget(@Nullable Double seconds, @Nullable Long iterations) {
        return new Budget(orders, seconds, iterations, clock);
    }

    /** Returns how long a search may take, and lets that time pass. */
    private double used(Search search) {
        double seconds = 1 / search.stop().fraction(progress(0, 1));
        now = now.plusMillis(Math.round(1000 * seconds));
        return seconds;
    }

    private static Progress progress(long iteration, long seconds) {
        return new Progress(iteration, 0, Duration.ofSeconds(seconds), 0);
    }
}
