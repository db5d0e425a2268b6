package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lengthwise.job.CutRequest;
import lengthwise.job.Job;
import lengthwise.job.JobFile;
import lengthwise.job.JobPiece;
import lengthwise.job.JobReader;
import lengthwise.job.JobStrip;
import lengthwise.job.OrderLine;
import lengthwise.model.Cut;
import lengthwise.model.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The job files of the demos say what their makers mean. */
class DemoJobsTest {
    @ParameterizedTest
    @ValueSource(strings = {"wrap-swim-set", "smock", "bucket-hats"})
    void readsWithoutAWarning(String demo) throws Exception {
        JobFile file = read(demo);

        assertThat(file.warnings()).isEmpty();
        assertThat(file.job().drawings()).isNotEmpty().allSatisfy(drawing -> {
            assertThat(file.path(drawing)).isRegularFile();
            assertThat(drawing.scale().scaleBox()).isPresent();
        });
    }

    @Test
    void swimSetIsGradedInFiveSizesAndTenAreOrdered() throws Exception {
        List<OrderLine> order = read("wrap-swim-set").job().order();

        assertThat(order).extracting(line -> line.size().name()).containsExactly("XS", "S", "M", "L", "XL");
        assertThat(order.stream().mapToInt(OrderLine::make).sum()).isEqualTo(10);
    }

    /** Common practice, no source: two outer and two lining pieces a cup pair. */
    @Test
    void aCupPairIsTwoOuterAndTwoLiningPieces() throws Exception {
        List<CutRequest> cuts = piece(read("wrap-swim-set").job(), "cup").cut();

        assertThat(cuts)
                .extracting(
                        CutRequest::role,
                        cut -> cut.count() * 2,
                        cut -> cut.manner().orElseThrow())
                .containsExactly(tuple("shell", 2, Cut.Manner.PAIR), tuple("lining", 2, Cut.Manner.PAIR));
    }

    /** Common practice, no source: 1 1/4 in is cut for a narrow tie, 18 in for a neck tie. */
    @Test
    void neckTieIsEighteenInchesOfAnInchAndAQuarter() throws Exception {
        JobStrip tie = piece(read("wrap-swim-set").job(), "neck-tie").strip().orElseThrow();

        assertThat(tie.cutWidth()).isEqualTo(new Length(31_750));
        assertThat(tie.length()).isEqualTo(new JobStrip.StripLength.Fixed(new Length(457_200)));
    }

    /** Common practice, no source: a rib tie is the rib measure and 12 in (304.8 mm). */
    @Test
    void ribTieIsTheRibMeasureAndTwelveInches() throws Exception {
        Job job = read("wrap-swim-set").job();
        JobStrip tie = piece(job, "rib-tie").strip().orElseThrow();

        Map<String, Length> lengths = job.order().stream()
                .collect(Collectors.toMap(
                        line -> line.size().name(), line -> tie.lengthFor(line).orElseThrow()));

        assertThat(lengths)
                .containsOnly(
                        Map.entry("XS", new Length(964_800)),
                        Map.entry("S", new Length(1_034_800)),
                        Map.entry("M", new Length(1_104_800)),
                        Map.entry("L", new Length(1_174_800)),
                        Map.entry("XL", new Length(1_244_800)));
    }

    static JobFile read(String demo) throws Exception {
        return JobReader.read(Path.of(demo, "job.yaml"));
    }

    private static JobPiece piece(Job job, String name) {
        return job.piece(name).orElseThrow();
    }
}
