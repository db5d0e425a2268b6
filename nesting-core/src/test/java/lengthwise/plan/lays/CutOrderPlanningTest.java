package lengthwise.plan.lays;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import lengthwise.model.Length;
import lengthwise.plan.lays.CutOrderPlanning.Answer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Worked examples of lecture slides, textbooks and papers; where a plan was proven by others, that is what is asked. */
class CutOrderPlanningTest {
    private static final double EFFORT = 20;

    /** Lecture slides "Cut order plan" (scribd.com/presentation/575728029), example 1; the only exact plan of two lays. */
    @ParameterizedTest
    @EnumSource(Aim.class)
    void fiveSizesInTwoLays(Aim aim) {
        CutOrder order = order(40, 90, 80, 25, 25);
        CutPlan plan = plan(order, new LayLimits(50, 4), plies(5), aim);
        assertThat(plan.lays())
                .containsExactly(
                        new Lay(List.of(1, 1, 2, 0, 0), List.of(40)), new Lay(List.of(0, 2, 0, 1, 1), List.of(25)));
        assertThat(plan.fewestLays()).isTrue();
    }

    /** The same slides, example 2; the only exact plan of two lays. */
    @ParameterizedTest
    @EnumSource(Aim.class)
    void fourSizesInTwoLays(Aim aim) {
        CutOrder order = order(100, 160, 120, 60);
        CutPlan plan = plan(order, new LayLimits(60, 4), plies(4), aim);
        assertThat(plan.lays())
                .containsExactly(new Lay(List.of(0, 1, 2, 1), List.of(60)), new Lay(List.of(2, 2, 0, 0), List.of(50)));
        assertThat(plan.fewestLays()).isTrue();
    }

    /** The same slides, example 3: 1300 garments, 375 a lay at most; four lays are enough, three are not. */
    @Test
    void threeSizesInFourLays() {
        CutOrder order = order(300, 600, 400);
        CutPlan plan = plan(order, new LayLimits(75, 5), plies(3), Aim.LAYS);
        assertThat(plan.lays()).hasSize(4);
        assertThat(plan.fewestLays()).isTrue();
        isCutExactly(order, plan);
    }

    /**
     * I. Vilumsone-Nemes, Industrial Cutting of Textile Materials, section 3.2.5: what is left after pairing sizes, markers
     * of two garments. Its three lays of 65 plies are the fewest lays; with a fourth lay 46 plies are enough, the half of 91.
     */
    @Test
    void whatIsLeftAfterPairing() {
        CutOrder order = order(18, 65, 8);
        CutPlan fewest = plan(order, new LayLimits(200, 2), plies(3), Aim.LAYS);
        assertThat(fewest.lays())
                .containsExactly(
                        new Lay(List.of(0, 1, 0), List.of(39)),
                        new Lay(List.of(1, 1, 0), List.of(18)),
                        new Lay(List.of(0, 1, 1), List.of(8)));
        assertThat(fewest.fewestLays()).isTrue();

        CutPlan least = plan(order, new LayLimits(200, 2), plies(3), Aim.FABRIC);
        assertThat(least.plies()).isEqualTo(46);
        assertThat(least.lays()).hasSize(4);
        assertThat(least.gap()).isZero();
        isCutExactly(order, least);
    }

    /** The same order with three garments a marker: 91 / 3 = 30.3, so 31 plies, and three lays do. */
    @Test
    void threeGarmentsAMarkerNeedThirtyOnePlies() {
        CutPlan plan = plan(order(18, 65, 8), new LayLimits(200, 3), plies(3), Aim.FABRIC);
        assertThat(plan.plies()).isEqualTo(31);
        assertThat(plan.lays()).hasSize(3);
    }

    /** The same book, table 4.1: one style, no more than 30 plies. */
    @Test
    void aHighOrderIsSpreadInParts() {
        assertThat(plan(order(25), new LayLimits(30, 1), plies(1), Aim.FABRIC).lays())
                .containsExactly(new Lay(List.of(1), List.of(25)));
        CutPlan plan = plan(order(114), new LayLimits(30, 1), plies(1), Aim.FABRIC);
        assertThat(plan.lays()).hasSize(4);
        assertThat(plan.plies()).isEqualTo(114);
        assertThat(plan.lays()).allMatch(lay -> lay.allPlies() <= 30);
    }

    /** By hand: three S and four M, two plies and three garments at most. */
    @Test
    void sevenGarmentsInTwoLays() {
        CutPlan plan = plan(order(3, 4), new LayLimits(2, 3), plies(2), Aim.FABRIC);
        assertThat(plan.lays()).containsExactly(new Lay(List.of(1, 2), List.of(2)), new Lay(List.of(1, 0), List.of(1)));
        assertThat(plan.fewestLays()).isTrue();
    }

    /**
     * onlineclothingstudy.com, March 2021: 10 000 garments, colours 1:2:1, sizes 1:2:1:2, every cell rounded up; four garments
     * a marker and 100 plies. 10 006 / 400 gives 26 lays, and the lengths of all garments together 16 009.5 m.
     */
    @Test
    void tenThousandGarmentsInThreeColours() {
        List<Integer> red = List.of(417, 834, 417, 834);
        CutOrder order = new CutOrder(
                List.of("S", "M", "L", "XL"),
                List.of("red", "blue", "white"),
                List.of(red, List.of(834, 1667, 834, 1667), red));
        assertThat(order.allGarments()).isEqualTo(10_006);
        CutPlan plan = plan(order, new LayLimits(100, 4), metres(0, 1.25, 1.5, 1.75, 1.8), Aim.FABRIC);
        assertThat(plan.fabric()).isEqualTo(Length.ofMillimetres(16_009_500));
        assertThat(plan.lays()).hasSize(26);
        assertThat(plan.fewestLays()).isTrue();
        isCutExactly(order, plan);
    }

