package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import lengthwise.MarkerMaking;
import lengthwise.check.MarkerCheck;
import lengthwise.job.FabricOrder;
import lengthwise.job.JobFile;
import lengthwise.job.JobReader;
import lengthwise.job.Orders;
import lengthwise.job.ReducedJob;
import lengthwise.model.Marker;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A band lies across cloth of its own length, so that a marker is as long as its bands are wide: a garment takes one of
 * 100 mm of the shell and one of 50 mm of the lining.
 */
class WhatFitsTest {
    private static final String JOB = """
            version: 1
            units: mm
            fabrics:
              canvas: {for: shell, width: 1000, unusable-edge: {each-side: 0}, direction: either-way, length: CANVAS,
                       spread: {form: single-layer, end-allowance: {each-end: 20}}, sold-by: 100}
              lawn: {for: lining, width: 1000, unusable-edge: {each-side: 0}, direction: either-way, length: LAWN,
                     spread: {form: single-layer, end-allowance: {each-end: 20}}, sold-by: 100}
            pieces:
              band: {strip: {cut-width: 100, length: 1000}, runs: crosswise, print: ignore, cut: {shell: 1}}
              facing: {strip: {cut-width: 50, length: {measure: round}}, runs: crosswise, print: ignore, cut: {lining: 1}}
            gap: 0
            order:
              - {size: S, make: 3, round: 1000}
              - {size: M, make: 2, PRIORITY round: 800}
            """;

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    /** 440 mm less the ends are room for four bands; the lining has room for six facings. */
    @Test
    void theShellRunsOutFirst() throws IOException {
        assertThat(run("440", "340", "")).as(err.toString()).isZero();
        assertThat(Files.readString(folder.resolve("out/report.html")))
                .contains(
                        "Of 5 garments the cloth on hand gives 4 (3 × S, 1 × M); left out: 1 × M.",
                        "By priority canvas runs out first, after 4 (lawn would do for all)");
        assertThat(Files.readString(folder.resolve("out/made.yaml")))
                .contains("{size: S, make: 3, round: 1 m}", "{size: M, make: 1, round: 800 mm}");
        assertThat(ended(
                        "check",
                        folder.resolve("out/canvas.svg").toString(),
                        "--job",
                        folder.resolve("out/made.yaml").toString()))
                .as(out.toString() + err)
                .isZero();
    }

    /** The last searches begin with what fits: four bands, and of the six facings that were found to fit the four of theirs. */
    @Test
    void everyClothHasAMarkerOfWhatIsMade() throws Exception {
        Path file = folder.resolve("job.yaml");
        Files.writeString(file, job("440", "340", ""));
        JobFile job = JobReader.read(file);
        ReducedJob reduced = ReducedJob.of(
                job.job(),
                Orders.of(job),
                (order, share) -> MarkerMaking.fitting(order, Search.of(StopRule.iterations(20), 1, 1)),
                (shared, share) -> Optional.empty());
        Orders fewer = Orders.of(reduced.job().orElseThrow(), folder);
        assertThat(reduced.markers()).containsOnlyKeys("canvas", "lawn");
        for (FabricOrder fabric : fewer.fabrics()) {
            Marker fits = Objects.requireNonNull(
                    reduced.markers().get(fabric.order().fabric().name()));
            assertThat(fits.placements()).hasSize(4);
            assertThat(fits.length())
                    .isLessThanOrEqualTo(fabric.order().fabric().room().orElseThrow());
            Marker again = new Marker(fabric.order(), fits.placements(), fits.length());
            assertThat(MarkerCheck.violations(again)).isEmpty();
        }
    }

