package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.geometry.Point;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Segment;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pieces and strips on the bias, from the job file to the marker. */
class BiasTest {
    /** A flap without symmetry, and the left half of a front with its fold edge at the right. */
    private static final String SVG = """
            <svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="600mm" viewBox="0 0 900 600">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            <g id="flap" TRANSFORM><path class="cut" d="M100 100 H200 V260 H140 Z"/>
            <line class="grain" x1="170" y1="240" x2="170" y2="130" marker-end="url(#head)"/></g>
            <g id="front"><path class="cut" d="M800 100 H700 L680 310 H800 Z"/>
            <line class="grain" x1="750" y1="280" x2="750" y2="130" marker-end="url(#head)"/>
            <line class="fold" x1="800" y1="100" x2="800" y2="310"/></g>
            </svg>
            """;

    private static final String JOB = """
            version: 1
            job: on the bias
            units: mm
            drawings: [{file: top.svg, seam-allowance: included, arrow-means: ARROW}]
            fabrics:
              cloth: {for: shell, width: 1500, unusable-edge: {each-side: 20}, direction: WAY, sold-by: 100, FABRIC
                      spread: {form: FORM, end-allowance: {each-end: 20}}}
            pieces: {PIECES}
            gap: 2
            order: [{size: M, make: 2}]
            """;

    private static final String FLAP = "flap: {cut: 1 pair, grain: bias}, front: {cut: 1 on fold}";
    private static final String FRONT = "flap: {cut: 1 pair}, front: {cut: 1 on fold, grain: bias}";

    @TempDir
    Path folder;

    private String transform = "";
    private String arrow = "grain";
    private String way = "one-way";
    private String form = "single-layer";
    private String fabric = "";

    /** A strip of some width takes its width times √2 along the selvedge: 2 in take 2.8284 in, 1.25 in take 1.7678 in. */
    @ParameterizedTest
    @CsvSource({"2, 2.8284", "1.25, 1.7678"})
    void whatAStripTakesOfTheSelvedge(double inches, double ofSelvedge) throws Exception {
        String job = """
                version: 1
                fabrics: {satin: {width: %s mm, unusable-edge: {each-side: 0 cm}, direction: either-way}}
                pieces: {binding: {strip: {cut-width: %s in, length: 40 cm}, runs: bias, cut: %s}}
                gap: 0 mm
                order: [{make: 1}]
                """;
        double across = (400 + inches * 25.4) / Math.sqrt(2);
        String width = String.format(java.util.Locale.ROOT, "%.2f", across + 0.01);
        double one = length(job.formatted(width, inches, 1));
        double four = length(job.formatted(width, inches, 4));
        assertThat(one).isCloseTo(across, within(0.01));
        assertThat((four - one) / 3).isCloseTo(ofSelvedge * 25.4, within(0.03));
    }

    /** The line that is drawn on it runs half way between selvedge and cross grain, up end first. */
    @Test
    void aDrawnPieceIsTurnedByFortyFiveDegrees() throws Exception {
        CutPiece flap = cut(FLAP, 0);
        Segment line = flap.piece().marks().grainLine().orElseThrow();
        Point way = line.to().minus(line.from());
        assertThat(way.x()).isPositive().isCloseTo(way.y(), within(1L));
        assertThat(line.length()).isCloseTo(110_000, within(2.0));
        assertThat(flap.piece().turning()).isEqualTo(Piece.Turning.ON_BIAS);
        assertThat(flap.piece().upEnd()).contains(new Point(1, 1));
        // 100 × 160 less a triangle of 40 × 160 / 2
        assertThat(flap.piece().outline().squareMillimetres()).isCloseTo(12_800, within(0.5));
    }

    @ParameterizedTest
    @ValueSource(strings = {"rotate(180 300 300)", "rotate(90 300 300)", "translate(33 44)", "rotate(-90 200 250)"})
    void howItLiesOnThePageDoesNotMatter(String drawn) throws Exception {
        Piece upright = cut(FLAP, 0).piece();
        transform = "transform=\"" + drawn + "\"";
        assertThat(cut(FLAP, 0).piece().outline()).isEqualTo(upright.outline());
    }

