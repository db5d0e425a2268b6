package lengthwise.dxf;

import static lengthwise.dxf.Dxf.block;
import static lengthwise.dxf.Dxf.drawing;
import static lengthwise.dxf.Dxf.insert;
import static lengthwise.dxf.Dxf.line;
import static lengthwise.dxf.Dxf.point;
import static lengthwise.dxf.Dxf.polyline;
import static lengthwise.dxf.Dxf.rectangle;
import static lengthwise.dxf.Dxf.text;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.geometry.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Drawings of sewn products: layer numbers after ASTM D6673 (1 boundary, 2 turn points, 3 curve points, 4 notches, 6 mirror
 * line, 7 grain line, 8 internal lines, 11 cut-outs, 13 drill holes, 14 sew lines, 15 annotation, 80 to 83 notches). The words
 * of their texts are from memory.
 */
class SewnProductsTest {
    private static final String FRONT = text("1", 20, 20, "Piece Name: front")
            + text("1", 20, 30, "Size: M")
            + text("1", 20, 40, "Quantity: 2")
            + rectangle("1", 0, 0, 100, 200)
            + point("2", 0, 0)
            + point("3", 50, 0)
            + point("4", 100, 50)
            + line("4", 0, 100, 6, 100)
            + point("80", 50, 200)
            + line("7", 50, 20, 50, 180)
            + line("8", 10, 60, 90, 60)
            + line("8", 0, 150, 10, 150)
            + rectangle("11", 60, 100, 10, 10)
            + point("13", 30, 100)
            + rectangle("14", 10, 10, 80, 180)
            + text("15", 50, 100, "shirred");

    private static DrawnPiece only(PatternDrawing drawing) {
        assertThat(drawing.pieces())
                .as("%s %s", drawing.warnings(), drawing.leftOut())
                .hasSize(1);
        return drawing.pieces().get(0);
    }

    @Test
    void everyLayerIsReadAsWhatItIs() throws Exception {
        PatternDrawing drawing = Dxf.read(drawing(
                block("B1", FRONT),
                text("1", 0, 0, "Style Name: swim") + text("1", 0, 0, "Units: METRIC") + insert("B1", 300, 50, "")));
        DrawnPiece front = only(drawing);
        assertThat(drawing.warnings()).isEmpty();
        assertThat(front.name()).isEqualTo("front");
        assertThat(front.size()).hasValue("M");
        assertThat(front.lettering()).contains("cut 2", "shirred").hasSize(2);
        assertThat(front.outline().squareMillimetres()).isCloseTo(100 * 200 - 10 * 10, within(1e-6));
        assertThat(front.outline().holes()).hasSize(1);
        // of the points only that on layer 13 is a hole: 30 mm from the left, 100 from the top
        long left = front.outline().box().minX();
        long top = front.outline().box().minY();
        assertThat(front.drillHoles()).containsExactly(new Point(left + 30_000, top + 100_000));
        // a point on the boundary, a stroke, a T notch: all run inwards
        assertThat(front.notches()).hasSize(3);
        assertThat(front.notches()).anySatisfy(notch -> {
            assertThat(notch.from()).isEqualTo(new Point(left + 100_000, top + 150_000));
            assertThat(notch.to().x()).isLessThan(notch.from().x());
        });
        assertThat(front.arrow().orElseThrow().line().length()).isCloseTo(160_000, within(1.0));
        assertThat(front.sewLines()).hasSize(1);
        // an internal line that begins on the boundary is no notch
        assertThat(front.innerLines()).hasSize(2);
    }

    /** A half piece with its mirror line is half of what is cut, once: the line is the edge on the fold. */
    @Test
    void aMirrorLineIsTheFold() throws Exception {
        DrawnPiece half = only(Dxf.read(drawing(
                block("HALF", rectangle("1", 0, 0, 100, 150) + line("6", 0, 0, 0, 150)), insert("HALF", 0, 0, ""))));
        assertThat(half.outline().squareMillimetres()).isCloseTo(15_000, within(1e-6));
        assertThat(half.foldEdge().orElseThrow().length()).isCloseTo(150_000, within(1.0));
    }

    /** 645.16 = 25.4². */
    @Test
    void inchesAndMillimetresAreInTheRatioOfTheirSquares() throws Exception {
        String pieces = Dxf.section("BLOCKS", block("B1", FRONT));
        String end = insert("B1", 0, 0, "") + "0 ENDSEC\n0 EOF\n";
        String start = pieces + "0 SECTION\n2 ENTITIES\n";
        DrawnPiece metric = only(Dxf.read(start + text("1", 0, 0, "UNITS: METRIC") + end));
        DrawnPiece english = only(Dxf.read(start + text("1", 0, 0, "UNITS: ENGLISH") + end));
        assertThat(english.outline().squareMillimetres() / metric.outline().squareMillimetres())
                .isCloseTo(645.16, within(1e-3));
    }

