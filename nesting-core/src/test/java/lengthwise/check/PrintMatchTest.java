package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.TWO;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.folded;
import static lengthwise.check.Laying.item;
import static lengthwise.check.Laying.mm;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.check.Laying.withMatchPoint;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Placement;
import lengthwise.model.Repeat;
import lengthwise.model.Shrinkage;
import lengthwise.model.Spread;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

class PrintMatchTest {
    @Test
    void aMatchPointLiesOnThePrint() {
        Piece cup = withMatchPoint(sleeve(), new Point(50_000, 20_000), Length.ofMillimetres(1));
        TestFabric print = cloth().repeat(new Repeat(mm(320), mm(160), false, mm(10), mm(20)));
        MarkerOrder order = order(print, bundle(ONE, alike(cup, 1)));
        // Lattice points: (10 + 320 i, 20 + 160 j) mm.
        assertThat(check(order, placed(cup, ONE, 280_000, 160_000))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 281_000, 159_000))).isEmpty();
        Violation.OffMatchPoint off =
                only(Violation.OffMatchPoint.class, check(order, placed(cup, ONE, 281_200, 160_000)));
        assertThat(off.lengthwise()).isEqualTo(1.2);
        assertThat(off.crosswise()).isZero();
        assertThat(off.tolerance()).isEqualTo(mm(1));
    }

    @Test
    void aHalfDropMovesEveryNextColumn() {
        Piece cup = withMatchPoint(sleeve(), Point.ORIGIN, Length.ZERO);
        TestFabric print = cloth().repeat(new Repeat(mm(320), mm(160), true, mm(0), mm(0)));
        MarkerOrder order = order(print, bundle(ONE, alike(cup, 1)));
        assertThat(check(order, placed(cup, ONE, 160_000, 160_000))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 480_000, 480_000))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 320_000, 320_000))).isEmpty();
        assertThat(only(Violation.OffMatchPoint.class, check(order, placed(cup, ONE, 320_000, 160_000)))
                        .lengthwise())
                .isEqualTo(160);
    }

    /** A repeat of 62 cm: the next column lies 31 cm further, the one after that not at all (sew-helpful.com, half-drop). */
    @Test
    void everySecondColumnOfAHalfDropLiesAlike() {
        Piece cup = withMatchPoint(sleeve(), Point.ORIGIN, Length.ZERO);
        TestFabric print = cloth().repeat(new Repeat(mm(620), mm(200), true, mm(0), mm(0)));
        MarkerOrder order = order(print, bundle(ONE, alike(cup, 1)));
        assertThat(check(order, placed(cup, ONE, 620_000, 0))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 310_000, 200_000))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 620_000, 400_000))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 310_000, 600_000))).isEmpty();
        assertThat(only(Violation.OffMatchPoint.class, check(order, placed(cup, ONE, 310_200, 600_000)))
                        .lengthwise())
                .isEqualTo(0.2);
    }

    /**
     * By hand: folded where the print has a point, a point of it lies 160 mm from the fold in both layers; folded 10 mm beside
     * that, at 150 mm in one layer and at 170 mm in the other.
     */
    @Test
    void onFoldedClothThePrintIsMetInBothLayers() {
        Piece cup = withMatchPoint(sleeve(), Point.ORIGIN, mm(10));
        MarkerOrder onPoint =
                order(folded().repeat(new Repeat(mm(320), mm(160), false, mm(0), mm(0))), bundle(ONE, pair(cup, 1)));
        assertThat(check(onPoint, placed(cup, ONE, 0, 160_000))).isEmpty();
        MarkerOrder beside =
                order(folded().repeat(new Repeat(mm(320), mm(160), false, mm(0), mm(-10))), bundle(ONE, pair(cup, 1)));
        assertThat(check(beside, placed(cup, ONE, 0, 160_000))).isEmpty();
        assertThat(only(Violation.OffMatchPoint.class, check(beside, placed(cup, ONE, 0, 160_200)))
                        .crosswise())
                .isEqualTo(10.2);
        assertThat(only(Violation.OffMatchPoint.class, check(beside, placed(cup, ONE, 0, 159_800)))
                        .crosswise())
                .isEqualTo(10.2);
    }

    /** By hand: plies of 1 m with 2 cm at each end are 104 cm apart, two repeats of 52 cm. */
    @Test
    void matchedPliesAreWholeRepeatsApart() {
        Piece cup = withMatchPoint(sleeve(), Point.ORIGIN, Length.ZERO);
        TestFabric print = cloth().endAllowance(20)
                .plies(Spread.Form.PLIES_FACE_UP, 2, Spread.PlyRun.SAME_WAY)
                .repeat(new Repeat(mm(520), mm(0), false, mm(0), mm(0)));
        Placement laid = placed(item(cup, Hand.NONE, ONE, TWO), Orientation.AS_DRAWN, 0, 0);
        MarkerOrder order = order(print, bundle(ONE, alike(cup, 1)), bundle(TWO, alike(cup, 1)));
        assertThat(check(order, laid)).isEmpty();
        Marker longer = new Marker(order, List.of(laid), mm(1000.2));
        Violation.SplitRepeat split = only(Violation.SplitRepeat.class, MarkerCheck.violations(longer));
        assertThat(split.by()).isEqualTo(0.2);
        assertThat(split.sentence()).contains("1040.2 mm", "0.2 mm off", "repeats of 520 mm");
        Piece plain = sleeve();
        MarkerOrder unmatched = order(print, bundle(ONE, alike(plain, 1)), bundle(TWO, alike(plain, 1)));
        assertThat(MarkerCheck.violations(new Marker(
                        unmatched,
                        List.of(placed(item(plain, Hand.NONE, ONE, TWO), Orientation.AS_DRAWN, 0, 0)),
                        mm(1000.2))))
                .isEmpty();
    }

    @Test
    void aStripedClothMatchesAlongOneAxisOnly() {
        Piece cup = withMatchPoint(sleeve(), Point.ORIGIN, Length.ZERO);
        TestFabric stripes = cloth().repeat(new Repeat(mm(50), mm(0), false, mm(0), mm(0)));
        MarkerOrder order = order(stripes, bundle(ONE, alike(cup, 1)));
        assertThat(check(order, placed(cup, ONE, 150_000, 123_456))).isEmpty();
        assertThat(only(Violation.OffMatchPoint.class, check(order, placed(cup, ONE, 150_001, 123_456)))
                        .lengthwise())
                .isEqualTo(0.001);
    }

    @Test
    void aWashedRepeatIsSmaller() {
        // By hand: 32 cm at 3 % lengthwise is 31.04 cm on the table.
        Piece cup = withMatchPoint(sleeve(), Point.ORIGIN, Length.ZERO);
        TestFabric washed = cloth().repeat(new Repeat(mm(320), mm(0), false, mm(0), mm(0)))
                .shrinkage(0.03, 0.02, Shrinkage.Handling.PRE_WASH);
        MarkerOrder order = order(washed, bundle(ONE, alike(cup, 1)));
        assertThat(check(order, placed(cup, ONE, 620_800, 0))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 640_000, 0)))
                .singleElement()
                .isInstanceOf(Violation.OffMatchPoint.class);
    }
}
