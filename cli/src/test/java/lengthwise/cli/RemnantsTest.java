package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lengthwise.job.JobReader;
import lengthwise.job.Orders;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Pile;
import lengthwise.model.Shrinkage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A band of 100 × 400 mm on washed cloth of which 2 m are on hand; what is left of it is worked out by hand. */
class RemnantsTest {
    private static final String JOB = """
            version: 1
            units: mm
            fabrics:
              canvas: {for: shell, width: 1000, unusable-edge: {each-side: 50}, direction: one-way-per-garment, length: 2000,
                       most-stretch: crosswise, shrinkage: {lengthwise: 10 %, crosswise: 20 %, handled: pre-wash},
                       repeat: {lengthwise: 100, crosswise: 200, half-drop: yes, origin: {from-start: 30, from-selvedge: 70}},
                       spread: {form: FORM, end-allowance: {each-end: 20}}, sold-by: 100}
            pieces:
              band: {strip: {cut-width: 100, length: 400}, runs: crosswise, print: ignore, cut: 2}
            gap: 0
            order:
              - {size: S, make: 1}
            """;

    @TempDir
    Path folder;

    /**
     * Washed it is 1800 mm long, less 2 × 20 at the ends, and (1000 − 2 × 50) × 0.8 = 720 mm wide. Two bands lie one behind
     * the other in 200 mm, and what is left behind them is 1560 × 720 mm; beside them there are 200 × 320 mm.
     */
    @Test
    void whatIsLeftIsWrittenAsCloth() throws Exception {
        List<Fabric> left = left("single-layer");
        assertThat(left).extracting(Fabric::name).containsExactly("canvas-left-1", "canvas-left-2");
        Fabric behind = left.get(0);
        assertThat(behind.cuttableWidth()).isEqualTo(Length.ofMillimetres(720));
        assertThat(behind.room()).contains(Length.ofMillimetres(1560));
        assertThat(behind.role()).isEqualTo("shell");
        assertThat(behind.direction()).isEqualTo(Direction.ONE_WAY_PER_GARMENT);
        assertThat(behind.mostStretch()).isPresent();
        assertThat(behind.isWashedFirst()).isFalse();
        assertThat(behind.shrinkage()).isEqualTo(new Shrinkage(0, 0, Shrinkage.Handling.IN_PATTERN));
        Fabric beside = left.get(1);
        assertThat(beside.cuttableWidth()).isEqualTo(Length.ofMillimetres(320));
        assertThat(beside.room()).contains(Length.ofMillimetres(200));
    }

    /**
     * Washed the print comes again after 90 mm along and 160 mm across. A point of it lies 30 × 0.9 − 20 = 7 mm from the
     * start of the marker and (70 − 50) × 0.8 = 16 mm from the edge. The piece behind begins at 200 mm: 7 − 200 = −193 mm,
     * which is 77 mm and three repeats before it.
     */
    @Test
    void thePrintLiesWhereItLay() throws Exception {
        Fabric behind = left("single-layer").get(0);
        assertThat(behind.repeatOnTable().orElseThrow().lengthwise()).isEqualTo(Length.ofMillimetres(90));
        assertThat(behind.repeatOnTable().orElseThrow().crosswise()).isEqualTo(Length.ofMillimetres(160));
        assertThat(behind.repeatOnTable().orElseThrow().originX()).isEqualTo(Length.ofMillimetres(77));
        assertThat(behind.repeatOnTable().orElseThrow().originY()).isEqualTo(Length.ofMillimetres(16));
        // beside the bands, from 400 mm on: three rows further, where the columns are moved by half a repeat
        Fabric beside = left("single-layer").get(1);
        assertThat(beside.repeatOnTable().orElseThrow().originX()).isEqualTo(Length.ofMillimetres(7 + 45));
        assertThat(beside.repeatOnTable().orElseThrow().originY()).isEqualTo(Length.ofMillimetres(16 - 400 + 3 * 160));
    }

    /** Folded there is as much of it, half as wide, twice. */
    @Test
    void foldedClothLeavesEachPieceInBothLayers() throws Exception {
        write(JOB.replace("length: 400", "length: 300"), "fold-lengthwise");
        Fabric behind = leftBy().get(0);
        assertThat(behind.cuttableWidth()).isEqualTo(Length.ofMillimetres(360));
        assertThat(Files.readString(folder.resolve("out/leftovers.yaml")))
                .contains("# Of canvas there is each piece 2 times, once in each layer.");
    }

    @Test
    void pileIsCarriedOver() throws Exception {
        write(JOB.replace("direction: one-way-per-garment", "pile: down"), "single-layer");
        assertThat(leftBy().get(0).pile()).contains(Pile.DOWN);
    }

    private List<Fabric> left(String form) throws Exception {
        write(JOB, form);
        return leftBy();
    }

    private void write(String job, String form) throws IOException {
        Files.writeString(folder.resolve("job.yaml"), job.replace("FORM", form), StandardCharsets.UTF_8);
    }

    /** Lays the job, puts what is left in its place, and reads that back. */
    private List<Fabric> leftBy() throws Exception {
        StringWriter err = new StringWriter();
        int ended = Main.run(
                new PrintWriter(new StringWriter()),
                new PrintWriter(err, true),
                "marker",
                folder.resolve("job.yaml").toString(),
                "--iterations",
                "20",
                "--workers",
                "1",
                "--out",
                folder.resolve("out").toString());
        assertThat(ended).as(err.toString()).isZero();
        String left = Files.readString(folder.resolve("out/leftovers.yaml")).replaceFirst("for: shell", "for: one");
        String job = "version: 1\n" + left.replace("for: shell", "for: two").replace("for: one", "for: shell")
                + "pieces: {patch: {strip: {cut-width: 10 mm, length: 10 mm}, cut: {shell: 1, two: 1}}}\norder: [{make: 1}]\n";
        if (!job.contains("for: two")) {
            job = job.replace(", two: 1", "");
        }
        return Orders.of(JobReader.read(folder.resolve("left.yaml"), job)).fabrics().stream()
                .map(fabric -> fabric.order().fabric())
                .toList();
    }
}
