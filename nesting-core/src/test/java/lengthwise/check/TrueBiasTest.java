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
import static lengthwise.check.Laying.turned;
import static lengthwise.check.Laying.with;
import static lengthwise.check.Laying.withUp;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Direction;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Piece.Turning;
import lengthwise.model.PieceMarks;
import lengthwise.model.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** True bias is 45° to the selvedge (common practice; sew-i-do 2013, ecoursesonline.iasri). */
class TrueBiasTest {
    private static final Outline STRAIGHT = Outline.of(new Box(0, 0, 300_000, 32_000).ring());

    @ParameterizedTest
    @EnumSource(QuarterTurn.class)
    void eitherBiasWillDo(QuarterTurn turn) {
        Piece binding = binding(45);
        MarkerOrder order = order(cloth(), bundle(ONE, alike(binding, 1)));
        assertThat(check(order, placed(binding, ONE, turned(turn), 400_000, 400_000)))
                .isEmpty();
    }

    @Test
    void aFifthOfADegreeOffWhereItLiesIsToo() {
        Piece binding = binding(45);
        MarkerOrder order = order(cloth(), bundle(ONE, alike(binding, 1)));
        Outline askew = rotated(STRAIGHT, 45.2).moved(new Point(200_000, 200_000));
        Violation.OffGrain off = only(Violation.OffGrain.class, check(order, read(binding, "", askew)));
        assertThat(off.degrees()).isCloseTo(0.2, within(0.01));
        Outline straight = STRAIGHT.moved(new Point(200_000, 200_000));
        assertThat(only(Violation.OffGrain.class, check(order, read(binding, "", straight)))
                        .degrees())
                .isCloseTo(45, within(0.01));
    }

    @Test
    void aFifthOfADegreeOffWhenItWasMadeIsFoundAsWell() {
        Piece binding = binding(45.2);
        MarkerOrder order = order(cloth(), bundle(ONE, alike(binding, 1)));
        Violation.OffBias off = only(Violation.OffBias.class, check(order, placed(binding, ONE, 200_000, 200_000)));
        assertThat(off.degrees()).isCloseTo(0.2, within(0.001));
        assertThat(off.sentence())
                .isEqualTo("binding S of garment 1 lies 0.2° off the true bias, which is 45° to the selvedge.");
    }

    @Test
    void aDrawnPieceIsMeasuredByItsLine() {
        for (double degrees : new double[] {45, 45.2}) {
            Piece godet = godet(degrees);
            MarkerOrder order = order(cloth(), bundle(ONE, alike(godet, 1)));
            assertThat(check(order, placed(godet, ONE, 200_000, 200_000)).stream()
                            .map(violation -> ((Violation.OffBias) violation).degrees()))
                    .usingElementComparator((a, b) -> Math.abs(a - b) < 0.001 ? 0 : 1)
                    .isEqualTo(degrees == 45 ? List.of() : List.of(0.2));
        }
    }

    @Test
    void onOneWayClothItsUpEndStaysWithThePrints() {
        Piece follows = withUp(binding(45), Optional.of(QuarterTurn.NONE));
        MarkerOrder order = order(cloth().direction(Direction.ONE_WAY), bundle(ONE, alike(follows, 1)));
        for (QuarterTurn turn : List.of(QuarterTurn.NONE, QuarterTurn.THREE_QUARTERS)) {
            assertThat(check(order, placed(follows, ONE, turned(turn), 400_000, 400_000)))
                    .isEmpty();
        }
    }

    @Test
    void upsideDownItIsFound() {
        Piece wedge = withUp(
                with(piece("wedge", rotated(Laying.SLEEVE, 45)), Turning.ALONG_GRAIN), Optional.of(QuarterTurn.NONE));
        Piece follows = onBias(wedge, false, Optional.empty());
        MarkerOrder order = order(cloth().direction(Direction.ONE_WAY), bundle(ONE, alike(follows, 1)));
        assertThat(check(order, placed(follows, ONE, turned(QuarterTurn.THREE_QUARTERS), 400_000, 400_000)))
                .isEmpty();
        for (QuarterTurn turn : List.of(QuarterTurn.HALF, QuarterTurn.QUARTER)) {
            only(Violation.WrongWayUp.class, check(order, placed(follows, ONE, turned(turn), 400_000, 400_000)));
        }
        only(Violation.WrongHand.class, check(order, placed(follows, ONE, FLIPPED, 400_000, 400_000)));
    }

    private static Piece binding(double degrees) {
        return onBias(withUp(piece("binding", rotated(STRAIGHT, degrees)), Optional.empty()), true, Optional.empty());
    }

    private static Piece godet(double degrees) {
        Outline outline = rotated(Laying.SLEEVE, degrees);
        Outline drawn = rotated(Outline.of(new Box(20_000, 20_000, 80_000, 21_000).ring()), degrees);
        Segment turned = new Segment(drawn.shell().vertex(0), drawn.shell().vertex(1));
        return onBias(withUp(piece("godet", outline), Optional.empty()), false, Optional.of(turned));
    }

    private static Piece onBias(Piece piece, boolean strip, Optional<Segment> line) {
        return new Piece(
                piece.name(),
                piece.size(),
                piece.outline(),
                piece.up(),
                Turning.ON_BIAS,
                Optional.empty(),
                Optional.empty(),
                strip,
                new PieceMarks(line, List.of(), List.of(), List.of()));
    }
}
