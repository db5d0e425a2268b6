package lengthwise.rules;

import static lengthwise.rules.Rulings.refusal;
import static lengthwise.rules.Rulings.ruled;
import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.hole;
import static lengthwise.testing.TestPieces.holed;
import static lengthwise.testing.TestPieces.matched;
import static lengthwise.testing.TestPieces.mate;
import static lengthwise.testing.TestPieces.onFold;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import lengthwise.check.MarkerCheck;
import lengthwise.check.Violation;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.model.Cut;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.Lying.MotifTie;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Motif;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.model.Repeat;
import lengthwise.model.Spread;
import lengthwise.rules.PlacementDomain.Positions.Cells;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What motifs leave of a repeat, by hand and against the check, which works on the placed piece. */
class MotifRuleTest {
    /** 60 mm long, 40 mm wide, its middle on the print's origin. */
    private static final Motif ROSE = new Motif("rose", new Box(-30_000, -20_000, 30_000, 20_000), false);

    private static final Piece PATCH = holed(rectangle("patch", 50, 30), 10, 10);

    static LongStream seeds() {
        return LongStream.range(0, 16);
    }

    /** The hole at 10, 10 of the piece keeps off a rectangle of 60 by 40 in a repeat of 200 by 100, from −40 to 20, −30 to 10. */
    @Test
    void aMarkKeepsOffARectangle() {
        List<Box> boxes = cells(minding(PATCH, new MotifTie(ROSE, false, Optional.of(hole(1)))));
        assertThat(boxes)
                .containsExactlyInAnyOrder(new Box(20_000, 0, 160_000, 100_000), new Box(0, 10_000, 200_000, 70_000));
    }

    /** 50 by 30 keeps off 60 by 40: the piece's corner is not within −80 to 30, −50 to 20. */
    @Test
    void aPieceKeepsOffARectangle() {
        List<Box> boxes = cells(minding(PATCH, new MotifTie(ROSE, false, Optional.empty())));
        assertThat(boxes)
                .containsExactlyInAnyOrder(new Box(30_000, 0, 120_000, 100_000), new Box(0, 20_000, 200_000, 50_000));
    }

    @Test
    void aMarkLiesOnARectangle() {
        List<Box> boxes = cells(minding(PATCH, new MotifTie(ROSE, true, Optional.of(hole(1)))));
        assertThat(boxes).containsExactly(new Box(160_000, 70_000, 220_000, 110_000));
    }

    /** On the fold at y = 0 both holes of an opened half lie on the rose: 20 mm apart across, there are 20 of 40 mm left. */
    @Test
    void anOpenedHalfHasTwoMarks() {
        Piece half = holed(onFold(rectangle("front", 50, 30), 50), 10, 10);
        MarkerOrder order = lying(
                order(print(), 0, 1, cut(half, 1, Cut.Manner.ON_FOLD)),
                "front",
                new MotifTie(ROSE, true, Optional.of(hole(1))));
        assertThat(cells(order)).containsExactly(new Box(160_000, 90_000, 220_000, 110_000));
    }

    /**
     * Folded at y = 0, a point of the print at y = 10 mm: bars of the upper layer lie from −10 to 30, those of the lower one from
     * −30 to 10. The hole keeps off both, from −30 to 30, and so the piece from −40 to 20; from the origin that is −50 to 10.
     */
    @Test
    void onFoldedClothTheLowerLayerCountsToo() {
        TestFabric folded = TestFabric.plain()
                .folded()
                .direction(Direction.ONE_WAY)
                .repeat(new Repeat(mm(200), mm(100), false, mm(0), mm(10)));
        Motif stripe = new Motif("bar", new Box(-99_999, -20_000, 99_999, 20_000), false);
        MarkerOrder order = lying(
                order(folded.fabric(), 0, 1, cut(PATCH, 1, Cut.Manner.PAIR)),
                "patch",
                new MotifTie(stripe, false, Optional.of(hole(1))));
        Ruling.Task task = ruled(order);
        Cells cells = (Cells) task.task().demands().get(0).domain().positions();
        assertThat(cells.origin()).isEqualTo(new Point(0, 10_000));
        assertThat(cells.at(Orientation.AS_DRAWN)).contains(new Box(0, 10_000, 200_000, 50_000));
    }

    /** A stripe of 30 in 100 mm across: the other way is free. */
    @Test
    void aStripeIsKeptOffAcross() {
        TestFabric stripes =
                TestFabric.plain().direction(Direction.ONE_WAY).repeat(new Repeat(mm(0), mm(100), false, mm(0), mm(0)));
        Motif bar = new Motif("bar", new Box(0, 0, 0, 30_000), false);
        MarkerOrder order = lying(
                order(stripes.fabric(), 0, 1, cut(PATCH, 1, Cut.Manner.ALIKE)),
                "patch",
                new MotifTie(bar, false, Optional.of(hole(1))));
        assertThat(cells(order)).containsExactly(new Box(-Cells.ENDLESS, 20_000, Cells.ENDLESS, 90_000));
    }

