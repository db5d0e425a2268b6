package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever has a place on the cloth has it in a comparison as well, where that spread lays it. */
class ComparisonTest {
    /** 1000 mm wide, 20 and 10 of it unusable; a print, a flaw, a border and zones up to the far selvedge. */
    private static final String JOB = """
            version: 1
            units: mm
            fabrics:
              cloth:
                width: 1000
                unusable-edge: {near: 20, far: 10}
                direction: either-way
                repeat: {lengthwise: 300, crosswise: 200, origin: {from-start: 50, from-selvedge: 40}}
                shrinkage: {lengthwise: 5 %, crosswise: 10 %, handled: pre-wash}
                border: {from-selvedge: 40, selvedge: far}
                zones: {plain: {from-selvedge: 300, to: 1000}}
                FLAWS
                spread: {SPREAD, end-allowance: {each-end: 20}}
                sold-by: 100
            pieces:
              band: {strip: {cut-width: 60, length: 300}, runs: lengthwise, cut: 2, zone: plain}
              facing: {strip: {cut-width: 50, length: 380}, runs: lengthwise, cut: 1, edge-on-selvedge: yes}
            gap: 3
            order: [{make: 2}]
            """;

    @TempDir
    Path folder;

    static Stream<Arguments> pairs() {
        Stream<String> forms = Stream.of(
                "single-layer", "fold-lengthwise", "fold-crosswise", "selvedges-to-middle", "tube", "plies-face-up");
        return forms.flatMap(one -> Stream.of("single-layer", "fold-lengthwise", "fold-crosswise")
                .filter(other -> !other.equals(one) && !one.equals("tube"))
                .map(other -> Arguments.of(one, other)));
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void itIsTheOrderOfTheJobThatLaysItsClothSo(String form, String other) throws Exception {
        boolean plain =
                Stream.of(form, other).allMatch(one -> one.equals("single-layer") || one.equals("fold-lengthwise"));
        String flaws = plain ? "flaws: [{from-start: 400, length: 30, from-selvedge: 200, width: 20}]" : "";
        MarkerOrder compared =
                of("form: " + form + ", compare: " + other, flaws).comparison().orElseThrow();
        assertThat(compared).isEqualTo(of("form: " + other, flaws).order());
    }

    /** By hand: half of 1000 less 20, washed: 432 mm lie to be cut on the fold, 873 in a single layer. */
    @Test
    void aZoneEndsWhereTheClothOfTheComparisonDoes() throws Exception {
        FabricOrder laid = of("form: single-layer, compare: fold-lengthwise", "");
        assertThat(plain(laid.order()).to()).isEqualTo(Length.ofMillimetres(873));
        assertThat(plain(laid.comparison().orElseThrow()).to()).isEqualTo(Length.ofMillimetres(432));
    }

    private static Fabric.Band plain(MarkerOrder order) {
        return order.lyingOf("band").zone().map(Lying.Zone::band).orElseThrow();
    }

    private FabricOrder of(String spread, String flaws) throws IOException, JobException {
        Path job = folder.resolve("job.yaml");
        Files.writeString(job, JOB.replace("SPREAD", spread).replace("FLAWS", flaws));
        return Orders.of(JobReader.read(job)).fabrics().get(0);
    }
}
