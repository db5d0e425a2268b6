package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.mm;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.check.Laying.withMatchPoint;
import static org.assertj.core.api.Assertions.assertThat;

import lengthwise.geometry.Point;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Repeat;
import lengthwise.model.Shrinkage;
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
