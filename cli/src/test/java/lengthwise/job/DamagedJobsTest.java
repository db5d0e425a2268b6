package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever happens to a job file, it reads or gets one line with a place: never anything else. */
class DamagedJobsTest {
    private static final Path FILE = Path.of("job.yaml");
    private static final List<String> DIRT = List.of(
            ":",
            "{",
            "}",
            "[",
            "]",
            ",",
            "\n",
            " ",
            "\t",
            "-",
            "\"",
            "'",
            "#",
            "*",
            "&",
            "!",
            "%",
            "|",
            ">",
            "0",
            "-1",
            "1/0",
            "½",
            "e9",
            "99999999999999999999",
            "null",
            "~",
            "<<: ",
            "? ",
            "\0",
            "\ud83d",
            "\uFEFF",
            "\u202e",
            "\r",
            "version: 1\n",
            "---\n");

    static LongStream seeds() {
        return LongStream.range(0, 300);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void readsOrSaysWhyNot(long seed) throws Exception {
        String yaml = damaged(
                JobReaderTest.plover(),
                RandomGeneratorFactory.of("L64X128MixRandom").create(seed));
        try {
            Job job = JobReader.read(FILE, yaml).job();
            assertThat(JobReader.read(FILE, JobWriter.text(job, List.of())).job())
                    .isEqualTo(job);
        } catch (JobException refused) {
            assertThat(refused.getMessage()).matches("job\\.yaml:\\d+:\\d+: .+");
        }
    }

    private static String damaged(String text, RandomGenerator random) {
        StringBuilder damaged = new StringBuilder(text);
        for (int times = random.nextInt(1, 4); times > 0; times--) {
            int from = random.nextInt(damaged.length());
            int to = Math.min(damaged.length(), from + random.nextInt(9));
            damaged.replace(from, to, random.nextBoolean() ? "" : DIRT.get(random.nextInt(DIRT.size())));
        }
        return damaged.toString();
    }
}
