package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * All cloth rules together, from the job file to the marker read back from its drawing: what is laid the check has nothing
 * against, and what is refused is refused for a reason that is true of the job.
 */
class ClothRulesTest {
    private static final int SWEEPS = 3;
    private static final int FEW = 40;

    private static final Pattern SHORT = Pattern.compile(
            "lengthwise: it does not fit on cloth: \\d+ mm short\\. There is room for a marker of ([0-9.]+) (cm|m) .*");
    private static final Pattern WAY_OUT = Pattern.compile(
            "(?i)[.:;,?] (?:or )?(allow|begin|change|cut|draw|fold|give|lay|leave|let|match|mend|move|name|say|take|wash|widen)\\b");
    private static final Pattern LENGTH = Pattern.compile("\"length_mm\" : ([0-9.]+)");

    private static int tried;
    private static int laid;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    static LongStream few() {
        return LongStream.range(0, FEW);
    }

    /** {@code -Dseeds.from=N} takes the 500 from there. */
    static LongStream many() {
        long from = Long.getLong("seeds.from", 1_000);
        return LongStream.range(from, from + 500);
    }

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("few")
    void aJobIsLaidAsItsRulesSayOrRefusedForATrueReason(long seed) throws IOException {
        isLaidOrTrulyRefused(seed);
    }

    @Tag("long")
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("many")
    void eachOfFiveHundredJobsIsLaidAsItsRulesSayOrRefusedForATrueReason(long seed) throws IOException {
        isLaidOrTrulyRefused(seed);
    }

    /** Jobs that are all refused would prove nothing. */
    @AfterAll
    static void halfOfThemAreLaid() {
        if (tried >= FEW) {
            assertThat(laid).isGreaterThan(tried / 2);
        }
    }

    private void isLaidOrTrulyRefused(long seed) throws IOException {
        RandomClothJob job = new RandomClothJob(seed);
        here.write("job.yaml", job.text());
        here.write("patches.svg", job.drawing());
        int ended = here.marker(SWEEPS, "out");
        String said = here.said();
        String about = said + "\n" + job.text();
        assertThat(ended)
                .as(about)
                .isIn(ExitCode.DONE.number(), ExitCode.BAD_INPUT.number(), ExitCode.NO_MARKER.number());
        tried++;
        if (ended == ExitCode.DONE.number()) {
            laid++;
            assertThat(here.check("out/cloth.svg"))
                    .as("%s%n%s", here.said(), about)
                    .isEqualTo(ExitCode.DONE.number());
            return;
        }
        String reason = said.lines()
                .filter(line -> line.startsWith("lengthwise: "))
                .findFirst()
                .orElseThrow();
        Matcher isShort = SHORT.matcher(reason);
        if (isShort.matches()) {
            assertThat(job.says("length") || job.says("outline")).as(about).isTrue();
            isTrulyShort(
                    job,
                    said,
                    Double.parseDouble(isShort.group(1)) * (isShort.group(2).equals("m") ? 1000 : 10));
        } else {
            String bare = reason.replaceFirst("^lengthwise: (\\S*job\\.yaml:\\d+:\\d+: key [^ :]*: )?", "");
            assertThat(Refusals.untrue(job, bare)).as(about).isEmpty();
            assertThat(WAY_OUT.matcher(bare).find())
                    .as("says what to do: %s", about)
                    .isTrue();
        }
    }

    /** The room is worked out by hand; and where no marker is said to fit it, none is found that does. */
    private void isTrulyShort(RandomClothJob job, String said, double room) throws IOException {
        assertThat(room).as(said).isCloseTo(job.room(), within(6.0));
        if (!said.contains("so that is certain")) {
            return;
        }
        here.write("job.yaml", job.onEndlessCloth());
        assertThat(here.marker(10 * SWEEPS, "endless")).as(here.said()).isEqualTo(ExitCode.DONE.number());
        Matcher length = LENGTH.matcher(here.read("endless/report.json"));
        assertThat(length.find()).isTrue();
        assertThat(Double.parseDouble(length.group(1))).as(said).isGreaterThan(job.room());
    }
}
