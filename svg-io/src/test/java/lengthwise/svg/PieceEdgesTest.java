package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.EdgePoint;
import lengthwise.drawing.EdgePoint.Kind;
import lengthwise.drawing.PieceEdges;
import lengthwise.drawing.PieceEdges.Line;
import lengthwise.drawing.PieceEdges.Measured;
import lengthwise.drawing.PieceEdges.Section;
import lengthwise.geometry.Point;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Edges against curves whose length is known; drawings in mm, y down. */
class PieceEdgesTest {
    /** Flattening to 0.005 mm and a grid of 0.001 mm make no more of curves of this size. */
    private static final Offset<Double> HUNDREDTH = within(0.01);

    private static PieceEdges edges(String shapes) throws DrawingException {
        return PieceEdges.of(Drawn.piece("<g id=\"front\">" + shapes + "</g>"));
    }

    private static String cut(String path) {
        return "<path class=\"cut\" d=\"" + path + "\"/>";
    }

    private static String sew(String path) {
        return "<path class=\"sew\" d=\"" + path + "\"/>";
    }

    private static String notch(double x, double y, double toX, double toY) {
        return "<path class=\"notch\" d=\"M%s %s L%s %s\"/>".formatted(x, y, toX, toY);
    }

    private static EdgePoint corner(int number) {
        return new EdgePoint(Kind.CORNER, number);
    }

    private static EdgePoint notch(int number) {
        return new EdgePoint(Kind.NOTCH, number);
    }

    private static Measured between(PieceEdges edges, EdgePoint from, EdgePoint to) throws DrawingException {
        return edges.between(from, to, Optional.empty());
    }

    private static double mm(Measured measured) {
        return measured.micrometres() / 1000;
    }

    /** A quarter of a disc: two straight edges of 100 mm and a quarter of a circle, π/2 · 100 mm. */
    @Test
    void straightEdgesAndAQuarterOfACircle() throws DrawingException {
        PieceEdges edges = edges(cut("M50 50 H150 A100 100 0 0 1 50 150 Z"));
        assertThat(edges.corners())
                .containsExactly(new Point(50_000, 50_000), new Point(150_000, 50_000), new Point(50_000, 150_000));
        assertThat(mm(between(edges, corner(1), corner(2)))).isCloseTo(100, HUNDREDTH);
        assertThat(mm(between(edges, corner(2), corner(3)))).isCloseTo(50 * Math.PI, HUNDREDTH);
        assertThat(mm(between(edges, corner(3), corner(2)))).isCloseTo(50 * Math.PI, HUNDREDTH);
        assertThat(mm(edges.whole())).isCloseTo(200 + 50 * Math.PI, HUNDREDTH);
        assertThat(edges.whole().along()).isEqualTo(Line.OUTLINE);
    }

    /**
     * A quarter of an ellipse with half axes of 200 and 100 mm: 200 · E(m = 3/4) with E = 1.21105 603, the complete elliptic
     * integral of the second kind; Abramowitz and Stegun, Handbook of Mathematical Functions, table 17.1 (from memory; Simpson's
     * rule gives the same).
     */
    @Test
    void aQuarterOfAnEllipse() throws DrawingException {
        PieceEdges edges = edges(cut("M50 50 H250 A200 100 0 0 1 50 150 Z"));
        assertThat(mm(between(edges, corner(2), corner(3)))).isCloseTo(200 * 1.21105603, HUNDREDTH);
    }

    /** A cubic whose control points lie on a line is that line; a notch shares it. */
    @Test
    void fromACornerToANotch() throws DrawingException {
        PieceEdges edges =
                edges(cut("M50 50 C80 50 120 50 150 50 V250 H50 Z") + notch(75, 50, 75, 55) + notch(50, 110, 55, 110));
        assertThat(mm(between(edges, corner(1), notch(1)))).isCloseTo(25, HUNDREDTH);
        assertThat(mm(between(edges, notch(1), notch(2)))).isCloseTo(25 + 60, HUNDREDTH);
        assertThat(mm(edges.between(notch(1), notch(2), Optional.of(corner(3)))))
                .isCloseTo(75 + 200 + 100 + 140, HUNDREDTH);
    }

