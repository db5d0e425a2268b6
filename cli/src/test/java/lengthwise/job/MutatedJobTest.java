package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lengthwise.testing.Damage;
import lengthwise.testing.Mutants;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Whatever happens to a job file, it reads or gets one line with a place: never anything else. */
class MutatedJobTest {
    private static final Path FILE = Path.of("job.yaml");
    private static final Damage DAMAGE = Damage.toWords(
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
            "*a",
            "&a",
            "&a [*a, *a]",
            "!",
            "!!java.net.URL",
            "!!binary",
            "%",
            "|",
            ">",
            "1/0",
            "\u00bd",
            "e9",
            "99999999999999999999",
            "null",
            "~",
            "<<: ",
            "? ",
            "\0",
            "\u00ef\u00bb\u00bf",
            "\u00e2\u0080\u00ae",
            "\r",
            "version: 1\n",
            "---\n",
            "[".repeat(5000),
            "{a: ".repeat(5000));

    @Test
    void damagedJobs() throws Exception {
        jobs().few(0.3);
    }

    @Tag("long")
    @Test
    void damagedJobsForAnHour() throws Exception {
        jobs().many();
    }

    private static Mutants jobs() throws Exception {
        List<byte[]> whole = Stream.concat(
                        Stream.of(JobReaderTest.plover()),
                        LongStream.range(0, 20)
                                .mapToObj(RandomGeneratorFactory.of("L64X128MixRandom")::create)
                                .map(random -> JobWriter.text(new RandomJobs(random).next(), List.of())))
                .map(text -> text.getBytes(StandardCharsets.UTF_8))
                .toList();
        return new Mutants("yaml", whole, DAMAGE, JobException.class, MutatedJobTest::read);
    }

    private static void read(byte[] file) throws JobException {
        try {
            Job job = JobReader.read(FILE, new String(file, StandardCharsets.UTF_8))
                    .job();
            assertThat(JobReader.read(FILE, JobWriter.text(job, List.of())).job())
                    .isEqualTo(job);
        } catch (JobException refused) {
            assertThat(refused.getMessage()).matches("job\\.yaml:\\d+:\\d+: .+");
            throw refused;
        }
    }
}