    /** No fold runs on the bias: the half is opened, its two halves alike to the micrometre. */
    @Test
    void aHalfPieceIsOpened() throws Exception {
        CutPiece front = cut(FRONT, 1);
        Piece piece = front.piece();
        assertThat(front.cut()).isEqualTo(new Cut(1, Cut.Manner.ALIKE));
        assertThat(piece.foldEdge()).isEmpty();
        assertThat(piece.outline().shell().vertices())
                .allSatisfy(vertex ->
                        assertThat(piece.outline().shell().vertices()).contains(new Point(vertex.y(), vertex.x())));
        assertThat(piece.outline().squareMillimetres()).isCloseTo(2 * 110 * 210, within(1.0));
    }

    /** Two alike at a time from folded cloth, also where it has an up end. */
    @ParameterizedTest
    @ValueSource(strings = {"single-layer", "fold-lengthwise", "plies-face-to-face"})
    void everyWayOfSpreadingTakesThem(String spread) throws Exception {
        form = spread;
        for (String direction : new String[] {"either-way", "one-way", "one-way-per-garment"}) {
            way = direction;
            Marker marker = made(order(FRONT.replace("1 pair}", "1 pair, grain: bias}")
                    + ", tie: {strip: {cut-width: 30, length: 300}, runs: bias, print: follow, cut: 2}"));
            int fronts = (int) marker.placements().stream()
                    .filter(placement -> placement.item().piece().name().equals("front"))
                    .count();
            assertThat(fronts).isEqualTo(spread.equals("single-layer") ? 2 : 1);
        }
    }

    @Test
    void biasAndStretchContradictEachOther() {
        arrow = "stretch";
        fabric = "most-stretch: crosswise,";
        way = "either-way";
        assertThatThrownBy(() -> order(FLAP))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("grain: bias")
                .hasMessageContaining("greatest stretch");
    }

    @Test
    void biasAndUnevenShrinkageAddedToPiecesContradictEachOther() throws Exception {
        fabric = "shrinkage: {lengthwise: 3 %, crosswise: 3 %, handled: add-to-pieces},";
        Segment line = cut(FLAP, 0).piece().marks().grainLine().orElseThrow();
        assertThat(line.to().minus(line.from()).x())
                .isCloseTo(line.to().minus(line.from()).y(), within(2L));
        fabric = "shrinkage: {lengthwise: 5 %, crosswise: 3 %, handled: add-to-pieces},";
        for (String pieces : new String[] {
            FLAP, FRONT, "flap: {cut: 1 pair}, tie: {strip: {cut-width: 30, length: 300}, runs: bias, cut: 1}"
        }) {
            assertThatThrownBy(() -> order(pieces))
                    .isInstanceOf(JobException.class)
                    .hasMessageContaining("on the bias")
                    .hasMessageContaining("shrinks differently");
        }
    }

    private CutPiece cut(String pieces, int index) throws Exception {
        return order(pieces).bundles().get(0).pieces().get(index);
    }

    private MarkerOrder order(String pieces) throws IOException, JobException {
        Files.writeString(folder.resolve("top.svg"), SVG.replace("TRANSFORM", transform), StandardCharsets.UTF_8);
        return read(JOB.replace("ARROW", arrow)
                .replace("WAY", way)
                .replace("FABRIC", fabric)
                .replace("FORM", form)
                .replace("PIECES", pieces));
    }

    private MarkerOrder read(String job) throws JobException {
        return Orders.of(JobReader.read(folder.resolve("job.yaml"), job))
                .fabrics()
                .get(0)
                .order();
    }

    private double length(String job) throws JobException {
        return made(read(job)).length().millimetres();
    }

    private static Marker made(MarkerOrder order) {
        MarkerAnswer answer =
                MarkerMaking.make(order, Search.of(StopRule.iterations(60), 1, 1), (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
        return ((MarkerAnswer.Made) answer).marker();
    }
}
