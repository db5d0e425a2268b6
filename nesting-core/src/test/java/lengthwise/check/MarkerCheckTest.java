package lengthwise.check;

import static lengthwise.check.Laying.METRE;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.SLEEVE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.marker;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.read;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.check.Laying.turned;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import org.junit.jupiter.api.Test;

/** The check as a whole: clean, from outside, and wherever a marker lies. */
class MarkerCheckTest {
    @Test
    void anExactMarkerIsClean() {
        Marker marker = marker(
                order(cloth(), bundle(ONE, alike(sleeve(), 2))),
                placed(sleeve(), ONE, 0, 0),
                placed(sleeve(), ONE, 0, 60_000));
        assertThat(MarkerCheck.violations(marker)).isEmpty();
    }

    @Test
    void aFileFromOutsideIsJudgedToTwoHundredths() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 2)));
        Random noise = new Random(7);
        List<PlacedPiece> pieces = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            Outline rough = SLEEVE.moved(new Point(5, 60_000L * i))
                    .mapped(p -> new Point(p.x() + noise.nextInt(-8, 9), p.y() + noise.nextInt(-8, 9)));
            pieces.add(read(sleeve(), "", rough));
        }
        assertThat(MarkerCheck.violations(order, pieces, METRE, MarkerCheck.OUTSIDE_TOLERANCE))
                .isEmpty();
        assertThat(MarkerCheck.violations(order, pieces, METRE, Length.ZERO)).isNotEmpty();
        PlacedPiece shifted = read(sleeve(), "", pieces.get(1).outline().moved(new Point(0, -200)));
        assertThat(only(
                                Violation.Overlap.class,
                                MarkerCheck.violations(
                                        order, List.of(pieces.get(0), shifted), METRE, MarkerCheck.OUTSIDE_TOLERANCE))
                        .thickness())
                .isBetween(0.05, 0.2);
    }

    @Test
    void whatIsWrongDoesNotDependOnWhereItLiesOrInWhichOrder() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 2), pair(block(), 1)));
        List<Placement> wrong = List.of(
                placed(sleeve(), ONE, 0, 0),
                placed(sleeve(), ONE, 500, 59_000),
                placed(block(), ONE, 90_000, 20_000),
                placed(block(), ONE, turned(QuarterTurn.QUARTER), 300_000, 0));
        List<String> found = kinds(check(order, wrong.toArray(Placement[]::new)));
        assertThat(found).contains("Overlap", "OffGrain");
        Random shuffle = new Random(11);
        for (int i = 0; i < 20; i++) {
            Point by = new Point(shuffle.nextInt(400_000), shuffle.nextInt(500_000));
            List<Placement> moved = new ArrayList<>(wrong.stream()
                    .map(p -> new Placement(
                            p.item(),
                            new Pose(p.pose().orientation(), p.pose().offset().plus(by))))
                    .toList());
            Collections.shuffle(moved, shuffle);
            assertThat(kinds(check(order, moved.toArray(Placement[]::new)))).isEqualTo(found);
        }
    }

    private static List<String> kinds(List<Violation> violations) {
        return violations.stream()
                .map(violation -> violation.getClass().getSimpleName())
                .sorted()
                .toList();
    }
}
