package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import lengthwise.drawing.Arrow;
import lengthwise.drawing.Arrow.Heads;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How makers draw marks; common practice, no source. The piece is always a rectangle of 100 × 200 mm. */
class MarksTest {
    private static final String CUT = "<path class=\"cut\" d=\"M50 50H150V250H50Z\"/>";

    private static DrawnPiece piece(String marks) throws DrawingException {
        return Drawn.piece("<g id=\"front\">" + CUT + marks + "</g>");
    }

    private static Arrow arrow(String marks) throws DrawingException {
        return piece(marks).arrow().orElseThrow();
    }

    private static Point mm(double x, double y) {
        return new Point(Math.round(x * 1000), Math.round(y * 1000));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<path class=\"grain\" marker-end=\"url(#head)\" d=\"M100 220V80\"/>",
                "<line class=\"grain\" style=\"marker-end:url(#head)\" x1=\"100\" y1=\"220\" x2=\"100\" y2=\"80\"/>",
                "<path id=\"grainline\" marker-start=\"url(#both)\" d=\"M100 80V220\"/>",
                "<path class=\"grain\" d=\"M100 220V80M95 90L100 80L105 90\"/>",
                "<path class=\"grain\" d=\"M100 220L100 80L95 90M100 80L105 90\"/>",
                "<path d=\"M100 220V80M95 90L100 80L105 90\"/>",
                "<g class=\"grain\"><path d=\"M100 220V80\"/><path d=\"M95 90L100 80L105 90\"/></g>",
                "<line x1=\"100\" y1=\"220\" x2=\"100\" y2=\"90\"/><path fill=\"#000\" d=\"M95 90L100 80L105 90Z\"/>",
                "<path marker-end=\"url(#head)\" d=\"M100 220V80\"/>",
            })
    void anArrowWithOneHeadPointsUp(String marks) throws DrawingException {
        Arrow arrow = arrow(marks);
        assertThat(arrow.heads()).isEqualTo(Heads.ONE);
        assertThat(arrow.line()).isEqualTo(new Segment(mm(100, 220), mm(100, 80)));
        assertThat(arrow.degrees()).isCloseTo(90, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<path class=\"grain\" d=\"M100 220V80M95 90L100 80L105 90M95 210L100 220L105 210\"/>",
                "<path class=\"grain\" marker-start=\"url(#both)\" marker-end=\"url(#both)\" d=\"M100 220V80\"/>",
            })
    void headsAtBothEndsSayNoUpEnd(String marks) throws DrawingException {
        assertThat(arrow(marks).heads()).isEqualTo(Heads.BOTH);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<path class=\"grain\" d=\"M100 220V80\"/>",
                "<path class=\"grain\" marker-end=\"url(#dot)\" d=\"M100 220V80\"/>",
                // a head of the start that points into the line shows no end
                "<path class=\"grain\" marker-start=\"url(#head)\" d=\"M100 220V80\"/>",
                // a cross bar
                "<path class=\"grain\" d=\"M100 220V80M95 80H105\"/>",
                // a tail: barbs that point on, like the feathers of an arrow
                "<path class=\"grain\" d=\"M100 220V80M95 70L100 80L105 70\"/>",
                "<path d=\"M100 220V80\"/><text x=\"102\" y=\"150\" font-size=\"5\">grain</text>",
            })
    void otherEndsAreNoHeads(String marks) throws DrawingException {
        assertThat(arrow(marks).heads()).isEqualTo(Heads.NONE);
    }

    @Test
    void aPlainLineIsNoGrainLine() throws DrawingException {
        DrawnPiece piece = piece("<path d=\"M100 220V80\"/>");
        assertThat(piece.arrow()).isEmpty();
        assertThat(piece.innerLines()).hasSize(1);
    }

    @Test
    void arrowsThatDisagreeAreAskedAbout() throws DrawingException {
        PatternDrawing drawing = Drawn.read(
                Drawn.page(
                        CUT
                                + "<path marker-end=\"url(#head)\" d=\"M100 220V80\"/><path marker-end=\"url(#head)\" d=\"M60 100H140\"/>"));
        assertThat(drawing.pieces().get(0).arrow()).isEmpty();
        assertThat(drawing.warnings()).anyMatch(warning -> warning.contains("do not point the same way"));
    }

    @Test
    void theGrainNamedOutweighsOtherArrows() throws DrawingException {
        assertThat(arrow("<path class=\"grain\" marker-end=\"url(#head)\" d=\"M100 220V80\"/>"
                                + "<path marker-end=\"url(#head)\" d=\"M60 100H140\"/>")
                        .degrees())
                .isCloseTo(90, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<path class=\"fold\" d=\"M50 50V250\"/>",
                "<line id=\"fold-line\" x1=\"50\" y1=\"60\" x2=\"50\" y2=\"240\" stroke-dasharray=\"8 2\"/>",
                // a bracket whose ends point to the edge
                "<path class=\"fold\" d=\"M52 80H65V220H52\"/>",
                "<g id=\"fold\"><path marker-start=\"url(#both)\" marker-end=\"url(#both)\" d=\"M52 80H65V220H52\"/></g>",
                "<text x=\"60\" y=\"200\" font-size=\"5\" transform=\"rotate(-90 60 200)\">place on fold</text>",
            })
    void theFoldEdgeIsTheStraightEdgeThatIsMarked(String marks) throws DrawingException {
        Segment edge = piece(marks).foldEdge().orElseThrow();
        assertThat(edge.length()).isEqualTo(200_000);
        assertThat(edge.from().x()).isEqualTo(50_000);
        assertThat(edge.to().x()).isEqualTo(50_000);
    }

    @Test
    void aFoldLineInTheMiddleIsNoFoldEdge() throws DrawingException {
        PatternDrawing drawing = Drawn.read(Drawn.page(CUT + "<path class=\"fold\" d=\"M100 50V250\"/>"));
        assertThat(drawing.pieces().get(0).foldEdge()).isEmpty();
        assertThat(drawing.pieces().get(0).innerLines()).hasSize(1);
        assertThat(drawing.warnings()).hasSize(1);
    }

    @Test
    void onFoldWithoutAMarkedEdgeIsSaid() throws DrawingException {
        PatternDrawing drawing =
                Drawn.read(Drawn.page(CUT + "<text x=\"70\" y=\"150\" font-size=\"5\">cut 1 on fold</text>"));
        assertThat(drawing.pieces().get(0).foldEdge()).isEmpty();
        assertThat(drawing.pieces().get(0).lettering()).containsExactly("cut 1 on fold");
        assertThat(drawing.warnings()).anyMatch(warning -> warning.contains("no edge is marked"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<path class=\"notch\" d=\"M50 150H56\"/>",
                "<line x1=\"56\" y1=\"150\" x2=\"50\" y2=\"150\"/>",
                "<path d=\"M50 147L56 150L50 153\"/>",
                "<path d=\"M50 150H56M56 147V153\"/>",
                "<path class=\"notch\" fill=\"#000\" d=\"M50 147L56 150L50 153Z\"/>",
                // drawn outwards
                "<path class=\"notch\" d=\"M50 150H44\"/>",
            })
    void aNotchRunsFromTheCutLineInwards(String marks) throws DrawingException {
        DrawnPiece piece = piece(marks);
        assertThat(piece.notches()).containsExactly(new Segment(mm(50, 150), mm(56, 150)));
        assertThat(piece.innerLines()).isEmpty();
    }

    /** Drawing programs combine what is selected to one path: no notch of it is lost. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "<path d=\"M50 150H56M50 154H56\"/>",
                "<path class=\"notch\" d=\"M50 150H56M50 154H56\"/>",
                "<path d=\"M50 150H56M56 154H50M150 80H145\"/>",
                "<path class=\"notch\" d=\"M50 147L56 150L50 153M50 151L56 154L50 157M100 250V244\"/>",
            })
    void everyStrokeOfACombinedPathIsANotch(String marks) throws DrawingException {
        DrawnPiece piece = piece(marks);
        assertThat(piece.notches())
                .contains(new Segment(mm(50, 150), mm(56, 150)), new Segment(mm(50, 154), mm(56, 154)))
                .hasSize(marks.split("M").length - 1);
        assertThat(piece.innerLines()).isEmpty();
    }

    /** Dashes that were turned into lines along the cut line, or across a piece, are none. */
    @ParameterizedTest
    @ValueSource(strings = {"M50 150V155M50 160V165M50 170V175", "M60 150H65M70 150H75", "M50 150H56M100 100H106"})
    void strokesThatDoNotRunInwardsAreNoNotches(String strokes) throws DrawingException {
        assertThat(piece("<path d=\"" + strokes + "\"/>").notches()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " fill=\"#000\""})
    void aTriangleThatStandsOnTheCutLineIsANotch(String paint) throws DrawingException {
        assertThat(piece("<path" + paint + " d=\"M50 147L56 150L50 153Z\"/>").notches())
                .containsExactly(new Segment(mm(50, 150), mm(56, 150)));
        assertThat(piece("<path" + paint + " d=\"M70 147L76 150L70 153Z\"/>").notches())
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<circle class=\"drill\" cx=\"100\" cy=\"100\" r=\"1.5\"/>",
                "<circle cx=\"100\" cy=\"100\" r=\"3\"/>",
                "<path d=\"M97 100H103M100 97V103\"/>",
                "<path id=\"drill-1\" d=\"M97 97L103 103M97 103L103 97\"/>",
            })
    void smallCirclesAndCrossesAreDrillHoles(String marks) throws DrawingException {
        DrawnPiece piece = piece(marks);
        assertThat(piece.drillHoles()).containsExactly(mm(100, 100));
        assertThat(piece.outline().holes()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<path d=\"M60 60H140V240H60Z\"/>",
                "<path stroke-dasharray=\"3 2\" d=\"M60 60H140V220H60Z\"/>",
                "<path class=\"sew\" d=\"M60 80H130V240H60Z\"/>",
                "<path class=\"sew\" d=\"M50 60H140V240H50\"/>",
            })
    void aSewLineIsAMarkAndNoHole(String marks) throws DrawingException {
        DrawnPiece piece = piece(marks);
        assertThat(piece.sewLines()).hasSize(1);
        assertThat(piece.outline().holes()).isEmpty();
        assertThat(piece.outline().squareMillimetres()).isEqualTo(20_000);
    }

    @Test
    void onlyACutOutIsAHole() throws DrawingException {
        assertThat(piece("<path class=\"cut-out\" d=\"M80 80H120V120H80Z\"/>")
                        .outline()
                        .squareMillimetres())
                .isEqualTo(18_400);
        DrawnPiece placement = piece("<path id=\"pocket\" d=\"M80 80H120V120H80Z\"/>");
        assertThat(placement.outline().holes()).isEmpty();
        assertThat(placement.innerLines()).hasSize(1);
    }

    @Test
    void framesAndLooseThingsAreLeftOutAndSaid() throws DrawingException {
        PatternDrawing drawing = Drawn.read(Drawn.page("<rect id=\"rect7\" width=\"400\" height=\"300\"/>" + CUT
                + "<rect id=\"back\" x=\"200\" y=\"60\" width=\"100\" height=\"90\"/><path d=\"M320 20L390 40\"/>"
                + "<text x=\"210\" y=\"290\" font-size=\"5\">Plover, sheet 1</text>"
                + "<rect style=\"display:none\" x=\"5\" y=\"5\" width=\"30\" height=\"30\"/>"));
        assertThat(drawing.pieces()).hasSize(2);
        assertThat(drawing.leftOut())
                .anyMatch(said -> said.startsWith("1 frame"))
                .anyMatch(said -> said.startsWith("1 open line"))
                .anyMatch(said -> said.startsWith("1 line of lettering"))
                .anyMatch(said -> said.startsWith("1 hidden shape"));
    }

    /** The place is where the lines meet, worked out by hand. */
    @ParameterizedTest
    @CsvSource({
        "M10 10L110 90V10L10 90Z, '60.0, 50.0 mm'",
        "M10 10H110V90H60V5H10Z, '60.0, 10.0 mm'",
        "M10 10H110V90L60 10L10 90Z, '60.0, 10.0 mm'",
        "M10 10H110V50H210V110H110V50H10Z, '110.0, 50.0 mm'",
    })
    void aCutLineThatCrossesItselfIsLeftOutWithItsPlace(String path, String place) throws DrawingException {
        PatternDrawing drawing = Drawn.read(Drawn.page("<path id=\"bow\" d=\"" + path + "\"/>"));
        assertThat(drawing.pieces()).isEmpty();
        assertThat(drawing.warnings())
                .anyMatch(
                        warning -> warning.contains("'bow'") && warning.contains("crosses") && warning.contains(place));
    }

    /**
     * Programs write elements that SVG 1.1 does not know: flowed text, mesh gradients, hatches, HTML without a namespace. They
     * are no reason to refuse the pieces beside them; what would have been seen is said.
     */
    @ParameterizedTest
    @CsvSource({
        "<defs><meshgradient><meshrow/></meshgradient><hatch><hatchpath/></hatch></defs>, ''",
        "<flowRoot><flowRegion><rect width='9' height='99'/></flowRegion><flowPara>cut 2</flowPara></flowRoot>, <flowRoot>",
        "<foreignObject width='9' height='9'><p>cut 2</p></foreignObject>, <foreignObject>",
    })
    void unknownElementsAreLeftOut(String element, String said) throws DrawingException {
        PatternDrawing drawing = Drawn.read(Drawn.page(element.replace('\'', '"') + CUT));
        assertThat(drawing.pieces())
                .singleElement()
                .satisfies(
                        piece -> assertThat(piece.outline().squareMillimetres()).isEqualTo(20_000));
        assertThat(drawing.leftOut()).hasSize(said.isEmpty() ? 0 : 1).allMatch(words -> words.contains(said));
    }

    @Test
    void marksWithoutASizeLieOnThePieceInEverySize() throws DrawingException {
        PatternDrawing drawing = Drawn.read(Drawn.page("<g inkscape:groupmode=\"layer\" inkscape:label=\"S\">"
                + "<path inkscape:label=\"front\" d=\"M50 50H150V250H50Z\"/></g>"
                + "<g inkscape:groupmode=\"layer\" inkscape:label=\"M\">"
                + "<path inkscape:label=\"front\" d=\"M40 40H160V260H40Z\"/></g>"
                + "<path class=\"grain\" marker-end=\"url(#head)\" d=\"M100 220V80\"/>"));
        assertThat(drawing.pieces()).hasSize(2).allMatch(piece -> piece.arrow().isPresent());
        assertThat(drawing.pieces())
                .extracting(piece -> piece.size().orElse(""))
                .containsExactly("S", "M");
    }
}