    /** The match point 50 mm from the hole leaves one place, ± 2 mm, where the hole is beside the rose. */
    @Test
    void aMatchPointIsMetAsWell() {
        Piece patch = matched(holed(rectangle("patch", 80, 30), 60, 10, 10, 10), 2, Optional.empty(), Optional.empty());
        assertThat(cells(minding(patch, new MotifTie(ROSE, false, Optional.of(hole(2))))))
                .containsExactly(new Box(138_000 - 200_000, -12_000, 142_000 - 200_000, -8_000));
        Piece near = matched(holed(rectangle("patch", 80, 30), 60, 10, 40, 10), 2, Optional.empty(), Optional.empty());
        assertThat(refusal(minding(near, new MotifTie(ROSE, false, Optional.of(hole(2))))))
                .contains("patch minds the motifs of test-cloth (rose), but no place", "where its match point meets");
    }

    @ParameterizedTest
    @EnumSource(
            value = Spread.Form.class,
            names = {"FOLD_CROSSWISE", "SELVEDGES_TO_MIDDLE", "TUBE", "PLIES_FACE_TO_FACE"})
    void aPrintThatNobodyKnowsIsRefused(Spread.Form form) {
        TestFabric cloth = TestFabric.plain().spread(form).repeat(200, 100);
        MarkerOrder order = lying(
                order(cloth.fabric(), 0, 1, cut(PATCH, 1, Cut.Manner.PAIR)),
                "patch",
                new MotifTie(ROSE, false, Optional.empty()));
        assertThat(refusal(order)).contains("lower layers", "single layer");
    }

    @Test
    void contradictionsNameTheWayOut() {
        Piece wide = holed(rectangle("wide", 150, 70), 10, 10);
        MotifTie whole = new MotifTie(ROSE, false, Optional.empty());
        assertThat(refusal(minding(wide, whole))).contains("no place within the repeat", "by a mark alone (at)");
        MotifTie third = new MotifTie(ROSE, true, Optional.of(hole(3)));
        assertThat(refusal(minding(PATCH, third))).contains("no drill hole 3 on it. Draw it, or name another.");
        MarkerOrder zoned = minding(PATCH, whole);
        Lying.Zone zone = new Lying.Zone("plain", new Fabric.Band(mm(0), mm(300)));
        MarkerOrder both = zoned.withLying(Map.of(
                "patch", new Lying(false, Optional.empty(), Optional.of(zone), Optional.empty(), List.of(whole))));
        assertThat(refusal(both)).contains("its zone", "Say one of the two");
        Piece other = matched(holed(triangle("cup", 60, 40), 5, 5), 2, Optional.empty(), mate("patch", 1));
        MarkerOrder matched = lying(
                order(print(), 0, 1, cut(PATCH, 1, Cut.Manner.ALIKE), cut(other, 1, Cut.Manner.ALIKE)), "patch", whole);
        assertThat(refusal(matched)).contains("patch minds the motifs", "without to");
        assertThat(ruled(zoned.withFabric(zoned.fabric().withoutRepeat()))
                        .task()
                        .demands()
                        .get(0)
                        .domain()
                        .positions())
                .isInstanceOf(PlacementDomain.Positions.Free.class);
    }

    /**
     * A piece at random positions in its cells breaks no motif, by the check; of the random positions that break none, most
     * lie in a cell; and where all is refused, hardly any breaks none.
     */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cellsAreWhatTheCheckAllows(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        MarkerOrder order = drawn(random);
        if (Ruling.of(order) instanceof Ruling.Refused refused) {
            assertThat(refused.reason()).contains("no place within the repeat");
            assertThat(allowed(order, item(order), random)).isLessThan(6);
            return;
        }
        Ruling.Task task = ruled(order);
        PlacementDomain domain = task.task().demands().get(0).domain();
        Cells cells = (Cells) domain.positions();
        for (Orientation way : domain.orientations()) {
            for (Box box : cells.at(way)) {
                long x = random.nextBoolean() ? box.minX() : random.nextLong(box.minX(), box.maxX() + 1);
                long y = random.nextBoolean() ? box.maxY() : random.nextLong(box.minY(), box.maxY() + 1);
                long i = random.nextLong(-3, 4);
                long j = random.nextLong(-3, 4);
                long drop = cells.halfDrop() && j % 2 != 0 ? cells.stepX() / 2 : 0;
                Point at = cells.origin().plus(new Point(x + i * cells.stepX() + drop, y + j * cells.stepY()));
                assertThat(broken(order, task.items().get(0), new Pose(way, at)))
                        .as("%s at %s, %s", order.lying(), way, at)
                        .isEmpty();
            }
        }
        int free = 0;
        int inCells = 0;
        for (int k = 0; k < 300; k++) {
            Orientation way = domain.orientations().get(0);
            Point at = new Point(random.nextLong(1_000_000), random.nextLong(1_000_000));
            if (broken(order, task.items().get(0), new Pose(way, at)).isEmpty()) {
                free++;
                inCells += isIn(cells, way, at) ? 1 : 0;
            }
        }
        assertThat(inCells).isGreaterThan((int) (0.85 * free) - 10);
    }

