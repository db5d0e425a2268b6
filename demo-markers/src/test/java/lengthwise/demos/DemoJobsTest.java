package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.job.CutRequest;
import lengthwise.job.FabricOrder;
import lengthwise.job.Job;
import lengthwise.job.JobFile;
import lengthwise.job.JobPiece;
import lengthwise.job.JobReader;
import lengthwise.job.JobStrip;
import lengthwise.job.LengthRule;
import lengthwise.job.OrderLine;
import lengthwise.job.Orders;
import lengthwise.model.Cut;
import lengthwise.model.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
        assertThat(tie.length()).isEqualTo(LengthRule.of(new Length(457_200)));
    }

    /** Common practice, no source: a rib tie is the rib measure and 12 in (304.8 mm). */
    @Test
    void ribTieIsTheRibMeasureAndTwelveInches() throws Exception {
        Job job = read("wrap-swim-set").job();
        JobStrip tie = piece(job, "rib-tie").strip().orElseThrow();

        Map<String, Length> lengths = new LinkedHashMap<>();
        for (OrderLine line : job.order()) {
            lengths.put(line.size().name(), tie.length().lengthFor(line));
        }

        assertThat(lengths)
                .containsOnly(
                        Map.entry("XS", new Length(964_800)),
                        Map.entry("S", new Length(1_034_800)),
                        Map.entry("M", new Length(1_104_800)),
                        Map.entry("L", new Length(1_174_800)),
                        Map.entry("XL", new Length(1_244_800)));
    }

    /** Worked by hand: pieces and strips of one garment from each fabric, times the garments ordered. */
    @ParameterizedTest
    @CsvSource({
        // cups 2, band, wings 2, front, back, gusset, neck ties 2, rib tie: 11 × 10
        "wrap-swim-set, lagoon-print, 110",
        // cups 2, band, wings 2, front, back, gusset: 8 × 10
        "wrap-swim-set, oat-lining, 80",
        // front, backs 2, pockets 2, ties 2: 7 × 10
        "smock, moss-twill, 70",
        // front facing, back facings 2: 3 × 10
        "smock, calico, 30",
        // crown, sides 2, brims 4: 7 × 12
        "bucket-hats, sailcloth, 84",
        // crown, sides 2, sweat band: 4 × 12
        "bucket-hats, lawn, 48"
    })
    void ordersWhatIsSewn(String demo, String fabric, int pieces) throws Exception {
        Orders orders = Orders.of(read(demo));

        assertThat(orders.warnings()).isEmpty();
        FabricOrder order = orders.fabrics().stream()
                .filter(each -> each.order().fabric().name().equals(fabric))
                .findFirst()
                .orElseThrow();
        assertThat(order.assumptions()).as("the maker has said it all").isEmpty();
        assertThat(order.order().bundles().stream()
                        .flatMap(bundle -> bundle.pieces().stream())
                        .mapToInt(piece -> piece.cut().count() * (piece.cut().manner() == Cut.Manner.PAIR ? 2 : 1))
                        .sum())
                .isEqualTo(pieces);
    }

    /**
     * Worked by hand: 150 cm less 2 cm each side; half of 148 cm less 1 cm, washed at 2 %; 112 cm less 2 cm, washed at 3 %;
     * 58 in and 44 in less 1/2 in each side.
     */
    @ParameterizedTest
    @CsvSource({
        "wrap-swim-set, lagoon-print, 1460000",
        "smock, moss-twill, 715400",
        "smock, calico, 1067000",
        "bucket-hats, sailcloth, 1447800",
        "bucket-hats, lawn, 1092200"
    })
    void hasTheCuttableWidth(String demo, String fabric, long micrometres) throws Exception {
        assertThat(Orders.of(read(demo)).fabrics())
                .filteredOn(order -> order.order().fabric().name().equals(fabric))
                .extracting(order -> order.order().fabric().cuttableWidth())
                .containsExactly(new Length(micrometres));
    }

    static JobFile read(String demo) throws Exception {
        return JobReader.read(Path.of(demo, "job.yaml"));
    }

    private static JobPiece piece(Job job, String name) {
        return job.piece(name).orElseThrow();
    }
}
