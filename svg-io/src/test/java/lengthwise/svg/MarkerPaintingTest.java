package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Painted;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Fabric;
import lengthwise.model.Marker;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class MarkerPaintingTest {
    private static final Marker MARKER = SampleMarkers.singleLayer();

    @TempDir
    Path folder;

    private MarkerPainting read(String svg) throws Exception {
        return MarkerSvgReader.painting(Files.writeString(folder.resolve("marker.svg"), svg));
    }

    static LongStream seeds() {
        return LongStream.range(0, 15);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cutLinesArePaintedWhereTheyLieOnTheCloth(long seed) throws Exception {
        assertPaintedAsLaid(SampleMarkers.random(seed));
    }

    @Test
    void cutLinesOfHandLaidMarkersToo() throws Exception {
        assertPaintedAsLaid(MARKER);
        assertPaintedAsLaid(SampleMarkers.folded());
    }

    private void assertPaintedAsLaid(Marker marker) throws Exception {
        MarkerPainting painting = read(MarkerSvg.of(marker, MarkerSvgTest.NOTES));
        Fabric fabric = marker.order().fabric();
        Point corner = new Point(
                fabric.spread().startAllowance().micrometres(),
                fabric.edgesOnTable().near().micrometres());
        assertThat(painting.pieces()).hasSize(marker.placements().size());
        for (int i = 0; i < painting.pieces().size(); i++) {
            Outline outline = painting.marker().pieces().get(i).outline();
            List<List<Point>> rings = new ArrayList<>();
            Stream.concat(Stream.of(outline.shell()), outline.holes().stream())
                    .map(ring -> vertices(ring, corner))
                    .forEach(rings::add);
            assertThat(painting.cutLine(i).chains().stream().map(Chain::points))
                    .containsExactlyInAnyOrderElementsOf(rings);
        }
    }

    private static List<Point> vertices(Ring ring, Point corner) {
        List<Point> vertices = new ArrayList<>();
        for (int i = 0; i < ring.size(); i++) {
            vertices.add(new Point(ring.x(i), ring.y(i)).plus(corner));
        }
        return vertices;
    }

    @Test
    void whatStandsBesideIsToldFromWhatLiesOnTheCloth() throws Exception {
        MarkerPainting painting = read(MarkerSvg.of(MARKER, MarkerSvgTest.NOTES));
        assertThat(words(painting.beside())).contains("Plover swim set", "One layer.", "10 cm", "4 in");
        assertThat(words(painting.cloth())).contains("SELVEDGE", "print up").doesNotContain("Plover swim set");
        assertThat(painting.beside().stream()
                        .filter(one ->
                                one instanceof Painted.Path path && path.mark().equals(MarkerPainting.CHECK_SQUARE)))
                .hasSize(2);
        assertThat(words(painting.pieces().get(0))).contains("cup");
        assertThat(painting.sizes()).containsExactly("M", "S");
    }

    @Test
    void colourWidthDashesAndBoldnessAreKept() throws Exception {
        MarkerPainting painting = read(MarkerSvg.of(MARKER, MarkerSvgTest.NOTES));
        Painted.Path cut = painting.cutLine(0);
        assertThat(cut.line().orElseThrow()).isEqualTo(Painted.Line.of(0, 0.25));
        assertThat(cut.fill()).contains(0xdfeae3);
        Painted.Path inner = (Painted.Path) painting.pieces().get(0).stream()
                .filter(one -> one instanceof Painted.Path path && path.mark().equals("inner-line"))
                .findFirst()
                .orElseThrow();
        assertThat(inner.line().orElseThrow().dashes()).containsExactly(3.0, 2.0);
        assertThat(inner.fill()).isEmpty();
        assertThat(painting.beside().stream()
                        .filter(one -> one instanceof Painted.Words words && words.bold())
                        .map(one -> ((Painted.Words) one).words()))
                .contains("Take care")
                .doesNotContain("One layer.");
    }

    /** Ways in which drawing programs write the same paint: as a style, as a style sheet, in another layer that is moved. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void theSamePaintInOtherWordsIsTheSame(int way) throws Exception {
        String svg = MarkerSvg.of(MARKER, MarkerSvgTest.NOTES);
        String other = switch (way) {
            case 0 ->
                svg.replaceAll(
                        "fill=\"(#[0-9a-f]{6})\" stroke=\"#000000\" stroke-width=\"0.25\"",
                        "style=\"fill:$1;stroke:#000;stroke-width:0.25px\"");
            case 1 -> svg.replace("<g id=\"pieces\"", "<style>#pieces path{}</style><g id=\"pieces\"");
            default ->
                svg.replaceFirst("(?s)(<svg[^>]*>)(.*)</svg>", "$1<g transform=\"translate(7 -3)\">$2</g></svg>");
        };
        assertThat(other).isNotEqualTo(svg);
        MarkerPainting one = read(svg);
        MarkerPainting two = read(other);
        assertThat(two.pieces()).isEqualTo(one.pieces());
    }

    @Test
    void aPieceThatIsNotShownIsNotLostInSilence() {
        String svg = MarkerSvg.of(MARKER, MarkerSvgTest.NOTES)
                .replaceFirst("data-piece=", "visibility=\"hidden\" data-piece=");
        assertThatThrownBy(() -> read(svg)).isInstanceOf(DrawingException.class).hasMessageContaining("hidden");
    }

    private static List<String> words(List<Painted> all) {
        return all.stream()
                .filter(Painted.Words.class::isInstance)
                .map(one -> ((Painted.Words) one).words())
                .toList();
    }
}
