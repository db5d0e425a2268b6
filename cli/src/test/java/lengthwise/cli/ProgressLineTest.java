package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.model.Length;
import lengthwise.solver.Layout;
import lengthwise.solver.Progress;
import lengthwise.solver.Search;
import lengthwise.solver.SearchEvent;
import lengthwise.solver.StopRule;
import org.junit.jupiter.api.Test;

class ProgressLineTest {
    private static final Search SEARCH = Search.of(StopRule.elapsed(Duration.ofSeconds(10)), 1, 1);

    private Instant now = Instant.EPOCH;
    private final StringWriter terminal = new StringWriter();
    private final ProgressLine line = line("oat-lining", true);

    @Test
    void beginsAtNothingHoweverLongTheFirstLayoutTakes() {
        line.start();
        passes(3500);
        improved(3500, 3000);
        assertThat(rewrites())
                .containsExactly(
                        "oat-lining [                        ]   0 %  laying the first pieces",
                        "oat-lining [========                ]  35 %  3.000 m, 66.7 % used   ");
    }

    /** 1000 improvements in a second: at most one line every fifth of a second, and the last one stays to be seen. */
    @Test
    void isRewrittenAtMostFiveTimesASecond() {
        line.start();
        for (int i = 1; i <= 1000; i++) {
            passes(1);
            improved(i, 4000 - i);
        }
        assertThat(rewrites()).hasSizeBetween(5, 6);
        line.done(true);
        assertThat(last()).startsWith("oat-lining [========================] 100 %  3.000 m");
    }

    @Test
    void showsTheFirstMarkerAtOnceAndLaterWhatElseCameTooSoon() {
        line.start();
        passes(10);
        improved(10, 3000);
        assertThat(last()).contains("3.000 m");
        passes(10);
        improved(20, 2900);
        assertThat(last()).contains("3.000 m");
        passes(200);
        working(220);
        assertThat(last()).contains("2.900 m");
    }

    @Test
    void whatComesAfterStandsOnALineOfItsOwn() {
        line.start();
        line.done(true);
        line.after("now what its rules cost");
        assertThat(terminal.toString().lines()).endsWith("oat-lining: now what its rules cost");
    }

    @Test
    void neverGoesBack() {
        line.start();
        for (int elapsed : new int[] {1000, 5000, 4000, 2000, 6000, 12_000, 100}) {
            passes(1000);
            working(elapsed);
        }
        List<Integer> percents = new ArrayList<>();
        Matcher percent = Pattern.compile(" (\\d+) % ").matcher(terminal.toString());
        while (percent.find()) {
            percents.add(Integer.valueOf(percent.group(1)));
        }
        assertThat(percents).containsExactly(0, 10, 50, 60, 100);
    }

    @Test
    void aShorterLineLeavesNothingOfTheLongerOne() {
        line.start();
        passes(300);
        improved(300, 3000);
        assertThat(last()).hasSameSizeAs(rewrites().get(0));
    }

    @Test
    void staysWhereItWasWhenTheSearchIsCutShort() {
        line.start();
        passes(2500);
        improved(2500, 3000);
        line.done(false);
        assertThat(last()).contains(" 25 % ").doesNotContain("100 %");
        assertThat(terminal.toString()).endsWith(System.lineSeparator());
    }

    @Test
    void longNamesAreCutShortSoThatTheLineDoesNotBreak() {
        ProgressLine named = line("the heavy brushed cotton for the winter coats", true);
        named.start();
        named.done(true);
        assertThat(rewrites()).allSatisfy(shown -> assertThat(shown.strip()).hasSizeLessThan(80));
    }

    @Test
    void showsNothingWhereThereIsNoTerminal() {
        ProgressLine silent = line("oat-lining", false);
        silent.start();
        passes(1000);
        silent.event(new SearchEvent.Working(progress(1000)), SEARCH);
        silent.better(Length.ofMillimetres(3000), 2 / 3.0);
        silent.done(true);
        assertThat(terminal.toString()).isEmpty();
    }

    private ProgressLine line(String fabric, boolean onTerminal) {
        InstantSource clock = () -> now;
        return new ProgressLine(new PrintWriter(terminal), onTerminal, fabric, clock);
    }

    private void passes(long millis) {
        now = now.plusMillis(millis);
    }

    /** As a search tells it: the event, then the marker. */
    private void improved(long elapsed, double length) {
        line.event(new SearchEvent.Improved(new Layout(List.of(), 0), progress(elapsed)), SEARCH);
        line.better(Length.ofMillimetres(length), 2 / 3.0);
    }

    private void working(long elapsed) {
        line.event(new SearchEvent.Working(progress(elapsed)), SEARCH);
    }

    private static Progress progress(long elapsed) {
        return new Progress(0, 0, Duration.ofMillis(elapsed), Long.MAX_VALUE);
    }

    private List<String> rewrites() {
        return terminal.toString()
                .lines()
                .flatMap(l -> List.of(l.split("\r")).stream())
                .filter(l -> !l.isEmpty())
                .toList();
    }

    private String last() {
        List<String> rewrites = rewrites();
        return rewrites.get(rewrites.size() - 1);
    }
}
