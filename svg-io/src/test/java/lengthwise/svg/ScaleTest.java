package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.geometry.Box;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Units, and the test square that proves them. */
class ScaleTest {
    private static final String PIECE = "<path id=\"front\" d=\"M150 50H350V250H150Z\"/>";

    /** W3C, CSS Values and Units Level 3, section 6.2: 1 in = 2.54 cm = 25.4 mm = 101.6 Q = 72 pt = 6 pc = 96 px. */
    @ParameterizedTest
    @CsvSource({
        "254mm, 254",
        "25.4cm, 254",
        "10in, 254",
        "720pt, 254",
        "60pc, 254",
        "1016Q, 254",
        "1016q, 254",
        "960px, 254",
        "960, 254",
        "10IN, 254",
        "' 254 mm ', 254",
        "2.54e2mm, 254"
    })
    void unitsAreAsTheStandardDefinesThem(String width, double millimetres) throws DrawingException {
        PatternDrawing drawing = Drawn.read("<svg xmlns='http://www.w3.org/2000/svg' width='" + width
                + "' viewBox='0 0 100 100'><path d='M0 0H100V50H0Z'/></svg>");
        assertThat(drawing.pieces().get(0).outline().box().width() / 1000.0).isCloseTo(millimetres, within(0.001));
        assertThat(drawing.scaleStated()).isEqualTo(!width.contains("px") && !width.equals("960"));
        assertThat(drawing.warnings().isEmpty()).isEqualTo(drawing.scaleStated());
    }

    /** A unit on a shape is a length too, in a space where a pixel is a unit. */
    @Test
    void unitsOnShapesAreUserUnitsAtNinetySixToTheInch() throws DrawingException {
        Box box = Drawn.piece("<rect x=\"1in\" y=\"0\" width=\"96px\" height=\"50%\"/>")
                .outline()
                .box();
        assertThat(box).isEqualTo(new Box(96_000, 0, 192_000, 150_000));
    }

    @Test
    void aScaleBoxAsStatedIsNoPiece() throws DrawingException {
        PatternDrawing drawing = Drawn.read(
                Drawn.page(PIECE + "<rect id=\"box\" x=\"10\" y=\"10\" width=\"100\" height=\"100\"/>"),
                Drawn.box("box", 100));
        assertThat(drawing.pieces()).hasSize(1);
        assertThat(drawing.leftOut()).anyMatch(said -> said.contains("scale box") && said.contains("10 cm"));
    }

    /** 4 in = 101.6 mm. */
    @Test
    void tenCentimetresAreNotFourInches() {
        String inches = Drawn.page(PIECE + "<rect id=\"box\" x=\"10\" y=\"10\" width=\"101.6\" height=\"101.6\"/>");
        assertThatThrownBy(() -> Drawn.read(inches, Drawn.box("box", 100)))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("100.00")
                .hasMessageContaining("101.60")
                .hasMessageContaining("4 in");
        String centimetres = Drawn.page(PIECE + "<rect id=\"box\" x=\"10\" y=\"10\" width=\"100\" height=\"100\"/>");
        assertThatThrownBy(() -> Drawn.read(centimetres, Drawn.box("box", 101.6)))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("10 cm");
    }

    @Test
    void bothDirectionsCount() {
        assertThatThrownBy(() -> Drawn.read(
                        Drawn.page(PIECE + "<rect id=\"box\" x=\"10\" y=\"10\" width=\"100\" height=\"98\"/>"),
                        Drawn.box("box", 100)))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("stretched");
    }

    @Test
    void lettersOnASquareCountAsAStatement() throws DrawingException {
        String wrong = PIECE + "<rect x=\"10\" y=\"10\" width=\"101.6\" height=\"101.6\"/>"
                + "<text x=\"20\" y=\"40\" font-size=\"5\">Test square 10 cm</text>";
        assertThatThrownBy(() -> Drawn.read(Drawn.page(wrong))).hasMessageContaining("4 in");
        assertThat(Drawn.read(Drawn.page(wrong.replace("10 cm", "4 in"))).pieces())
                .hasSize(1);
    }

    /** 192 units measure 50.8 mm at 96 to the inch; the maker says they are 2.5 in, which is 63.5 mm. */
    @Test
    void theScaleBoxGivesAScaleThatTheFileDoesNotState() throws DrawingException {
        String svg = "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 1000 1000'>"
                + "<rect id='box' width='192' height='192'/><rect id='a' x='300' width='384' height='96'/></svg>";
        assertThat(Drawn.read(svg).scaleStated()).isFalse();
        PatternDrawing drawing = Drawn.read(svg, Drawn.box("box", 63.5));
        assertThat(drawing.scaleStated()).isTrue();
        assertThat(drawing.warnings()).isEmpty();
        assertThat(drawing.pieces().get(0).outline().box().width()).isEqualTo(127_000);
    }

    @Test
    void aMissingScaleBoxIsSaid() {
        assertThatThrownBy(() -> Drawn.read(Drawn.page(PIECE), Drawn.box("nowhere", 100)))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("nowhere");
    }

    @Test
    void theMakersUnitOverridesTheFile() throws DrawingException {
        PatternDrawing drawing =
                Drawn.read(Drawn.page(PIECE), new ScaleStatement(OptionalDouble.of(0.5), Optional.empty()));
        assertThat(drawing.pieces().get(0).outline().box().width()).isEqualTo(100_000);
        assertThat(drawing.scaleStated()).isTrue();
    }
}
