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
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.geometry.Box;
import lengthwise.model.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Reading of what drawing programs write, against the DXF Reference and closed formulas. */
class DxfReaderTest {
    private static DrawnPiece only(PatternDrawing drawing) {
        assertThat(drawing.pieces())
                .as("%s %s", drawing.warnings(), drawing.leftOut())
                .hasSize(1);
        return drawing.pieces().get(0);
    }

    /** Two vertices 100 mm apart with bulge 1 are a circle: area 7853.98, after the DXF Reference's bulge = tan(angle / 4). */
    @Test
    void twoBulgesOfOneAreACircle() throws Exception {
        DrawnPiece circle =
                only(Dxf.read(drawing("0 LWPOLYLINE\n8 disc\n90 2\n70 1\n10 0\n20 0\n42 1\n10 100\n20 0\n42 1\n")));
        assertThat(circle.outline().squareMillimetres()).isCloseTo(7853.98, within(1.0));
        assertThat(circle.outline().box().width()).isCloseTo(100_000, within(10L));
    }

    /** Chord 100, sagitta |b|·c/2: 20.7107 for a quarter turn, 13.3975 for 60°; a negative bulge bends the other way. */
    @ParameterizedTest
    @CsvSource({"0.414213562, 120.7107", "0.267949192, 113.3975", "-0.414213562, 100", "1, 150"})
    void aBulgeRisesByItsSagitta(double bulge, double height) throws Exception {
        DrawnPiece piece =
                only(Dxf.read(drawing("0 LWPOLYLINE\n8 front\n90 4\n70 1\n10 0\n20 0\n10 0\n20 -100\n10 100\n20"
                        + " -100\n10 100\n20 0\n42 " + bulge + "\n")));
        assertThat(piece.outline().box().height() / 1000.0).isCloseTo(height, within(0.006));
    }

    /** How far vertices and chord middles lie off the true circle: 0.005 mm, and half a micrometre of rounding. */
    @Test
    void curvesAreFlattenedToFiveMicrometres() throws Exception {
        String circle = "0 CIRCLE\n8 disc\n10 300\n20 200\n40 150\n";
        DrawnPiece disc = only(Dxf.read(drawing(circle)));
        var ring = disc.outline().shell();
        Box box = disc.outline().box();
        double cx = (box.minX() + box.maxX()) / 2.0;
        double cy = (box.minY() + box.maxY()) / 2.0;
        for (int i = 0; i < ring.size(); i++) {
            double midX = ring.x(i) + ring.edge(i).x() / 2.0;
            double midY = ring.y(i) + ring.edge(i).y() / 2.0;
            assertThat(Math.hypot(ring.x(i) - cx, ring.y(i) - cy)).isCloseTo(150_000, within(1.5));
            assertThat(Math.hypot(midX - cx, midY - cy)).isBetween(150_000 - 6.5, 150_001.5);
        }
    }

    static Stream<Arguments> units() {
        return Stream.of(
                Arguments.of("1", 25.4),
                Arguments.of("2", 304.8),
                Arguments.of("4", 1.0),
                Arguments.of("5", 10.0),
                Arguments.of("10", 914.4),
                Arguments.of("14", 100.0));
    }

    @ParameterizedTest(name = "$INSUNITS {0}")
    @MethodSource("units")
    void theHeaderSaysTheUnit(String code, double millimetres) throws Exception {
        PatternDrawing drawing = Dxf.read(Dxf.section("HEADER", "9 $INSUNITS\n70 " + code + "\n9 $MEASUREMENT\n70 0\n")
                + Dxf.section("ENTITIES", rectangle("front", 0, 0, 30, 20)));
        assertThat(drawing.scaleStated()).isTrue();
        assertThat(only(drawing).outline().box().width()).isEqualTo(Math.round(30_000 * millimetres));
    }

    @Test
    void noUnitIsAQuestionWithTheKeyOfItsAnswer() throws Exception {
        String entities = Dxf.section("ENTITIES", rectangle("front", 0, 0, 30, 20)) + "0 EOF\n";
        PatternDrawing bare = Dxf.read(entities);
        assertThat(bare.scaleStated()).isFalse();
        assertThat(bare.warnings()).singleElement().asString().contains("drawing-unit: 1 mm", "millimetres");
        PatternDrawing imperial = Dxf.read(Dxf.section("HEADER", "9 $MEASUREMENT\n70 0\n") + entities);
        assertThat(imperial.scaleStated()).isFalse();
        assertThat(imperial.warnings()).singleElement().asString().contains("inches");
        assertThat(only(imperial).outline().box().width()).isEqualTo(762_000);
        PatternDrawing answered = DxfPattern.read(
                "plover.dxf",
                Dxf.bytes(entities, StandardCharsets.UTF_8),
                new ScaleStatement(OptionalDouble.of(10), Optional.empty()));
        assertThat(answered.scaleStated()).isTrue();
        assertThat(answered.warnings()).isEmpty();
        assertThat(only(answered).outline().box().width()).isEqualTo(300_000);
    }

