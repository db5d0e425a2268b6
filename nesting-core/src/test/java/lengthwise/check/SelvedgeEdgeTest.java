package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.TURNED;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.model.CutPiece;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Spread;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

/** Cloth one metre wide, of which 10 mm on each side are not used. */
class SelvedgeEdgeTest {
    private static final Lying ON_SELVEDGE = new Lying(true, Optional.empty(), Optional.empty());

    @Test
    void onlyThePieceThatMayLiesOnTheSelvedge() {
        assertThat(laid(ON_SELVEDGE, -10_000)).isEmpty();
        assertThat(laid(ON_SELVEDGE, 980_000 + 10_000 - 30_000)).isEmpty();
        assertThat(laid(ON_SELVEDGE, 0)).isEmpty();
        assertThat(only(Violation.OffFabric.class, laid(Lying.ANYWHERE, -10_000))
                        .by())
                .isEqualTo(10);
    }

    @Test
    void aFifthOfAMillimetreOffIsOff() {
        for (long y : new long[] {-10_200, -9_800, 980_000 + 10_000 - 30_000 + 200, 980_000 + 10_000 - 30_000 - 200}) {
            assertThat(only(Violation.OffSelvedge.class, laid(ON_SELVEDGE, y)).by())
                    .isEqualTo(0.2);
        }
    }

    /** A sleeve has one straight edge along the cloth; with its tip on the selvedge it would be cut short of cloth. */
    @Test
    void onlyTheStraightEdgeMayLieThere() {
        Piece sleeve = sleeve();
        MarkerOrder order = order(cloth(10), alike(sleeve), Map.of("sleeve", ON_SELVEDGE));
        assertThat(check(order, placed(sleeve, ONE, 0, -10_000))).isEmpty();
        Violation.OffSelvedge off =
                only(Violation.OffSelvedge.class, check(order, placed(sleeve, ONE, TURNED, 100_000, -10_000 + 60_000)));
        assertThat(off.sentence()).endsWith("on the selvedge, but not with its longest straight edge.");
    }

    @Test
    void inATubeNoneDoes() {
        MarkerOrder order = order(
                TestFabric.plain().width(1000, 0).spread(Spread.Form.TUBE),
                alike(block()),
                Map.of("block", ON_SELVEDGE));
        assertThat(check(order, placed(block(), ONE, Orientation.AS_DRAWN, 0, -200)))
                .hasAtLeastOneElementOfType(Violation.OffFabric.class);
    }

    private static List<Violation> laid(Lying lying, long y) {
        return check(order(cloth(10), alike(block()), Map.of("block", lying)), placed(block(), ONE, 0, y));
    }

    private static TestFabric cloth(double edge) {
        return TestFabric.plain().width(1000, edge);
    }

    private static CutPiece alike(Piece piece) {
        return Laying.alike(piece, 1);
    }

    private static MarkerOrder order(TestFabric cloth, CutPiece piece, Map<String, Lying> lying) {
        return Laying.order(cloth, bundle(ONE, piece)).withLying(lying);
    }
}