    /** Room for two facings in the lining; with a priority the two of size M come first. */
    /**
     * Two pieces of canvas: 240 and 340 mm less the ends have room for two bands and for three, so for all five; of 230 mm one
     * band is lost, though 190 + 300 mm would be enough for four.
     */
    @Test
    void severalPiecesOfClothCountTogether() throws IOException {
        String more =
                "  canvas: {for: shell, width: 1000, unusable-edge: {each-side: 0}, direction: either-way, length: 340,"
                        + " spread: {form: single-layer, end-allowance: {each-end: 20}}, sold-by: 100}\n  duck: ";
        Path job = folder.resolve("job.yaml");
        String both = JOB.replace("  canvas: ", more).replace("PRIORITY", "");
        Files.writeString(job, both.replace("CANVAS", "240").replace("LAWN", "340"));
        assertThat(run()).as(err.toString()).isZero();
        assertThat(folder.resolve("out/made.yaml")).doesNotExist();
        Files.writeString(job, both.replace("CANVAS", "230").replace("LAWN", "340"));
        assertThat(run()).as(err.toString()).isZero();
        assertThat(Files.readString(folder.resolve("out/report.html")))
                .contains(
                        "Of 5 garments the cloth on hand gives 4 (3 × S, 1 × M); left out: 1 × M.",
                        "By priority duck with canvas runs out first, after 4 (lawn would do for all)");
        assertThat(ended(
                        "check",
                        folder.resolve("out/canvas.svg").toString(),
                        folder.resolve("out/duck.svg").toString(),
                        "--job",
                        folder.resolve("out/made.yaml").toString()))
                .as(out.toString() + err)
                .isZero();
    }

    /** Where a bolt is bought beside the remnant, nothing of the shell is short. */
    @Test
    void whatIsBoughtIsNotLimited() throws IOException {
        Path job = folder.resolve("job.yaml");
        String bolt =
                "  bolt: {for: shell, width: 1000, unusable-edge: {each-side: 0}, direction: either-way}\n  canvas: ";
        Files.writeString(job, job("240", "140", "").replace("  canvas: ", bolt));
        assertThat(run()).as(err.toString()).isZero();
        assertThat(Files.readString(folder.resolve("out/report.html")))
                .contains("By priority lawn runs out first, after 2; found by short searches.");
        Files.writeString(job, job("240", "140", "").replace("  canvas: ", bolt).replace("length: 140,", ""));
        assertThat(run()).isEqualTo(2);
        assertThat(err.toString()).contains("and that none for the same is bought");
    }

    @Test
    void whatHasPriorityComesFirst() throws IOException {
        assertThat(run("1000", "140", "priority: 1,")).as(err.toString()).isZero();
        assertThat(Files.readString(folder.resolve("out/report.html")))
                .contains(
                        "gives 2 (2 × M); left out: 3 × S.",
                        "By priority lawn runs out first, after 2 (canvas would do for all)");
    }

    @Test
    void notEvenOne() throws IOException {
        assertThat(run("139", "1000", "")).isEqualTo(4);
        assertThat(err.toString()).contains("Of 5 garments the cloth on hand gives 0; left out: 3 × S, 2 × M.");
        assertThat(folder.resolve("out")).doesNotExist();
    }

    @Test
    void whereAllFitsNothingIsLeftOut() throws IOException {
        assertThat(run("540", "290", "")).as(err.toString()).isZero();
        assertThat(Files.readString(folder.resolve("out/report.html"))).doesNotContain("left out");
        assertThat(folder.resolve("out/made.yaml")).doesNotExist();
    }

    @Test
    void whereNoClothIsLimitedItIsRefused() throws IOException {
        Path job = folder.resolve("job.yaml");
        Files.writeString(job, JOB.replaceAll("length: (CANVAS|LAWN),", "").replace("PRIORITY", ""));
        assertThat(ended("marker", job.toString(), "--what-fits")).isEqualTo(2);
        assertThat(err.toString()).contains("says how much there is of a fabric");
    }

    private int run(String canvas, String lawn, String priority) throws IOException {
        Path job = folder.resolve("job.yaml");
        Files.writeString(job, job(canvas, lawn, priority), StandardCharsets.UTF_8);
        return run();
    }

    private int run() {
        return ended(
                "marker",
                folder.resolve("job.yaml").toString(),
                "--what-fits",
                "--iterations",
                "20",
                "--workers",
                "1",
                "--out",
                folder.resolve("out").toString());
    }

    private static String job(String canvas, String lawn, String priority) {
        return JOB.replace("CANVAS", canvas).replace("LAWN", lawn).replace("PRIORITY", priority);
    }

    private int ended(String... arguments) {
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }
}