    @Test
    void ofTwoWaysAsLongAsEachOtherOneIsAskedFor() throws DrawingException {
        PieceEdges edges = edges(cut("M50 150 A100 100 0 0 1 250 150 A100 100 0 0 1 50 150 Z")
                + notch(50, 150, 55, 150)
                + notch(250, 150, 245, 150)
                + notch(150, 250, 150, 245));
        assertThat(edges.corners()).isEmpty();
        assertThatThrownBy(() -> between(edges, notch(1), notch(2)))
                .isInstanceOf(DrawingException.class)
                .hasMessage(
                        "from notch 1 to notch 2 both ways round are about as long; name a point on the way, such as past: notch 1");
        assertThat(mm(edges.between(notch(1), notch(2), Optional.of(notch(3))))).isCloseTo(100 * Math.PI, HUNDREDTH);
        assertThat(mm(between(edges, notch(3), notch(2)))).isCloseTo(50 * Math.PI, HUNDREDTH);
        assertThatThrownBy(() -> edges.between(notch(1), notch(1), Optional.empty()))
                .hasMessage("notch 1 and notch 1 are at the same place");
        assertThatThrownBy(() -> edges.between(notch(1), notch(3), Optional.of(notch(1))))
                .hasMessage("notch 1 does not lie between notch 1 and notch 3");
    }

    /** Half a front, its fold at the left: the fold is no edge, and what ends on it is told. */
    @Test
    void theFoldIsNoEdge() throws DrawingException {
        PieceEdges edges = edges(cut("M50 50 H150 V250 H50 Z") + "<path class=\"fold\" d=\"M50 50 V250\"/>");
        assertThat(edges.corners()).hasSize(4);
        assertThat(edges.whole().meetsFold()).isTrue();
        assertThat(mm(edges.whole())).isCloseTo(400, HUNDREDTH);
        assertThat(between(edges, corner(1), corner(2))).isEqualTo(new Measured(100_000, Line.OUTLINE, true));
        assertThat(between(edges, corner(2), corner(3))).isEqualTo(new Measured(200_000, Line.OUTLINE, false));
        // only one way leads from fold to fold, the long one
        assertThat(mm(between(edges, corner(1), corner(4)))).isCloseTo(400, HUNDREDTH);
    }

    /** Allowances of 10 mm: the sew line of the arc has 90 mm of radius, and its corners lie inside those of the cut line. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "M60 60 H140 A90 90 0 0 1 60 140 Z",
                "M60 140 V60 H140 A90 90 0 0 1 60 140",
            })
    void theSewLineGoesBeforeTheCutLine(String sewLine) throws DrawingException {
        PieceEdges edges = edges(cut("M50 50 H150 A100 100 0 0 1 50 150 Z") + sew(sewLine));
        // the arc through both points has its middle elsewhere; its radius alone counts
        double half = Math.hypot(80, 80) / 2;
        double arc = 2 * 90 * Math.asin(half / 90);
        assertThat(mm(between(edges, corner(2), corner(3)))).isCloseTo(arc, HUNDREDTH);
        assertThat(between(edges, corner(2), corner(3)).along()).isEqualTo(Line.SEW_LINE);
        assertThat(mm(between(edges, corner(1), corner(2)))).isCloseTo(80, HUNDREDTH);
        assertThat(mm(edges.whole())).isCloseTo(160 + arc, HUNDREDTH);
    }

    /** A hem line alone says nothing about the side: 100 mm of side are farther from it than any allowance. */
    @Test
    void aSewLineElsewhereIsNotMeasured() throws DrawingException {
        PieceEdges edges = edges(cut("M50 50 H150 V250 H50 Z") + sew("M50 240 H150"));
        assertThat(between(edges, corner(1), corner(2))).isEqualTo(new Measured(100_000, Line.OUTLINE, false));
        assertThat(between(edges, corner(2), corner(3))).isEqualTo(new Measured(200_000, Line.OUTLINE, false));
        assertThat(between(edges, corner(3), corner(4))).isEqualTo(new Measured(100_000, Line.SEW_LINE, false));
        assertThat(edges.whole().along()).isEqualTo(Line.OUTLINE);
    }

    /** Lines that meet are one line of stitching, in whatever order and direction they are drawn. */
    @Test
    void aSewLineInPartsIsJoined() throws DrawingException {
        PieceEdges edges = edges(cut("M50 50 H150 V250 H50 Z")
                + sew("M60 60 H140")
                + sew("M60 240 V60")
                + sew("M140 60 V240")
                + sew("M60 240 H140"));
        assertThat(mm(edges.whole())).isCloseTo(2 * 80 + 2 * 180, HUNDREDTH);
        assertThat(mm(between(edges, corner(2), corner(3)))).isCloseTo(180, HUNDREDTH);
    }