    /**
     * CSPLib problem 002 (L. Proll, B. Smith, INFORMS Journal on Computing 10, 1998), the cat food: 418 pressings of two
     * templates are proven least, 550 of one.
     */
    @Test
    void catFood() {
        assertThat(catFood(1).plies()).isEqualTo(550);
        CutPlan two = catFood(2);
        assertThat(two.plies()).isEqualTo(418);
        assertThat(two.gap()).isZero();
    }

    /** Of three templates 408: 3665 / 9. */
    @Test
    @Tag("long")
    void catFoodOfThree() {
        assertThat(catFood(3).plies()).isEqualTo(408);
    }

    private static CutPlan catFood(int templates) {
        return plan(
                order(250, 255, 260, 500, 500, 800, 1100),
                new LayLimits(600, 1, 9, Optional.empty(), 10, 0, OptionalInt.of(templates)),
                plies(7),
                Aim.FABRIC);
    }

    /** The same source, the herbs: 115 pressings of one template, 87 of two. */
    @Test
    void herbs() {
        CutOrder order = order(
                280, 280, 230, 230, 230, 230, 150, 100, 100, 100, 100, 90, 90, 90, 90, 90, 90, 80, 80, 80, 80, 70, 70,
                70, 70, 70, 70, 70, 60, 60);
        for (int templates = 1; templates <= 2; templates++) {
            LayLimits limits = new LayLimits(600, 1, 42, Optional.empty(), 10, 0, OptionalInt.of(templates));
            CutPlan plan = plan(order, limits, plies(30), Aim.FABRIC);
            assertThat(plan.plies()).isEqualTo(templates == 1 ? 115 : 87);
            assertThat(plan.gap()).isZero();
        }
    }

    /**
     * Five sizes after Y.-C. Tsao, T.-L. Vu, L.-W. Liao, Computers and Industrial Engineering 144, 2020 (numbers as printed
     * by a project that follows it): 22 yd a ply at most, 10 to 200 plies. Its plan has nine lays and 17 548 yd; five lays and
     * 17 543.01 yd are known.
     */
    @Test
    @Tag("long")
    void fiveSizesOnALongTable() {
        CutOrder order = order(1686, 4310, 4228, 2924, 1946);
        LayLimits limits =
                new LayLimits(200, 10, 100, Optional.of(Length.ofMillimetres(22_000)), 1, 0, OptionalInt.empty());
        CutPlan plan = plan(order, limits, metres(0, 1.01, 1.08, 1.15, 1.21, 1.42), Aim.LAYS);
        assertThat(plan.lays()).hasSizeLessThanOrEqualTo(5);
        assertThat(plan.fabric()).isLessThanOrEqualTo(Length.ofMillimetres(17_543_010));
        for (int size = 0; size < 5; size++) {
            assertThat(plan.cut(0, size)).isGreaterThanOrEqualTo(order.garments(0, size));
        }
    }

    @Test
    void theSameEffortGivesTheSamePlan() {
        CutOrder order = order(7, 11, 13, 5);
        LayLimits limits = new LayLimits(6, 5);
        assertThat(plan(order, limits, metres(0.1, 0.5, 0.6, 0.7, 0.8), Aim.FABRIC))
                .isEqualTo(plan(order, limits, metres(0.1, 0.5, 0.6, 0.7, 0.8), Aim.FABRIC));
    }

    @Test
    void aGarmentLongerThanTheTableIsNamedWithTheTableItTakes() {
        LayLimits limits = new LayLimits(10, 1, 4, Optional.of(Length.ofMillimetres(700)), 0, 0, OptionalInt.empty());
        Answer answer = CutOrderPlanning.plan(
                order(1, 1),
                limits,
                metres(0.1, 0.5, 0.75),
                Aim.FABRIC,
                new CutOrderPlanning.Effort(1, 1, () -> false));
        assertThat(answer)
                .isInstanceOfSatisfying(
                        Answer.Impossible.class,
                        impossible -> assertThat(impossible.reason()).contains("size 1", "85 cm", "70 cm"));
    }

    private static void isCutExactly(CutOrder order, CutPlan plan) {
        for (int colour = 0; colour < order.colours().size(); colour++) {
            for (int size = 0; size < order.sizes().size(); size++) {
                assertThat(plan.cut(colour, size)).isEqualTo(order.garments(colour, size));
            }
        }
    }

    private static CutPlan plan(CutOrder order, LayLimits limits, PlyLength lengths, Aim aim) {
        Answer answer =
                CutOrderPlanning.plan(order, limits, lengths, aim, new CutOrderPlanning.Effort(EFFORT, 1, () -> false));
        assertThat(answer).isInstanceOf(Answer.Planned.class);
        CutPlan plan = ((Answer.Planned) answer).plan();
        assertThat(plan.lays()).allMatch(lay -> lay.allPlies() <= limits.plies());
        assertThat(plan.lays()).allMatch(lay -> lay.allGarments() <= limits.garments());
        return plan;
    }

    private static CutOrder order(int... garments) {
        return CutOrder.of(
                IntStream.range(0, garments.length).mapToObj(String::valueOf).toList(),
                IntStream.of(garments).boxed().toList());
    }

    /** Every ply costs the same, whatever lies in it. */
    private static PlyLength plies(int sizes) {
        return new PlyLength(Length.ofMillimetres(1000), Collections.nCopies(sizes, Length.ZERO));
    }

    private static PlyLength metres(double once, double... garments) {
        return new PlyLength(
                Length.ofMillimetres(1000 * once),
                Arrays.stream(garments)
                        .mapToObj(metres -> Length.ofMillimetres(1000 * metres))
                        .toList());
    }
}
