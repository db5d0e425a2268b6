package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lengthwise.drawing.DrawingException;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.model.Garment;
import lengthwise.model.GrainLine;
import lengthwise.model.Marker;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.SpreadWords;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class MarkerSvgReaderTest {
    private static final Marker MARKER = SampleMarkers.singleLayer();
    private static final String WRITTEN = MarkerSvg.of(MARKER, MarkerSvgTest.NOTES);

    @TempDir
    Path folder;

    static LongStream seeds() {
        return LongStream.range(0, 25);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatWasWrittenComesBackToTheMicrometre(long seed) throws Exception {
        assertReadsBack(SampleMarkers.random(seed));
    }

    @Test
    void handLaidMarkersComeBackToTheMicrometre() throws Exception {
        assertReadsBack(MARKER);
        assertReadsBack(SampleMarkers.folded());
    }

    private void assertReadsBack(Marker marker) throws Exception {
        MarkerDrawing drawing = read(MarkerSvg.of(marker, MarkerSvgTest.NOTES));
        assertThat(drawing.pieces()).containsExactlyElementsOf(placed(marker));
        assertThat(drawing.marks()).containsExactlyElementsOf(marks(marker));
        assertThat(drawing.length()).isEqualTo(marker.length());
        assertThat(drawing.fabric()).isEqualTo(marker.order().fabric().name());
        assertThat(drawing.cuttableWidth()).isEqualTo(marker.order().fabric().cuttableWidth());
        assertThat(drawing.spread())
                .isEqualTo(SpreadWords.key(marker.order().fabric().spread()));
        List<Placement> laid = marker.inLayingOrder();
        for (int i = 0; i < laid.size(); i++) {
            assertLiesSo(laid.get(i), drawing.states().get(i));
        }
    }

    private static void assertLiesSo(Placement placement, LaidState read) {
        Piece piece = placement.item().piece();
        assertThat(read.cutAlready()).isFalse();
        assertThat(read.foldEdge())
                .isEqualTo(piece.foldEdge()
                        .map(edge -> new Segment(
                                placement.pose().apply(edge.from()),
                                placement.pose().apply(edge.to()))));
        assertThat(read.arrowHeads()).hasSize(piece.upEnd().isPresent() ? 1 : 2);
        if (piece.upEnd().isPresent()) {
            // From the middle of the head's back to its tip the arrow points up.
            List<Point> head = read.arrowHeads().get(0);
            long up = placement.pose().orientation().apply(piece.upEnd().get()).x();
            long points = 2 * head.get(0).x() - head.get(1).x() - head.get(2).x();
            assertThat(Long.signum(points)).isEqualTo(Long.signum(up));
        }
    }

    private static List<PieceMarks> marks(Marker marker) {
        return marker.inLayingOrder().stream()
                .map(placement -> {
                    PieceMarks laid = placement.item().piece().marks().mapped(placement.pose()::apply);
                    return new PieceMarks(
                            Optional.of(GrainLine.of(placement)), laid.notches(), laid.drillHoles(), laid.innerLines());
                })
                .toList();
    }

    /** Ways in which drawing programs store the same drawing. */
    static Stream<Arguments> sameDrawings() {
        String viewBox = WRITTEN.replaceAll("(?s).*viewBox=\"([^\"]*)\".*", "$1");
        String[] box = viewBox.split(" ", -1);
        return Stream.of(
                Arguments.of(
                        "all moved into a layer that is moved",
                        WRITTEN.replaceFirst("<g id=\"cloth\">", "<g transform=\"translate(12.5,-3)\"><g id=\"cloth\">")
                                .replace("</svg>", "</g></svg>")),
                Arguments.of(
                        "the page moved to 0, 0 by a layer",
                        WRITTEN.replace("viewBox=\"" + viewBox, "viewBox=\"0 0 " + box[2] + " " + box[3])
                                .replaceFirst(
                                        "<g id=\"cloth\">",
                                        "<g transform=\"matrix(1,0,0,1,%s,16)\"><g id=\"cloth\">"
                                                .formatted(box[0].substring(1)))
                                .replace("</svg>", "</g></svg>")),
                Arguments.of(
                        "units of a tenth of a millimetre",
                        WRITTEN.replace(
                                        "viewBox=\"" + viewBox,
                                        "viewBox=\"%s %s %s %s"
                                                .formatted(
                                                        tenfold(box[0]),
                                                        tenfold(box[1]),
                                                        tenfold(box[2]),
                                                        tenfold(box[3])))
                                .replaceFirst("<g id=\"cloth\">", "<g transform=\"scale(10)\"><g id=\"cloth\">")
                                .replace("</svg>", "</g></svg>")),
                Arguments.of(
                        "page size in inches",
                        WRITTEN.replaceFirst(
                                        "width=\"[0-9.]+mm\"", "width=\"" + Double.parseDouble(box[2]) / 25.4 + "in\"")
                                .replaceFirst(
                                        "height=\"[0-9.]+mm\"",
                                        "height=\"" + Double.parseDouble(box[3]) / 25.4 + "in\"")),
                Arguments.of(
                        "a document type, as some programs write it", WRITTEN.replaceFirst("\\?>", "?><!DOCTYPE svg>")),
                Arguments.of(
                        "everything turned by a right angle",
                        WRITTEN.replaceFirst("<g id=\"cloth\">", "<g transform=\"rotate(90 300 200)\"><g id=\"cloth\">")
                                .replace("</svg>", "</g></svg>")));
    }

    private static String tenfold(String number) {
        return Double.toString(10 * Double.parseDouble(number));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("sameDrawings")
    void theSameDrawingStoredAnotherWayReadsTheSame(String how, String svg) throws Exception {
        assertThat(svg).isNotEqualTo(WRITTEN);
        assertThat(read(svg).pieces()).as(how).containsExactlyElementsOf(placed(MARKER));
    }

    @Test
    void aPieceMovedByHandLiesWhereItWasMoved() throws Exception {
        String moved = WRITTEN.replace("<g id=\"piece-1\"", "<g id=\"piece-1\" transform=\"translate(10.25 -4)\"");
        List<PlacedPiece> before = placed(MARKER);
        List<PlacedPiece> after = read(moved).pieces();
        assertThat(after.get(0).outline()).isEqualTo(before.get(0).outline().moved(new Point(10_250, -4_000)));
        assertThat(after.subList(1, after.size())).isEqualTo(before.subList(1, before.size()));
    }

    @Test
    void aPieceTurnedAndMirroredIsTurnedAndMirrored() throws Exception {
        String turned = WRITTEN.replace("<g id=\"piece-1\"", "<g id=\"piece-1\" transform=\"rotate(180) scale(1,-1)\"");
        // About the corner of the cloth: x becomes −x; the cuttable area begins 20 mm further in.
        Outline expected = placed(MARKER).get(0).outline().mapped(point -> new Point(-point.x() - 40_000, point.y()));
        assertThat(read(turned).pieces().get(0).outline().box()).isEqualTo(expected.box());
        assertThat(read(turned).pieces().get(0).outline().doubleArea()).isEqualTo(expected.doubleArea());
    }

    /** As programs write it that push a move into the paths: relative, the circle as curves. */
    @Test
    void aDrillHoleThatWasRewrittenIsWhereItsMiddleIs() throws Exception {
        Point hole = read(WRITTEN).marks().get(0).drillHoles().get(0);
        Matcher written =
                Pattern.compile("d=\"M([0-9.]+) ([0-9.]+) m-1.5 0 a[^\"]*\"").matcher(WRITTEN);
        assertThat(written.find()).isTrue();
        String rewritten = written.replaceFirst("d=\"m %s,%s c 0,-2 3,-2 3,0 0,2 -3,2 -3,0 z m -1.5,0 h 6 m -3,-3 v 6\""
                .formatted(Double.toString(Double.parseDouble(written.group(1)) - 1.5), written.group(2)));
        assertThat(read(rewritten).marks().get(0).drillHoles()).containsExactly(hole);
    }

    @Test
    void aPieceThatIsCutAlreadySaysSo() throws Exception {
        String cut = WRITTEN.replaceFirst("data-cut=\"now\"", "data-cut=\"already\"");
        assertThat(read(cut).states().stream().filter(LaidState::cutAlready)).hasSize(1);
    }

    @Test
    void relativeCommandsAreRead() throws Exception {
        String cut = "M100.000 739.600 L124.000 739.600 L124.000 744.600 L100.000 744.600 Z";
        assertThat(WRITTEN).contains(cut);
        for (String same : List.of(
                "m 100,739.6 h 24 v 5 h -24 z",
                "m100 739.6 24 0 0 5-24 0z",
                "M100,739.6H124V744.6H100Z",
                "M 100 739.6 124 739.6 124 744.6 100 744.6 100 739.6")) {
            assertThat(read(WRITTEN.replace(cut, same)).pieces()).as(same).isEqualTo(placed(MARKER));
        }
    }

    @Test
    void aCopiedPieceIsThereTwiceAndAHiddenOneIsNot() throws Exception {
        String group = WRITTEN.replaceAll("(?s).*(<g id=\"piece-3\".*?</g>).*", "$1");
        List<PlacedPiece> before = placed(MARKER);
        assertThat(read(WRITTEN.replace(group, group + group)).pieces()).hasSize(before.size() + 1);
        assertThat(read(WRITTEN.replace(group, "")).pieces()).hasSize(before.size() - 1);
        assertThat(read(WRITTEN.replace("id=\"piece-3\"", "style=\"display:none\""))
                        .pieces())
                .hasSize(before.size() - 1);
    }

    static Stream<Arguments> refused() {
        return Stream.of(
                Arguments.of(
                        WRITTEN.replace("739.600 L124.000 739.600", "739.600 C110 700 120 700 124.000 739.600"),
                        "a curve"),
                Arguments.of(WRITTEN.replaceFirst("mm\"", "px\"").replaceFirst("mm\"", "px\""), "not at true scale"),
                Arguments.of(
                        WRITTEN.replaceFirst("<g id=\"cloth\">", "<g transform=\"scale(0.97)\"><g id=\"cloth\">")
                                .replace("</svg>", "</g></svg>"),
                        "843.900 by 1140.720 mm and is said to be 870.000 by 1176.000 mm"),
                Arguments.of(WRITTEN.replaceFirst(" width=\"[0-9.]+mm\"", ""), "does not state its size"),
                Arguments.of(
                        WRITTEN.replace("data-lengthwise-version=\"1\"", ""), "is not a marker that Lengthwise wrote"),
                Arguments.of(
                        WRITTEN.replace("data-lengthwise-version=\"1\"", "data-lengthwise-version=\"2\""),
                        "has version 2"),
                Arguments.of(WRITTEN.replaceFirst(" data-area=\"cuttable\"", ""), "lost its cuttable area"),
                Arguments.of(WRITTEN.replace("data-garment=\"3\"", "data-garment=\"three\""), "garment \"three\""),
                Arguments.of(WRITTEN.replace("data-hand=\"L\"", "data-hand=\"left\""), "the hand \"left\""),
                Arguments.of(WRITTEN.replace(" L100.000 744.600 Z", " L100.000 744.600"), "is not closed"),
                Arguments.of(WRITTEN.replace("</svg>", "<use href=\"#piece-1\"/></svg>"), "clone"),
                Arguments.of(
                        WRITTEN.replace("<g id=\"piece-1\"", "<g transform=\"squeeze(2)\" id=\"piece-1\""), "squeeze"),
                Arguments.of(
                        WRITTEN.replace("<g id=\"piece-1\"", "<g transform=\"translate(3e9)\" id=\"piece-1\""),
                        "more than a kilometre away"),
                Arguments.of(
                        WRITTEN.replaceFirst("\\?>", "?><!DOCTYPE svg [<!ENTITY a SYSTEM \"file:///etc/hostname\">]>")
                                .replace("data-hand=\"L\"", "data-hand=\"&a;\""),
                        "entity"),
                Arguments.of(WRITTEN.substring(0, WRITTEN.length() / 2), "not a readable"),
                Arguments.of("not xml", "not a readable"));
    }

    @ParameterizedTest(name = "{1}")
    @MethodSource("refused")
    void whatCannotBeReadIsRefusedInOneSentenceWithTheFile(String svg, String said) {
        assertThat(svg).isNotEqualTo(WRITTEN);
        assertThatThrownBy(() -> read(svg))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("marker.svg")
                .hasMessageContaining(said)
                .message()
                .doesNotContain("\n");
    }

    @Test
    void aMissingFileIsSaid() {
        assertThatThrownBy(() -> MarkerSvgReader.read(folder.resolve("none.svg")))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("none.svg");
    }

    private MarkerDrawing read(String svg) throws IOException, DrawingException {
        Path file = folder.resolve("marker.svg");
        Files.writeString(file, svg);
        return MarkerSvgReader.read(file);
    }

    private static List<PlacedPiece> placed(Marker marker) {
        return marker.inLayingOrder().stream()
                .map(placement -> new PlacedPiece(
                        placement.item().piece().name(),
                        placement.item().piece().size().name(),
                        placement.item().garments().stream()
                                .map(Garment::number)
                                .toList(),
                        placement.item().hand().letter(),
                        placement.outline()))
                .toList();
    }
}