    private static int allowed(MarkerOrder order, Item item, SplittableRandom random) {
        int free = 0;
        for (int k = 0; k < 300; k++) {
            Point at = new Point(random.nextLong(1_000_000), random.nextLong(1_000_000));
            free += broken(order, item, new Pose(Orientation.AS_DRAWN, at)).isEmpty() ? 1 : 0;
        }
        return free;
    }

    private static boolean isIn(Cells cells, Orientation way, Point at) {
        for (Box box : cells.at(way)) {
            for (long j = -20; j < 40; j++) {
                long y = at.y() - cells.origin().y() - j * cells.stepY();
                long drop = cells.halfDrop() && j % 2 != 0 ? cells.stepX() / 2 : 0;
                long x = at.x() - cells.origin().x() - drop - box.minX();
                if (y >= box.minY() && y <= box.maxY() && Math.floorMod(x, cells.stepX()) <= box.width()) {
                    return true;
                }
            }
        }
        return false;
    }

    private static MarkerOrder drawn(SplittableRandom random) {
        boolean folded = random.nextInt(3) == 0;
        TestFabric fabric = TestFabric.plain()
                .direction(random.nextBoolean() ? Direction.ONE_WAY : Direction.EITHER_WAY)
                .repeat(new Repeat(
                        mm(random.nextInt(80, 400)),
                        mm(random.nextInt(80, 400)),
                        random.nextBoolean(),
                        mm(random.nextInt(0, 60)),
                        mm(random.nextInt(0, 60))));
        fabric = folded ? fabric.folded() : fabric;
        Piece piece = holed(
                triangle("cup", random.nextInt(20, 120), random.nextInt(20, 120)),
                random.nextInt(0, 10),
                random.nextInt(0, 10),
                random.nextInt(0, 20),
                random.nextInt(0, 20));
        List<MotifTie> ties = new ArrayList<>();
        for (int k = random.nextInt(1, 4); k > 0; k--) {
            long x = 1_000L * random.nextInt(-50, 100);
            long y = 1_000L * random.nextInt(-50, 100);
            Motif motif = new Motif(
                    "motif " + k,
                    new Box(x, y, x + 1_000L * random.nextInt(20, 79), y + 1_000L * random.nextInt(20, 79)),
                    random.nextBoolean());
            boolean on = k == 1 && random.nextInt(3) == 0;
            ties.add(new MotifTie(
                    motif,
                    on,
                    on || random.nextInt(3) > 0 ? Optional.of(hole(random.nextInt(1, 3))) : Optional.empty()));
        }
        return lying(
                order(fabric.fabric(), 0, 1, cut(piece, 1, folded ? Cut.Manner.PAIR : Cut.Manner.ALIKE)),
                "cup",
                ties.toArray(MotifTie[]::new));
    }

    private static Item item(MarkerOrder order) {
        return ruled(order.withLying(Map.of())).items().get(0);
    }

    private static List<Violation> broken(MarkerOrder order, Item item, Pose pose) {
        PlacedPiece placed = PlacedPiece.of(new Placement(item, pose));
        return MarkerCheck.violations(order, List.of(placed), mm(5_000), Length.ZERO).stream()
                .filter(one -> one instanceof Violation.OverMotif || one instanceof Violation.BesideMotif)
                .toList();
    }

    /** 200 by 100 mm, one way, from the corner of the cuttable area. */
    private static Fabric print() {
        return TestFabric.plain().direction(Direction.ONE_WAY).repeat(200, 100).fabric();
    }

    private static MarkerOrder minding(Piece piece, MotifTie... ties) {
        return lying(order(print(), 0, 1, cut(piece, 1, Cut.Manner.ALIKE)), piece.name(), ties);
    }

    private static MarkerOrder lying(MarkerOrder order, String piece, MotifTie... ties) {
        return order.withLying(
                Map.of(piece, new Lying(false, Optional.empty(), Optional.empty(), Optional.empty(), List.of(ties))));
    }

    private static List<Box> cells(MarkerOrder order) {
        PlacementDomain domain = ruled(order).task().demands().get(0).domain();
        Cells cells = (Cells) domain.positions();
        assertThat(cells.boxes().keySet()).containsExactlyElementsOf(domain.orientations());
        return cells.at(domain.orientations().get(0));
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }
}
