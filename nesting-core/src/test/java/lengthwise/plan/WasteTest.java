package lengthwise.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.model.Cut;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.Piece;
import lengthwise.model.Placement;
import lengthwise.model.Shrinkage;
import lengthwise.model.Size;
import lengthwise.testing.TestFabric;
import lengthwise.testing.TestPieces;
import org.junit.jupiter.api.Test;

class WasteTest {
    /**
     * Pieces of 6.375 m² in a marker of 5.00 m × 1.50 m, ends of 2 × 2 cm, fabric 1.54 m wide: marker efficiency 6.375 /
     * 7.5 = 85.00 %, fabric utilisation 6.375 / (5.04 × 1.54) = 82.135 %. Own arithmetic from the definitions of marker
     * efficiency and fabric utilisation (Glock and Kunz, Apparel Manufacturing, as quoted by textilestudy365).
     */
    @Test
    void utilisationCountsEndsAndEdgesAndEfficiencyDoesNot() {
        Fabric fabric = TestFabric.plain().width(1540, 20).endAllowance(20).fabric();
        Marker marker = marker(fabric, 5000, TestPieces.rectangle("block", 4250, 1500));
        Waste waste = Waste.of(marker, Purchase.of(marker.length(), fabric));
        assertThat(marker.efficiency()).isCloseTo(0.85, within(1e-9));
        assertThat(waste.utilisation()).isCloseTo(0.82135, within(0.5e-5));
        assertThat(waste.pieces()).isCloseTo(6_375_000, within(1e-3));
        assertThat(waste.betweenPieces()).isCloseTo(1_125_000, within(1e-3));
        // Two edges of 20 mm along 5 m; two ends of 20 mm over 1.54 m.
        assertThat(waste.edges()).isCloseTo(200_000, within(1e-3));
        assertThat(waste.ends()).isCloseTo(61_600, within(1e-3));
        assertThat(waste.laid()).isCloseTo(5040.0 * 1540, within(1e-3));
        assertThat(waste.leftOver()).isZero();
    }

    /** By hand: 60 mm for squaring and 2 % of 1100 mm for flaws, over 1.50 m of width; all kinds make up what is bought. */
    @Test
    void allowancesAreAKindOfTheirOwn() {
        Fabric fabric = TestFabric.plain()
                .endAllowance(20)
                .buying(new Fabric.Buying(Length.ofMillimetres(30), 0.02, OptionalDouble.empty()))
                .soldBy(Length.ofMillimetres(100))
                .fabric();
        Marker marker = marker(fabric, 1000, TestPieces.rectangle("block", 1000, 1460));
        Purchase purchase = Purchase.of(marker.length(), fabric);
        Waste waste = Waste.of(marker, purchase);
        assertThat(waste.allowances()).isCloseTo(82.0 * 1500, within(1e-3));
        assertThat(waste.bought()).isCloseTo(1200.0 * 1500, within(1e-3));
    }

    /** 1.00 m × 0.73 m on cloth 1.50 m wide, folded, edges 2 cm: both layers count, so edges are 2 × 2 cm × 1 m. */
    @Test
    void foldedFabricCountsBothLayers() {
        Fabric fabric = TestFabric.plain().folded().fabric();
        Marker marker = marker(fabric, 1000, TestPieces.rectangle("block", 500, 730));
        Waste waste = Waste.of(marker, Purchase.of(marker.length(), fabric));
        assertThat(waste.pieces()).isCloseTo(2 * 500 * 730, within(1e-3));
        assertThat(waste.edges()).isCloseTo(2 * 20 * 1000, within(1e-3));
        assertThat(waste.laid()).isCloseTo(1000 * 1500, within(1e-3));
    }

    /**
     * 970 mm on cloth washed first at 3 % and 2 %: exactly 1 m is needed, 1.2 m sold in steps of 40 cm; the left over
     * 20 cm measure 194 mm × 1470 mm after washing.
     */
    @Test
    void whatTheShopAddsIsMeasuredAsItLiesAfterWashing() {
        Fabric fabric = TestFabric.plain()
                .shrinkage(0.03, 0.02, Shrinkage.Handling.PRE_WASH)
                .soldBy(Length.ofMillimetres(400))
                .fabric();
        Marker marker = marker(fabric, 970, TestPieces.rectangle("block", 970, 1000));
        Waste waste = Waste.of(marker, Purchase.of(marker.length(), fabric));
        assertThat(waste.leftOver()).isCloseTo(194 * 1470, within(1e-3));
        assertThat(waste.bought()).isCloseTo(1200 * 0.97 * 1470, within(1e-3));
    }

    private static Marker marker(Fabric fabric, double length, Piece piece) {
        Garment garment = new Garment(1, Size.ONE);
        Placement placement = new Placement(
                new Item(piece, List.of(garment), Hand.NONE, false), new Pose(Orientation.AS_DRAWN, Point.ORIGIN));
        return new Marker(
                TestPieces.order(fabric, 0, 1, TestPieces.cut(piece, 1, Cut.Manner.ALIKE)),
                List.of(placement),
                Length.ofMillimetres(length));
    }
}
