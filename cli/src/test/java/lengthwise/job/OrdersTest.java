package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.Piece;
import lengthwise.model.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From a drawing and a job to what has to be laid. Drawings in mm, y down; "up" is the top of the page. */
class OrdersTest {
    private static final String SVG = """
            <svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            %s
            </svg>
            """;

    /** A flap, 100 wide and 160 tall, with one slanting side: no symmetry. Grain up the page. */
    private static final String FLAP = """
            <g id="flap" TRANSFORM><path class="cut" d="M100 100 H200 V260 H140 Z"/>
            <line class="grain" x1="170" y1="240" x2="170" y2="130" marker-end="url(#head)"/></g>
            """;

    /** The left half of a front, its fold edge at the right, x = 300. */
    private static final String HALF_FRONT = """
            <g id="front"><path class="cut" d="M300 100 H200 L180 300 H300 Z"/>
            <line class="grain" x1="250" y1="280" x2="250" y2="130" marker-end="url(#head)"/>
            <line class="fold" x1="300" y1="100" x2="300" y2="300"/></g>
            """;

    private static final String JOB = """
            version: 1
            job: test
            units: mm
            drawings: [{file: top.svg, seam-allowance: SEAM, arrow-means: ARROW}]
            fabrics:
              cloth: {for: shell, width: 1500, unusable-edge: {each-side: 20}, direction: WAY, FABRIC
                      spread: {form: single-layer, end-allowance: {each-end: 20}}, sold-by: 100}
            pieces: {PIECES}
            gap: 2
            order: [{size: M, make: 2}]
            """;

    @TempDir
    Path folder;

    private String drawing = FLAP.replace("TRANSFORM", "");
    private String seam = "included";
    private String arrow = "grain";
    private String way = "one-way";
    private String fabric = "";

    @Test
    void thePieceIsTurnedOntoItsGrainWithItsUpEndFirst() throws Exception {
        CutPiece cut = onlyPiece("flap: {cut: {shell: 1 pair}, drawn: left}");
        Piece piece = cut.piece();
        assertThat(piece.name()).isEqualTo("flap");
        assertThat(piece.size()).isEqualTo(new Size("M"));
        assertThat(piece.up()).contains(QuarterTurn.NONE);
        // 160 tall on the page is 160 along the fabric; the top of the page (100 wide) lies at +x
        assertThat(piece.outline().box().width()).isEqualTo(160_000);
        assertThat(piece.outline().box().height()).isEqualTo(100_000);
        assertThat(piece.outline().shell().vertices().stream()
                        .filter(vertex -> vertex.x() == 160_000)
                        .count())
                .isEqualTo(2);
        assertThat(cut.cut()).isEqualTo(new Cut(1, Cut.Manner.PAIR));
        assertThat(cut.drawnHand()).isEqualTo(Hand.LEFT);
    }

    /** The same pattern drawn upside down, or lying, is the same piece. */
    @ParameterizedTest
    @ValueSource(strings = {"rotate(180 300 300)", "rotate(90 300 300)", "translate(33 44)", "rotate(-90 200 250)"})
    void howAPieceLiesOnThePageDoesNotMatter(String transform) throws Exception {
        String pieces = "flap: {cut: {shell: 1 pair}}";
        Piece upright = onlyPiece(pieces).piece();
        drawing = FLAP.replace("TRANSFORM", "transform=\"" + transform + "\"");
        Piece turned = onlyPiece(pieces).piece();
        assertThat(turned.outline()).isEqualTo(upright.outline());
        assertThat(turned.up()).isEqualTo(upright.up());
    }

    @Test
    void aBareTwoOfAnAsymmetricPieceIsAQuestion() {
        assertThatThrownBy(() -> onlyPiece("flap: {cut: {shell: 2}}"))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("flap")
                .hasMessageContaining("2 alike")
                .hasMessageContaining("1 pair");
    }

    @Test
    void noUpEndOnOneWayClothIsAQuestionAndElsewhereIsNot() throws Exception {
        drawing = FLAP.replace("TRANSFORM", "").replace(" marker-end=\"url(#head)\"", "");
        assertThatThrownBy(() -> onlyPiece("flap: {cut: {shell: 1 pair}}"))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("Which end of flap is up?");
        assertThat(onlyPiece("flap: {cut: {shell: 1 pair}, up: as-drawn}")
                        .piece()
                        .up())
                .contains(QuarterTurn.NONE);
        way = "either-way";
        assertThat(onlyPiece("flap: {cut: {shell: 1 pair}}").piece().up()).isEmpty();
    }

    @Test
    void noGrainLineIsAQuestion() {
        drawing = "<g id=\"flap\"><path class=\"cut\" d=\"M100 100 H200 V260 H140 Z\"/></g>";
        assertThatThrownBy(() -> onlyPiece("flap: {cut: {shell: 1 pair}}"))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("flap")
                .hasMessageContaining("no grain line");
    }