    @Test
    void twoUnitsAreAQuestion() throws Exception {
        PatternDrawing drawing =
                Dxf.read(drawing(block("B1", FRONT), text("1", 0, 0, "UNITS: ENGLISH") + insert("B1", 0, 0, "")));
        assertThat(drawing.scaleStated()).isFalse();
        assertThat(drawing.warnings()).anyMatch(words -> words.contains("two units") && words.contains("drawing-unit"));
    }

    /** Every block may have its own origin; a piece within another is still a piece. */
    @Test
    void piecesOnOneAnotherAreReadApart() throws Exception {
        PatternDrawing drawing = Dxf.read(drawing(
                block("HULL", rectangle("1", 0, 0, 300, 300)) + block("CUFF", rectangle("1", 0, 0, 100, 50)),
                insert("HULL", 0, 0, "") + insert("CUFF", 0, 0, "")));
        assertThat(drawing.pieces()).extracting(DrawnPiece::name).containsExactly("HULL", "CUFF");
        assertThat(drawing.warnings()).anyMatch(words -> words.contains("apart"));
    }

    @Test
    void blocksThatNobodyInsertsAreRead() throws Exception {
        PatternDrawing drawing = Dxf.read(Dxf.MILLIMETRES
                + Dxf.section("BLOCKS", block("A", FRONT) + block("B", rectangle("1", 0, 0, 50, 50)))
                + "0 EOF\n");
        assertThat(drawing.pieces()).extracting(DrawnPiece::name).containsExactly("front", "B");
        assertThat(drawing.warnings()).anyMatch(words -> words.contains("inserts no block"));
    }

    /** Layers 1, 2 and 3 with outlines on them are children's sizes, not boundary, turn and curve points. */
    @Test
    void numbersMayBeSizes() throws Exception {
        PatternDrawing drawing = Dxf.read(drawing(
                rectangle("1", 0, 0, 100, 100) + rectangle("2", 0, 0, 110, 110) + rectangle("3", 0, 0, 120, 120)));
        assertThat(drawing.pieces())
                .extracting(piece -> piece.size().orElse(""))
                .containsExactly("1", "2", "3");
    }

    /** Other programs leave layers of their own in a file that passes through them. */
    @Test
    void aBlockThatNamesItsPieceIsOneWhateverElseTheFileHolds() throws Exception {
        DrawnPiece front = only(Dxf.read(drawing(
                block("B1", FRONT + point("Defpoints", 1, 1) + line("sketch", 20, 20, 30, 20)),
                insert("B1", 0, 0, ""))));
        assertThat(front.name()).isEqualTo("front");
        assertThat(front.size()).hasValue("M");
        assertThat(front.notches()).hasSize(3);
        assertThat(front.arrow()).isPresent();
    }

    /** How often a piece is cut is never dropped in silence. */
    @ParameterizedTest
    @ValueSource(strings = {"1,1", "2 pairs", "0", "1.5"})
    void aQuantityThatIsNoWholeNumberIsSaid(String quantity) throws Exception {
        PatternDrawing drawing = Dxf.read(drawing(
                block("B", text("1", 5, 5, "Quantity: " + quantity) + rectangle("1", 0, 0, 100, 100)),
                insert("B", 0, 0, "")));
        assertThat(only(drawing).lettering()).isEmpty();
        assertThat(drawing.warnings()).singleElement().asString().contains("\"" + quantity + "\"", "\"B\"");
    }

    @Test
    void aNotchBesideTheBoundaryIsSaid() throws Exception {
        PatternDrawing drawing = Dxf.read(
                drawing(block("B", rectangle("1", 0, 0, 100, 100) + point("4", 50, 40)), insert("B", 0, 0, "")));
        assertThat(only(drawing).notches()).isEmpty();
        assertThat(drawing.leftOut()).isEqualTo(List.of("1 × notch beside the boundary"));
    }

    /** The sizes of one piece, each a block, lie on one another. */
    @Test
    void gradesAreSizesOfOnePiece() throws Exception {
        StringBuilder blocks = new StringBuilder();
        StringBuilder inserts = new StringBuilder();
        for (int i = 0; i < 3; i++) {
            blocks.append(block(
                    "CUP" + i,
                    text("1", 5, 5, "PIECE NAME: cup")
                            + text("1", 5, 5, "SIZE: " + (36 + 2 * i))
                            + polyline("1", true, 0, 0, 100 + 4 * i, 0, 50, 80 + 4 * i)));
            inserts.append(insert("CUP" + i, 0, 0, ""));
        }
        PatternDrawing drawing = Dxf.read(drawing(blocks.toString(), inserts.toString()));
        assertThat(drawing.pieces()).extracting(DrawnPiece::name).containsOnly("cup");
        assertThat(drawing.pieces()).extracting(p -> p.size().orElse("")).containsExactly("36", "38", "40");
    }
}
