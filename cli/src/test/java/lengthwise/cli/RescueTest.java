package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import lengthwise.geometry.Box;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerSvgReader;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Bands of 100 × 1000 mm across cloth that is 1 m wide lie one behind the other, so that a marker is as long as its bands
 * are wide: five are 500 mm. Then two are cut and something happens.
 */
class RescueTest {
    private static final String JOB = """
            version: 1
            units: mm
            fabrics:
              canvas: {width: 1000, unusable-edge: {each-side: 0}, direction: either-way, MORE
                       spread: {form: single-layer, end-allowance: {each-end: 20}}, sold-by: 100}
            pieces:
              band: {strip: {cut-width: 100, length: 1000}, runs: crosswise, print: ignore, cut: 1}
            gap: 0
            order:
              - {size: S, make: 5}
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    /** A flaw 50 mm long behind the second band: the other three begin behind it. */
    @Test
    void whatIsCutStaysAndTheRestKeepsOffTheFlaw() throws Exception {
        MarkerDrawing old = first();
        assertThat(rescued(
                        "already-cut: {marker: first/canvas.svg, up-to: 220}, flaws: [{from-start: 220, length: 50}],"))
                .as(here.said())
                .isZero();
        MarkerDrawing rescued = MarkerSvgReader.read(folder.resolve("second/canvas.svg"));
        assertThat(rescued.length().millimetres()).isEqualTo(550);
        assertThat(rescued.pieces()).containsAll(old.pieces().subList(0, 2));
        assertThat(checked()).as(here.said()).isZero();
        assertThat(here.read("second/canvas-placement.html")).contains("; cut already</td>");
    }

    /** By their numbers; the flaw lies over the second one, which is laid once more behind the others: 600 mm. */
    @Test
    void aFlawOverACutPieceIsNamed() throws Exception {
        MarkerDrawing old = first();
        assertThat(
                        rescued(
                                "already-cut: {marker: first/canvas.svg, numbers: [1, 2]}, flaws: [{from-start: 180, length: 10}],"))
                .as(here.said())
                .isZero();
        assertThat(here.said())
                .contains("warning: A flaw lies over " + old.pieces().get(1).called() + ", which is cut already: it has"
                        + " to be cut again. No room for it was found in the waste");
        assertThat(here.read("second/report.html")).contains("A flaw lies over band S");
        MarkerDrawing rescued = MarkerSvgReader.read(folder.resolve("second/canvas.svg"));
        assertThat(rescued.length().millimetres()).isEqualTo(600);
        assertThat(rescued.pieces())
                .hasSize(5)
                .contains(old.pieces().get(0))
                .doesNotContain(old.pieces().get(1));
        assertThat(checked()).as(here.said()).isZero();
    }

    /** The maker spoilt the first one; 100 mm of waste behind a cut up to 320 mm have room for it. */
    @Test
    void whatTheMakerSpoiltIsTriedInTheWaste() throws Exception {
        MarkerDrawing old = first();
        assertThat(rescued("already-cut: {marker: first/canvas.svg, up-to: 320, spoilt: [1]},"))
                .as(here.said())
                .isZero();
        assertThat(here.said()).contains(old.pieces().get(0).called() + " is cut and spoilt: it has to be cut again.");
        Box hole = old.pieces().get(0).outline().box();
        assertThat(MarkerSvgReader.read(folder.resolve("second/canvas.svg")).pieces())
                .extracting(piece -> piece.outline().box())
                .noneMatch(hole::overlaps);
    }

    /** A cut piece dragged by 0.2 mm in the new marker. */
    @Test
    void theCheckHoldsWhatIsCutWhereItIs() throws Exception {
        first();
        rescued("already-cut: {marker: first/canvas.svg, numbers: [5]},");
        Path marker = folder.resolve("second/canvas.svg");
        MarkerDrawing rescued = MarkerSvgReader.read(marker);
        PlacedPiece last = rescued.pieces().get(4);
        assertThat(last.outline().box().maxX()).isEqualTo(500_000);
        String text = Files.readString(marker);
        int group = text.indexOf("<g id=\"piece-5\"");
        Files.writeString(
                marker,
                text.substring(0, group) + "<g transform=\"translate(0.2 0)\" id=\"piece-5\""
                        + text.substring(group + "<g id=\"piece-5\"".length()));
        assertThat(checked()).isEqualTo(5);
        assertThat(here.said()).contains("is cut already and does not lie where it was cut: it is up to 0.2 mm away");
    }

    @Test
    void theMarkerThatIsCutFromIsNotWrittenOver() throws Exception {
        first();
        write("already-cut: {marker: first/canvas.svg, numbers: [1]},");
        assertThat(laid("first")).isEqualTo(2);
        assertThat(here.said()).contains("name another folder with --out");
    }

    @Test
    void whatDoesNotGoWithTheMarkerIsRefusedAtItsKey() throws Exception {
        first();
        assertThat(refusal("already-cut: {marker: first/canvas.svg, numbers: [6]},"))
                .contains("key fabrics.canvas.already-cut: first/canvas.svg has no number 6; they go up to 5.");
        assertThat(refusal("already-cut: {marker: other/canvas.svg, numbers: [1]},"))
                .contains("there is no such marker");
        assertThat(refusal("already-cut: {marker: first/canvas.svg},")).contains("write either up-to: 80 cm");
        assertThat(refusal("already-cut: {marker: first/canvas.svg, numbers: [1], spoilt: [2]},"))
                .contains("number 2 is spoilt, and not among what is cut");
        assertThat(refusal("already-cut: {marker: job.yaml, numbers: [1]},"))
                .contains("key fabrics.canvas.already-cut: ", "not a readable SVG drawing");
        Files.writeString(
                folder.resolve("job.yaml"),
                JOB.replace("width: 1000", "width: 1001")
                        .replace("MORE", "already-cut: {marker: first/canvas.svg, numbers: [1]},"));
        assertThat(laid("second")).isEqualTo(3);
        assertThat(here.said()).contains("first/canvas.svg was cut on a cuttable width of 100 cm");
    }

    private String refusal(String more) throws IOException {
        assertThat(rescued(more)).isEqualTo(3);
        return here.said();
    }

    private MarkerDrawing first() throws Exception {
        write("");
        assertThat(laid("first")).as(here.said()).isZero();
        MarkerDrawing drawing = MarkerSvgReader.read(folder.resolve("first/canvas.svg"));
        assertThat(drawing.length().millimetres()).isEqualTo(500);
        return drawing;
    }

    private int rescued(String more) throws IOException {
        write(more);
        return laid("second");
    }

    private void write(String more) throws IOException {
        here.write("job.yaml", JOB.replace("MORE", more));
    }

    private int laid(String to) {
        return here.marker(60, to);
    }

    private int checked() {
        return here.check("second/canvas.svg");
    }
}