    /** Greatest stretch goes round the body: an arrow that means stretch lies along the cloth's greatest stretch. */
    @Test
    void aStretchArrowFollowsTheClothsGreatestStretch() throws Exception {
        arrow = "stretch";
        way = "either-way";
        assertThatThrownBy(() -> onlyPiece("flap: {cut: {shell: 1 pair}}"))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("most-stretch");
        fabric = "most-stretch: lengthwise,";
        assertThat(onlyPiece("flap: {cut: {shell: 1 pair}}")
                        .piece()
                        .outline()
                        .box()
                        .width())
                .isEqualTo(160_000);
        fabric = "most-stretch: crosswise,";
        assertThat(onlyPiece("flap: {cut: {shell: 1 pair}}")
                        .piece()
                        .outline()
                        .box()
                        .width())
                .isEqualTo(100_000);
    }

    @Test
    void aHalfPieceKeepsItsFoldEdgeExactlyLevel() throws Exception {
        drawing = HALF_FRONT;
        Piece piece = onlyPiece("front: {cut: {shell: 1 on fold}}").piece();
        assertThat(piece.foldEdge()).isPresent();
        long fold = piece.foldEdge().orElseThrow().from().y();
        assertThat(piece.foldEdge().orElseThrow().to().y()).isEqualTo(fold);
        assertThat(piece.outline().shell().vertices().stream()
                        .filter(vertex -> vertex.y() == fold)
                        .count())
                .isEqualTo(2);
    }

    @Test
    void onFoldWithoutAFoldEdgeIsAQuestion() {
        assertThatThrownBy(() -> onlyPiece("flap: {cut: {shell: 1 on fold}}"))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("no fold edge");
    }

    /** Seam allowance is added outside the outline, corners kept, and not on the fold. 10 mm on a 200 mm tall half. */
    @Test
    void seamAllowanceIsAddedButNotOnTheFold() throws Exception {
        drawing = HALF_FRONT;
        Piece bare = onlyPiece("front: {cut: {shell: 1 on fold}}").piece();
        seam = "10";
        Piece allowed = onlyPiece("front: {cut: {shell: 1 on fold}}").piece();
        assertThat(allowed.outline().box().width() - bare.outline().box().width())
                .isEqualTo(20_000);
        long across = allowed.outline().box().height() - bare.outline().box().height();
        // one slanting side is moved by 10 mm square to itself: its mitred corner reaches a little more across
        assertThat(across).isBetween(10_000L, 12_000L);
        assertThat(allowed.foldEdge().orElseThrow().from().y())
                .isIn(allowed.outline().box().minY(), allowed.outline().box().maxY());
    }

    /** Compensated length L / (1 − s): 29 in at 3 % is 29.897 in, not 29.87 (rule: foralltex.com, 2026). */
    @Test
    void addedShrinkageDividesAlongAndAcross() throws Exception {
        fabric = "shrinkage: {lengthwise: 3 %, crosswise: 2 %, handled: add-to-pieces},";
        Piece piece = onlyPiece("flap: {cut: {shell: 1 pair}}").piece();
        assertThat(piece.outline().box().width()).isEqualTo(Math.round(160_000 / 0.97));
        assertThat(piece.outline().box().height()).isEqualTo(Math.round(100_000 / 0.98));
    }

    @ParameterizedTest
    @ValueSource(strings = {"pre-wash", "in-pattern"})
    void otherwiseThePiecesAreUntouched(String handled) throws Exception {
        fabric = "shrinkage: {lengthwise: 3 %, crosswise: 2 %, handled: " + handled + "},";
        Piece piece = onlyPiece("flap: {cut: {shell: 1 pair}}").piece();
        assertThat(piece.outline().box().width()).isEqualTo(160_000);
        assertThat(piece.outline().box().height()).isEqualTo(100_000);
    }

    /** A sew line drawn inside the cut line is a mark: one piece, no hole. */
    @Test
    void aSewLineIsAMark() throws Exception {
        drawing = FLAP.replace("TRANSFORM", "")
                .replace(
                        "</g>",
                        "<path class=\"sew\" stroke=\"#000\" stroke-dasharray=\"4 2\" fill=\"none\" d=\"M118 110 H190 V250 H146 Z\"/></g>");
        CutPiece cut = onlyPiece("flap: {cut: {shell: 1 pair}}");
        assertThat(cut.piece().outline().holes()).isEmpty();
        assertThat(cut.piece().marks().innerLines()).hasSize(1);
        assertThat(cut.piece().outline().squareMillimetres()).isEqualTo(12_800);
    }