    /** A square on a layer of its own that measures 4 units and is said to be 4 in. */
    @Test
    void aScaleBoxSaysTheUnit() throws Exception {
        byte[] file = Dxf.bytes(
                Dxf.section("ENTITIES", rectangle("front", 10, 0, 30, 20) + rectangle("box", 0, 0, 4, 4)),
                StandardCharsets.UTF_8);
        PatternDrawing read = DxfPattern.read(
                "plover.dxf",
                file,
                new ScaleStatement(
                        OptionalDouble.empty(),
                        Optional.of(new ScaleStatement.ScaleBox("box", Length.ofMillimetres(101.6)))));
        assertThat(only(read).outline().box().width()).isEqualTo(762_000);
    }

    static Stream<Arguments> codePages() {
        return Stream.of(
                Arguments.of("AC1015", "ANSI_1252", "windows-1252", "Größe"),
                Arguments.of("AC1015", "ANSI_1250", "windows-1250", "Přední"),
                Arguments.of("AC1009", "ansi_1251", "windows-1251", "перед"),
                Arguments.of("AC1009", "dos850", "IBM850", "Größe"),
                Arguments.of("AC1018", "ANSI_932", "windows-31j", "前身頃ソ"),
                Arguments.of("AC1018", "ANSI_936", "GBK", "前片"),
                Arguments.of("AC1021", "ANSI_1252", "UTF-8", "前身頃 Größe"),
                Arguments.of("AC1032", "", "UTF-8", "перед"),
                Arguments.of("AC1009", "ANSI_1252", "US-ASCII", "Gr\\U+00F6\\U+00dfe"));
    }

    @ParameterizedTest(name = "{0} {1} {3}")
    @MethodSource("codePages")
    void lettersOutsideAsciiArrive(String version, String page, String charset, String words) throws Exception {
        PatternDrawing drawing = Dxf.read(
                Dxf.section(
                                "HEADER",
                                "9 $ACADVER\n1 " + version + "\n9 $DWGCODEPAGE\n3 " + page + "\n9 $INSUNITS\n70 4\n")
                        + Dxf.section("ENTITIES", rectangle("front", 0, 0, 100, 50) + text("0", 10, 10, words)),
                Charset.forName(charset));
        String expected = words.replace("\\U+00F6", "ö").replace("\\U+00df", "ß");
        assertThat(only(drawing).lettering()).containsExactly(expected);
    }

    @Test
    void lettersBehindAMarkOfByteOrderArrive() throws Exception {
        byte[] plain = Dxf.bytes(drawing(rectangle("Vorderteil Größe", 0, 0, 100, 50)), StandardCharsets.UTF_8);
        byte[] marked = new byte[plain.length + 3];
        marked[0] = (byte) 0xef;
        marked[1] = (byte) 0xbb;
        marked[2] = (byte) 0xbf;
        System.arraycopy(plain, 0, marked, 3, plain.length);
        assertThat(only(DxfPattern.read("p.dxf", marked, ScaleStatement.NONE)).name())
                .isEqualTo("Vorderteil Größe");
    }

    @Test
    void longTextsGiveTheirLinesWithoutFormatting() throws Exception {
        String text =
                "0 MTEXT\n8 0\n10 50\n20 40\n40 5\n71 5\n3 {\\fArial|b0;\\H1.5x;Front} \\S1^2;\n1 \\Pcut 2 on fold\\P100 %%d \\\\ \\{x\\}\n";
        DrawnPiece front = only(Dxf.read(drawing(rectangle("front", 0, 0, 100, 80) + text)));
        assertThat(front.lettering()).containsExactly("Front 1/2", "cut 2 on fold", "100 ° \\ {x}");
    }

    /** Lines of any kind of end, blanks, comments, no header, no sections, small letters where they count for nothing. */
    @Test
    void untidyFilesAreRead() throws Exception {
        byte[] tidy = Dxf.bytes(drawing(rectangle("front", 0, 0, 100, 50)), StandardCharsets.US_ASCII);
        String text = new String(tidy, StandardCharsets.US_ASCII);
        for (String untidy : List.of(
                text.replace("\n", "\r\n"),
                text.replace("\n", "\r"),
                text.replace("\n", " \t\n   "),
                "999\nby hand\n" + text,
                text + "\u001a",
                text + "\n\n\nanything after the end\n",
                text.replace("0\nEOF\n", "0\nEOF"))) {
            PatternDrawing drawing =
                    DxfPattern.read("p.dxf", untidy.getBytes(StandardCharsets.US_ASCII), ScaleStatement.NONE);
            assertThat(only(drawing).outline().squareMillimetres()).isEqualTo(5000);
            assertThat(drawing.warnings()).isEmpty();
        }
        PatternDrawing bare = Dxf.read(rectangle("front", 0, 0, 100, 50) + "0 EOF\n");
        assertThat(only(bare).name()).isEqualTo("front");
    }

