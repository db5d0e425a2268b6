package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@Tag("written")
class JobWriterTest {
    private static final Path FILE = Path.of("written.yaml");

    static LongStream seeds() {
        return LongStream.range(0, 100);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatIsWrittenReadsBackEqual(long seed) throws JobException {
        Job job = new RandomJobs(RandomGeneratorFactory.of("L64X128MixRandom").create(seed)).next();
        String text = JobWriter.text(job, List.of("a note", "a note\non two lines: {"));
        assertThat(JobReader.read(FILE, text).job()).as(text).isEqualTo(job);
    }

    @Test
    void aReadJobWritesWhatItsMakerWouldWrite() throws Exception {
        Job job = JobReader.read(FILE, JobReaderTest.plover()).job();
        assertThat(JobWriter.text(job, List.of("Assumed: the drawing's outlines are cut lines.")))
                .isEqualTo(JobReaderTest.resource("plover-written.yaml"));
    }

    @Test
    void whereTheClothComesFromIsWritten() throws Exception {
        String yaml = """
                version: 1
                fabrics: {cotton: {width: 140 cm, from: stash}, lining: {width: 140 cm, from: "no. 2"}}
                pieces: {tie: {strip: {cut-width: 3 cm, length: 20 cm}, cut: {cotton: 1, lining: 1}}}
                order: [{make: 1}]
                """;
        Job job = JobReader.read(FILE, yaml).job();
        assertThat(job.fabrics().get(1).buying().from()).contains("no. 2");
        assertThat(JobReader.read(FILE, JobWriter.text(job, List.of())).job()).isEqualTo(job);
    }

    @Test
    void theSizeOfADrawingIsWritten() throws Exception {
        String yaml = """
                version: 1
                drawings: [{file: s.svg, size: S}, {file: m.svg, size: "M, long"}]
                fabrics: {cotton: {width: 140 cm}}
                order: [{size: "M, long", make: 1}, {size: S, make: 1}]
                """;
        Job job = JobReader.read(FILE, yaml).job();
        assertThat(JobReader.read(FILE, JobWriter.text(job, List.of())).job()).isEqualTo(job);
        assertThat(job.drawings().get(1).size()).contains("M, long");
    }

    @Test
    void aJobInInchesIsWrittenInInches() throws Exception {
        String yaml = """
                version: 1
                units: in
                drawings: [{file: s.svg, seam-allowance: 3/8}]
                fabrics: {cotton: {width: 45, sold-by: 1/8 yd, price: 6 per yd}}
                gap: 1/16
                order: [{make: 1}]
                """;
        Job job = JobReader.read(FILE, yaml).job();
        String text = JobWriter.text(job, List.of());
        assertThat(text)
                .contains(
                        "width: 45 in ",
                        "sold-by: 1/8 yd ",
                        "price: 6.00 per yd\n",
                        "gap: 1/16 in ",
                        "seam-allowance: 3/8 in ");
        assertThat(JobReader.read(FILE, text).job()).isEqualTo(job);
    }
}
