package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.Estimate;
import lengthwise.Estimate.InWidth;
import lengthwise.Estimate.Laid;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.job.FabricOrder;
import lengthwise.job.JobBuying;
import lengthwise.job.JobFabric;
import lengthwise.job.JobFile;
import lengthwise.job.JobReader;
import lengthwise.job.Orders;
import lengthwise.job.WiderFabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.report.EstimateFiles;
import lengthwise.report.EstimateTable;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Searches that find less the more room they have: what is found on narrower cloth counts then. */
class EstimatingTest {
    private static final Length NARROW = Length.ofMillimetres(900);
    private static final Length WIDE = Length.ofMillimetres(1_000);
    private static final Length WIDEST = Length.ofMillimetres(1_100);

    @TempDir
    Path folder;

    /** By geometry: the join of two selvedges in the middle, and a border at the far one, lie elsewhere on wider cloth. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "single-layer, '', TAKES_THE_SAME",
        "fold-lengthwise, '', TAKES_THE_SAME",
        "fold-lengthwise, 'repeat: {lengthwise: 30, crosswise: 70},', CAN_BE_CUT_DOWN",
        "tube, '', TAKES_THE_SAME",
        "tube, 'repeat: {lengthwise: 30, crosswise: 70},', ANOTHER_CLOTH",
        "selvedges-to-middle, '', CAN_BE_CUT_DOWN",
        "single-layer, 'border: {from-selvedge: 40, selvedge: far},', CAN_BE_CUT_DOWN",
        "single-layer, 'border: {from-selvedge: 40, selvedge: near},', TAKES_THE_SAME",
    })
    void howWidthsRelateIsSeenFromTheCloth(String form, String print, WiderFabric expected) throws Exception {
        JobFile file = job(form, print);
        assertThat(WiderFabric.of(file.job(), file.job().fabrics().get(0))).isEqualTo(expected);
    }

    @Test
    void aMarkerLiesOnWiderClothAsItIs() throws Exception {
        List<InWidth> widths = widths("single-layer");
        Laid wide = (Laid) widths.get(1);
        assertThat(wide.marker().length())
                .isEqualTo(((Laid) widths.get(0)).marker().length());
        assertThat(wide.marker().order().fabric().width()).isEqualTo(WIDE);
        assertThat(wide.cutDownTo()).isEmpty();
    }

    @Test
    void whereTheJoinMovesWiderClothIsCutDown() throws Exception {
        List<InWidth> widths = widths("selvedges-to-middle");
        Laid narrow = (Laid) widths.get(0);
        for (int i = 1; i < 3; i++) {
            Laid wider = (Laid) widths.get(i);
            assertThat(wider.marker()).isEqualTo(narrow.marker());
            assertThat(wider.cutDownTo()).contains(NARROW);
            assertThat(wider.purchase().buy()).isEqualTo(narrow.purchase().buy());
            assertThat(wider.efficiency()).isLessThan(narrow.efficiency());
        }
        Estimate estimate = new Estimate(
                "tunics",
                "1",
                false,
                false,
                true,
                List.of(),
                List.of(new Estimate.Cloth("voile", "shell", widths)),
                List.of());
        assertThat(EstimateTable.of(estimate))
                .contains("100 cm (39 3/8 in) wide, cut it down to 90 cm (35 3/8 in) before it is laid")
                .doesNotContain("came out longer");
        assertThat(EstimateFiles.json(estimate)).contains("\"cut_down_to_mm\" : 900");
    }

    private List<InWidth> widths(String form) throws Exception {
        JobFile file = job(form, "");
        JobFabric said = file.job().fabrics().get(0);
        FabricOrder fabric = Orders.of(file).fabrics().get(0);
        List<Estimating.Asked> asked = new ArrayList<>();
        for (Length width : List.of(NARROW, WIDE, WIDEST)) {
            asked.add(Estimating.Asked.of(
                    Orders.inWidth(file.job(), fabric, said, new JobBuying.Offer(width, Optional.empty()))));
        }
        return Estimating.widths(asked, WiderFabric.of(file.job(), said), EstimatingTest::worseOnWider);
    }

    private static MarkerAnswer worseOnWider(MarkerOrder order) {
        MarkerAnswer.Made made = (MarkerAnswer.Made)
                MarkerMaking.make(order, Search.of(StopRule.iterations(5), 1, 1), (marker, progress) -> {});
        Length more = order.fabric().width().minus(NARROW);
        Marker longer = new Marker(
                order, made.marker().placements(), made.marker().length().plus(more));
        return new MarkerAnswer.Made(longer, made.lowerBound(), made.surplus(), made.progress(), made.reason());
    }

    private JobFile job(String form, String print) throws Exception {
        return JobReader.read(folder.resolve("job.yaml"), """
                version: 1
                job: tunics
                units: mm
                fabrics:
                  voile: {for: shell, width: 900, unusable-edge: {each-side: 0}, direction: either-way, %s
                          spread: {form: %s, end-allowance: {each-end: 0}}, sold-by: 1}
                pieces:
                  front: {strip: {cut-width: 130, length: 170}, runs: crosswise, print: ignore, cut: 2}
                  back: {strip: {cut-width: 90, length: 210}, runs: crosswise, print: ignore, cut: 2}
                gap: 0
                order: [{size: S, make: 3}]
                """.formatted(print, form));
    }
}