    /** Extrusion (0, 0, −1) mirrors the x of an arc; a line's ends are where they are. The obround's ends bulge out. */
    @Test
    void extrusionMirrorsWhatHasItsOwnCoordinates() throws Exception {
        String down = "210 0\n220 0\n230 -1\n";
        DrawnPiece obround = only(Dxf.read(drawing(line("0", 0, 0, 100, 0)
                + line("0", 0, 40, 100, 40) + down
                + "0 ARC\n8 0\n10 -100\n20 20\n40 20\n50 90\n51 270\n" + down
                + "0 ARC\n8 0\n10 0\n20 20\n40 20\n50 90\n51 270\n")));
        assertThat(obround.outline().squareMillimetres()).isCloseTo(100 * 40 + Math.PI * 400, within(1.0));
        assertThat(obround.outline().box().width()).isCloseTo(140_000, within(10L));
    }

    @Test
    void whatStandsAtASlantIsLeftOutWithItsPlace() throws Exception {
        PatternDrawing drawing = Dxf.read(
                drawing(rectangle("front", 0, 0, 100, 50) + "0 CIRCLE\n8 0\n10 0\n20 0\n40 50\n210 1\n220 0\n230 0\n"));
        only(drawing);
        assertThat(drawing.warnings()).singleElement().asString().contains("CIRCLE", "line", "seen from above");
    }

    @Test
    void layersAreNamesAndMarks() throws Exception {
        DrawnPiece front = only(Dxf.read(drawing(rectangle("front", 0, 0, 100, 150)
                + line("grain", 50, 20, 50, 130)
                + rectangle("Sew line", 10, 10, 80, 130)
                + line("notch", 0, 75, 5, 75)
                + point("drill", 30, 30))));
        assertThat(front.name()).isEqualTo("front");
        assertThat(front.arrow()).isPresent();
        assertThat(front.sewLines()).hasSize(1);
        assertThat(front.notches()).hasSize(1);
        assertThat(front.drillHoles()).hasSize(1);
    }

    @Test
    void blocksAreNamesAndWhatIsOnLayerZeroIsOnTheirs() throws Exception {
        String layers =
                Dxf.section("TABLES", "0 TABLE\n2 LAYER\n0 LAYER\n2 gone\n70 0\n62 -7\n6 CONTINUOUS\n0 ENDTAB\n");
        String file = Dxf.MILLIMETRES + layers
                + Dxf.section("BLOCKS", block("side", rectangle("0", 0, 0, 80, 60)))
                + Dxf.section("ENTITIES", insert("SIDE", 0, 0, "") + "0 INSERT\n8 gone\n2 side\n10 200\n20 0\n")
                + "0 EOF\n";
        PatternDrawing drawing = Dxf.read(file);
        assertThat(only(drawing).name()).isEqualTo("side");
        assertThat(drawing.leftOut()).singleElement().asString().startsWith("1 hidden shape");
    }

    @Test
    void aCircularInsertIsDroppedAndSaid() throws Exception {
        PatternDrawing drawing = Dxf.read(drawing(
                block("a", rectangle("0", 0, 0, 80, 60) + insert("b", 0, 0, "")) + block("b", insert("A", 5, 5, "")),
                insert("a", 0, 0, "")));
        only(drawing);
        assertThat(drawing.warnings()).singleElement().asString().contains("holds itself", "line");
    }

    @Test
    void aFigureEightIsRefusedWithItsPlace() throws Exception {
        PatternDrawing drawing = Dxf.read(
                drawing(polyline("eight", true, 0, 0, 100, 100, 100, 0, 0, 100) + rectangle("front", 200, 0, 50, 50)));
        assertThat(only(drawing).name()).isEqualTo("front");
        assertThat(drawing.uncuttable()).singleElement().asString().contains("line 20", "crosses");
    }

    /** Variables of the header have groups of any code, also that which names a section. */
    @Test
    void theHeaderIsReadToItsEnd() throws Exception {
        PatternDrawing drawing = Dxf.read(Dxf.section("HEADER", "9 $UCSBASE\n2 TOP\n9 $INSUNITS\n70 4\n")
                + Dxf.section("ENTITIES", rectangle("front", 0, 0, 30, 20)));
        assertThat(drawing.scaleStated()).isTrue();
    }

