package lengthwise.check;

import static lengthwise.check.Laying.FLIPPED;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.piece;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.read;
import static lengthwise.check.Laying.rotated;
import static lengthwise.check.Laying.sleeve;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import org.junit.jupiter.api.Test;

class ShapeReaderTest {
    @Test
    void aBendBelongsToTheShapeAndATiltToTheGrain() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 1)));
        Outline moved = Outline.of(Ring.of(0, 0, 100_000, 0, 70_000, 40_000, 20_000, 60_200));
        Violation.WrongShape shape = only(Violation.WrongShape.class, check(order, read(sleeve(), "", moved)));
        assertThat(shape.by()).isCloseTo(0.2, within(0.05));
        Outline both = rotated(moved, 5).moved(new Point(20_000, 20_000));
        List<Violation> violations = check(order, read(sleeve(), "", both));
        assertThat(violations).hasSize(2);
        assertThat(((Violation.OffGrain) violations.get(0)).degrees()).isCloseTo(5, within(0.2));
        assertThat(violations.get(1)).isInstanceOf(Violation.WrongShape.class);
    }

    @Test
    void oneMicrometreIsAnotherShape() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 1)));
        Outline moved = Outline.of(Ring.of(0, 0, 100_000, 0, 70_000, 40_000, 20_000, 60_001));
        assertThat(only(Violation.WrongShape.class, check(order, read(sleeve(), "", moved)))
                        .by())
                .isCloseTo(0.001, within(1e-6));
    }

    @Test
    void aCutOutBelongsToTheShape() {
        Outline ring = new Outline(
                Ring.of(0, 0, 90_000, 0, 90_000, 50_000, 0, 50_000),
                List.of(Ring.of(20_000, 20_000, 20_000, 40_000, 60_000, 20_000)));
        Piece facing = piece("facing", ring);
        MarkerOrder order = order(cloth(), bundle(ONE, alike(facing, 1)));
        assertThat(check(order, placed(facing, ONE, FLIPPED, 0, 50_000)))
                .singleElement()
                .isInstanceOf(Violation.WrongHand.class);
        assertThat(check(order, read(facing, "", Outline.of(ring.shell()))))
                .singleElement()
                .isInstanceOf(Violation.WrongShape.class);
    }
}