    @Test
    void letteringIsReadWhereTheJobSaysNothing() throws Exception {
        drawing = FLAP.replace("TRANSFORM", "")
                .replace("</g>", "<text x=\"150\" y=\"200\" font-size=\"6\">flap: cut 1 pair</text></g>");
        assertThat(onlyPiece("").cut()).isEqualTo(new Cut(1, Cut.Manner.PAIR));
    }

    /** Two statements for one fabric would be added up in silence. */
    @Test
    void letteringThatSaysTwoThingsOfAFabricIsAskedAbout() throws Exception {
        String first = "<text x=\"150\" y=\"200\" font-size=\"6\">flap: cut 1 pair</text>";
        drawing = FLAP.replace("TRANSFORM", "")
                .replace("</g>", first + "<text x=\"150\" y=\"210\" font-size=\"6\">cut 2 alike</text></g>");
        assertThatThrownBy(() -> onlyPiece(""))
                .isInstanceOf(JobException.class)
                .hasMessageContaining(
                        "How often is flap cut from shell? It is lettered 1 pair and 2 alike: say under pieces flap: {cut: {shell: …}}.");
        assertThat(onlyPiece("flap: {cut: {shell: 2 alike}}").cut()).isEqualTo(new Cut(2, Cut.Manner.ALIKE));
        drawing = FLAP.replace("TRANSFORM", "").replace("</g>", first + first.replace("200", "210") + "</g>");
        assertThat(onlyPiece("").cut()).isEqualTo(new Cut(1, Cut.Manner.PAIR));
    }

    /** A left drawn beside its right is one pair, not one piece. */
    @Test
    void leftAndRightDrawnSideBySideAreAPair() throws Exception {
        String left = FLAP.replace("TRANSFORM", "");
        drawing = left + left.replace("<g id=\"flap\"", "<g id=\"flap_1_\" transform=\"translate(550 0) scale(-1 1)\"");
        assertThat(onlyPiece("").cut()).isEqualTo(new Cut(1, Cut.Manner.PAIR));
    }

    @Test
    void aSizeThatIsNotDrawnIsRefused() {
        drawing = "<g id=\"S\">" + FLAP.replace("TRANSFORM", "") + "</g><g id=\"L\">"
                + FLAP.replace("TRANSFORM", "").replace("id=\"flap\"", "id=\"flap_1_\"") + "</g>";
        assertThatThrownBy(() -> onlyPiece("flap: {cut: {shell: 1 pair}}"))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("not drawn in size M");
    }

    @Test
    void aPieceThatIsNotDrawnIsNamedWithTheNearest() {
        assertThatThrownBy(() -> onlyPiece("flip: {cut: {shell: 1 pair}}"))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("flip is not in the drawings (did you mean flap?)");
    }

    /** Cloth that is worn wrong side to wrong side turns its right side to the body: its pieces are mirrored. */
    @Test
    void clothWornWrongSideToWrongSideIsMirrored() throws Exception {
        Piece outside = onlyPiece("flap: {cut: {shell: 1 alike}}").piece();
        fabric = "right-side: body,";
        Piece inside = onlyPiece("flap: {cut: {shell: 1 alike}}").piece();
        long height = outside.outline().box().height();
        assertThat(inside.outline().shell().vertices())
                .containsExactlyInAnyOrderElementsOf(outside.outline().shell().vertices().stream()
                        .map(vertex -> new Point(vertex.x(), height - vertex.y()))
                        .toList())
                .isNotEqualTo(outside.outline().shell().vertices());
    }

    @Test
    void theOrderNumbersItsGarmentsAndKeepsItsGap() throws Exception {
        Orders orders = orders("flap: {cut: {shell: 1 pair}}");
        assertThat(orders.fabrics()).hasSize(1);
        assertThat(orders.fabrics().get(0).order().gap()).isEqualTo(Length.ofMillimetres(2));
        assertThat(orders.fabrics().get(0).order().bundles())
                .extracting(bundle -> bundle.garment().number())
                .containsExactly(1, 2);
    }

    private CutPiece onlyPiece(String pieces) throws Exception {
        return orders(pieces).fabrics().get(0).order().bundles().get(0).pieces().get(0);
    }

    private Orders orders(String pieces) throws IOException, JobException {
        Files.writeString(folder.resolve("top.svg"), SVG.formatted(drawing), StandardCharsets.UTF_8);
        Path file = folder.resolve("job.yaml");
        Files.writeString(
                file,
                JOB.replace("SEAM", seam)
                        .replace("ARROW", arrow)
                        .replace("WAY", way)
                        .replace("FABRIC", fabric)
                        .replace("PIECES", pieces),
                StandardCharsets.UTF_8);
        return Orders.of(JobReader.read(file));
    }
}