    /** The legs of a dart are sewn too, and are no part of an edge. */
    @Test
    void aDartIsNoEdge() throws DrawingException {
        PieceEdges edges =
                edges(cut("M50 50 H150 V250 H50 Z") + sew("M60 60 H140 V240 H60 Z") + sew("M90 240 L100 150 L110 240"));
        assertThat(mm(edges.whole())).isCloseTo(2 * 80 + 2 * 180, HUNDREDTH);
        assertThat(between(edges, corner(3), corner(4))).isEqualTo(new Measured(80_000, Line.SEW_LINE, false));
    }

    /** A corner that goes in: 10 mm inside it, the sew line has its corner 14 mm away, not where it comes nearest. */
    @Test
    void aCornerThatGoesInHasItsOwnOnTheSewLine() throws DrawingException {
        PieceEdges edges = edges(cut("M50 50 H150 V150 H250 V250 H50 Z") + sew("M60 60 H140 V160 H240 V240 H60 Z"));
        assertThat(edges.corners()).hasSize(6);
        assertThat(mm(between(edges, corner(2), corner(3)))).isCloseTo(100, HUNDREDTH);
        assertThat(mm(between(edges, corner(3), corner(4)))).isCloseTo(100, HUNDREDTH);
    }

    /** The same outline from another point on, or the other way round, has the same corner 1. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "M50 50 H150 L180 250 H50 Z",
                "M180 250 H50 V50 H150 Z",
                "M50 50 V250 H180 L150 50 Z",
                "M100 50 H150 L180 250 H50 V50 Z",
            })
    void cornersAreCountedClockwiseFromTheUpperLeft(String path) throws DrawingException {
        assertThat(edges(cut(path)).corners())
                .containsExactly(
                        new Point(50_000, 50_000),
                        new Point(150_000, 50_000),
                        new Point(180_000, 250_000),
                        new Point(50_000, 250_000));
    }

    /** A tip that is cut off by 0.2 mm is one corner; a hem that bends by 23° is none. */
    @Test
    void whatIsACorner() throws DrawingException {
        assertThat(edges(cut("M50 50 H149.8 L150 50.2 V250 L100 260 L50 250 Z")).corners())
                .hasSize(4);
    }

    /** 2000 teeth and 300 stitches beside them are measured all the same, and none of them has a number. */
    @Test
    void aRaggedOutlineIsMeasuredWithoutNumbers() throws DrawingException {
        StringBuilder teeth = new StringBuilder("M50 50");
        StringBuilder stitches = new StringBuilder();
        for (int i = 0; i < 2_000; i++) {
            teeth.append(" l0.05 2 l0.05 -2");
        }
        for (int i = 0; i < 300; i++) {
            stitches.append(sew("M%s 150 h0.3".formatted(60 + i / 2.0)));
        }
        PieceEdges edges = edges(cut(teeth + " V250 H50 Z") + stitches);
        assertThat(edges.corners()).isEmpty();
        assertThat(edges.sections()).isEmpty();
        assertThat(mm(edges.whole())).isCloseTo(2_000 * 2 * Math.hypot(0.05, 2) + 2 * 200 + 200, HUNDREDTH);
    }

    @Test
    void whatIsNotThereIsSaidWithWhatIs() throws DrawingException {
        PieceEdges edges = edges(cut("M50 50 H150 V250 H50 Z") + notch(75, 50, 75, 55));
        assertThatThrownBy(() -> between(edges, corner(1), notch(3)))
                .isInstanceOf(DrawingException.class)
                .hasMessage("it has no notch 3; it has corners 1 to 4 and notch 1");
    }

    @Test
    void theSectionsAddUpToTheOutline() throws DrawingException {
        PieceEdges edges = edges(cut("M50 50 H150 A100 100 0 0 1 50 150 Z") + notch(50, 120, 55, 120));
        List<Section> sections = edges.sections();
        assertThat(sections.stream().map(section -> section.from().called()))
                .containsExactly("corner 1", "corner 2", "corner 3", "notch 1");
        assertThat(sections.stream().mapToDouble(section -> mm(section.length())))
                .satisfiesExactly(
                        first -> assertThat(first).isCloseTo(100, HUNDREDTH),
                        arc -> assertThat(arc).isCloseTo(50 * Math.PI, HUNDREDTH),
                        below -> assertThat(below).isCloseTo(30, HUNDREDTH),
                        above -> assertThat(above).isCloseTo(70, HUNDREDTH));
    }
}