    /** Mended within limits and said: 0.4 mm closed, 40 mm not; a spike cut off; an outline drawn twice taken once. */
    @Test
    void mendsAreSaid() throws Exception {
        PatternDrawing open = Dxf.read(drawing(polyline("front", false, 0, 0, 100, 0, 100, 50, 0, 50, 0, 0.4)));
        assertThat(only(open).outline().box().width()).isEqualTo(100_000);
        assertThat(open.warnings()).singleElement().asString().contains("open by 0.40 mm");
        PatternDrawing wide = Dxf.read(drawing(polyline("front", false, 0, 0, 100, 0, 100, 50, 0, 50, 0, 40)));
        assertThat(wide.pieces()).isEmpty();
        assertThat(wide.warnings()).anyMatch(words -> words.contains("open by 40.0 mm"));
        PatternDrawing spike =
                Dxf.read(drawing(polyline("front", true, 0, 0, 100, 0, 100, 25, 120, 25, 100, 25, 100, 50, 0, 50)));
        assertThat(only(spike).outline().box().width()).isEqualTo(100_000);
        assertThat(spike.warnings()).singleElement().asString().contains("spike");
        PatternDrawing twice = Dxf.read(drawing(rectangle("front", 0, 0, 100, 50) + rectangle("front", 0, 0, 100, 50)));
        only(twice);
        assertThat(twice.warnings()).singleElement().asString().contains("drawn twice");
    }

    /** An end 0.009 mm off joins, one 0.02 mm off does not. */
    @Test
    void looseLinesJoinWithinAHundredthOfAMillimetre() throws Exception {
        assertThat(Dxf.read(drawing(triangle(0.009))).pieces()).hasSize(1);
        assertThat(Dxf.read(drawing(triangle(0.02))).pieces()).isEmpty();
    }

    /** A piece that is missing because its lines do not meet is said to be, with where it begins. */
    @Test
    void linesThatNearlyMeetAreSaid() throws Exception {
        assertThat(Dxf.read(drawing(triangle(0.3))).warnings()).anyMatch(words -> words.contains("3 lines would make"));
        assertThat(Dxf.read(drawing(triangle(3))).warnings()).noneMatch(words -> words.contains("would make"));
        // a placement on a piece is none
        assertThat(Dxf.read(drawing(rectangle("front", -50, -50, 300, 300) + triangle(0.3)))
                        .warnings())
                .isEmpty();
    }

    /** An outline taken apart, some lines of which were drawn twice, backwards too; curves as well. */
    @Test
    void looseLinesDrawnTwiceCountOnce() throws Exception {
        String arc = "0 ARC\n8 0\n10 50\n20 0\n40 50\n50 180\n51 360\n";
        String back = polyline("0", false, 100, 0, 50, 80);
        PatternDrawing drawing =
                Dxf.read(drawing(arc + arc + line("0", 0, 0, 50, 80) + line("0", 50, 80, 100, 0) + back));
        // half a disc of 50 mm and a triangle of 100 × 80 mm
        assertThat(only(drawing).outline().squareMillimetres()).isCloseTo(1250 * Math.PI + 4000, within(1.0));
        assertThat(drawing.leftOut()).isEmpty();
        assertThat(drawing.warnings())
                .singleElement()
                .asString()
                .contains("from 3 lines", "2 lines drawn twice are taken once");
    }

    private static String triangle(double off) {
        return line("0", 0, 0, 100, 0) + line("0", 50, 80, 100 + off, 0) + line("0", 0, 0, 50, 80);
    }

    @Test
    void otherFormatsAreNamed() {
        assertThatThrownBy(() -> read("AutoCAD Binary DXF\r\n\u001a\0")).hasMessageContaining("binary DXF");
        assertThatThrownBy(() -> read("AC1032\0\0\0")).hasMessageContaining("DWG");
        assertThatThrownBy(() -> read("  \n ")).hasMessageContaining("empty");
        assertThatThrownBy(() -> read("<svg/>\n"))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("p.dxf, line 1:");
    }

    /** A comma for a point is a number in some languages and none in DXF. */
    @Test
    void aCommaInANumberIsRefusedWithItsLine() {
        assertThatThrownBy(
                        () -> Dxf.read(drawing(rectangle("front", 0, 0, 100, 50).replace("100.0", "100,0"))))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("line 32")
                .hasMessageContaining("\"100,0\"");
    }

    private static PatternDrawing read(String text) throws DrawingException {
        return DxfPattern.read("p.dxf", text.getBytes(StandardCharsets.ISO_8859_1), ScaleStatement.NONE);
    }
}
