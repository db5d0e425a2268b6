package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.check.MarkerCheck;
import lengthwise.geometry.Box;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OwnGapTest {
    private static final String JOB = """
            version: 1
            fabrics:
              calico: {width: 100 cm, unusable-edge: {each-side: 0 cm}, direction: either-way}
            pieces:
              band: {strip: {cut-width: 50 mm, length: 96 cm}, runs: crosswise, cut: 3, BAND}
              tie: {strip: {cut-width: 30 mm, length: 96 cm}, runs: crosswise, cut: 2, TIE}
            gap: GAP mm
            order:
              - {size: M, make: 1}
            """;

    @TempDir
    Path folder;

    /**
     * By hand: each strip takes a row of its own, 3 × 50 + 2 × 30 = 210 mm. The larger gap counts between two, so three
     * are 10 mm and only that between the ties, side by side at an end, is 2 mm: 242 mm, whichever of the two is the
     * job's gap.
     */
    @ParameterizedTest
    @CsvSource({"2, 'gap: 10 mm', print: ignore", "10, print: ignore, 'gap: 2 mm'"})
    void betweenTwoPiecesTheLargerGapCounts(int gap, String band, String tie) throws Exception {
        Marker marker = marker(order(gap, band, tie));
        assertThat(marker.length()).isEqualTo(Length.ofMillimetres(242));
        assertThat(MarkerCheck.violations(marker)).isEmpty();
        List<Placement> rows = marker.inLayingOrder();
        for (int i = 1; i < rows.size(); i++) {
            boolean ties = List.of(rows.get(i - 1), rows.get(i)).stream()
                    .allMatch(row -> row.item().piece().name().equals("tie"));
            Box before = rows.get(i - 1).outline().box();
            assertThat(rows.get(i).outline().box().minX() - before.maxX()).isGreaterThanOrEqualTo(ties ? 2000 : 10_000);
        }
    }

    /** The same layout, judged by an order that asks for a micrometre more between the bands. */
    @Test
    void theCheckHoldsAPieceToItsOwnGap() throws Exception {
        Marker marker = marker(order(2, "gap: 10 mm", "print: ignore"));
        MarkerOrder stricter = order(2, "gap: 10.001 mm", "print: ignore");
        assertThat(MarkerCheck.violations(new Marker(stricter, marker.placements(), marker.length())))
                .hasSize(3)
                .allSatisfy(violation -> assertThat(violation.sentence())
                        .contains("band M of garment 1", "lies 10 mm from")
                        .endsWith("the gap has to be 10.001 mm."));
    }

    @Test
    void aNegativeGapOfItsOwnIsRefused() {
        assertThatThrownBy(() -> order(2, "gap: -1 mm", "print: ignore")).hasMessageContaining("pieces.band.gap");
    }

    private static Marker marker(MarkerOrder order) {
        MarkerAnswer answer =
                MarkerMaking.make(order, Search.of(StopRule.iterations(500), 1, 1), (found, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
        return ((MarkerAnswer.Made) answer).marker();
    }

    private MarkerOrder order(int gap, String band, String tie) throws Exception {
        String job = JOB.lines()
                .map(line -> line.replace("BAND", band).replace("TIE", tie).replace("GAP", Integer.toString(gap)))
                .collect(Collectors.joining("\n"));
        Path file = folder.resolve("bands.yaml");
        Files.writeString(file, job, StandardCharsets.UTF_8);
        return Orders.of(JobReader.read(file)).fabrics().get(0).order();
    }
}
