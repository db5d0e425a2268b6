package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Direction;
import lengthwise.model.Garment;
import lengthwise.model.GrainLine;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.Size;
import lengthwise.model.Spread;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PieceLabelTest {
    static LongStream seeds() {
        return LongStream.range(0, 150);
    }

    static Stream<Placement> laidByHand() {
        return Stream.concat(
                SampleMarkers.singleLayer().placements().stream(), SampleMarkers.folded().placements().stream());
    }

    /** Pieces as makers draw them, wide and narrow, large and small, the grain line anywhere along the fabric. */
    @ParameterizedTest
    @MethodSource("seeds")
    void keepsClearOfTheGrainArrow(long seed) {
        Placement placement =
                laid(randomPiece(RandomGeneratorFactory.of("L64X128MixRandom").create(seed)));
        assertClear(placement, PieceLabel.of(placement, order(), 88));
    }

    @ParameterizedTest
    @MethodSource("laidByHand")
    void keepsClearOfTheArrowsOfHandLaidMarkers(Placement placement) {
        assertClear(placement, PieceLabel.of(placement, order(), 88));
    }

    @Test
    void keepsTheWholeArrowWhereThereIsRoomForBoth() {
        Placement placement = laid(SampleMarkers.cup(new Size("M"), 1));
        assertThat(PieceLabel.of(placement, order(), 1).arrow().line()).isEqualTo(GrainLine.of(placement));
    }

    /** An arrow from end to end of a band of 14 mm leaves less than 4 mm on either side of its head; half of it is enough. */
    @Test
    void halvesTheArrowWhereItTakesAllTheRoom() {
        Placement placement = laid(piece(
                "band",
                Outline.of(new Box(0, 0, 200_000, 14_000).ring()),
                new Segment(new Point(10_000, 7_000), new Point(190_000, 7_000)),
                Optional.of(QuarterTurn.NONE)));
        PieceLabel label = PieceLabel.of(placement, order(), 1);
        assertThat(label.lines().get(0)).startsWith("band");
        assertThat(label.size()).isGreaterThan(5);
        assertThat(label.arrow().line()).isEqualTo(new Segment(new Point(100_000, 7_000), new Point(190_000, 7_000)));
        assertClear(placement, label);
    }

    private static void assertClear(Placement placement, PieceLabel label) {
        assertThat(label.size()).as("letters of %s", label.lines()).isGreaterThan(1);
        double[] block = block(label);
        double[] arrow = arrow(label);
        assertThat(block[0] < arrow[2] && arrow[0] < block[2] && block[1] < arrow[3] && arrow[1] < block[3])
                .as("%s of %s mm meets its arrow", label.lines(), label.size())
                .isFalse();
        assertThat(label.arrow().line().from().y())
                .isEqualTo(GrainLine.of(placement).from().y());
        Ring shell = placement.outline().shell();
        for (double x : new double[] {block[0], (block[0] + block[2]) / 2, block[2]}) {
            for (double y : new double[] {block[1], (block[1] + block[3]) / 2, block[3]}) {
                assertThat(isInside(shell, x, y)).as("%s at %s %s", label, x, y).isTrue();
            }
        }
    }

    /** DejaVu Sans, the widest face asked for: blanks and dots 0.32 of the size, others 0.62 on average. */
    private static double[] block(PieceLabel label) {
        double widest = label.lines().stream()
                .mapToDouble(words -> {
                    long narrow =
                            words.chars().filter(c -> " ·-".indexOf(c) >= 0).count();
                    return 0.32 * narrow + 0.62 * (words.length() - narrow);
                })
                .max()
                .orElseThrow();
        double half = 500 * label.size() * widest;
        double top = 1000 * (label.baseline(0) - 0.73 * label.size());
        double bottom = 1000 * (label.baseline(label.lines().size() - 1) + 0.2 * label.size());
        return label.turned()
                ? new double[] {label.x() + top, label.y() - half, label.x() + bottom, label.y() + half}
                : new double[] {label.x() - half, label.y() + top, label.x() + half, label.y() + bottom};
    }

    /** The box of the path as it is drawn, in micrometres. */
    private static double[] arrow(PieceLabel label) {
        double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        String[] numbers = label.arrow()
                .path(Point.ORIGIN)
                .replaceAll("[MLZ]", " ")
                .strip()
                .split(" +", -1);
        for (int i = 0; i < numbers.length; i += 2) {
            double x = 1000 * Double.parseDouble(numbers[i]);
            double y = 1000 * Double.parseDouble(numbers[i + 1]);
            box = new double[] {Math.min(box[0], x), Math.min(box[1], y), Math.max(box[2], x), Math.max(box[3], y)};
        }
        return box;
    }

    private static boolean isInside(Ring ring, double x, double y) {
        boolean inside = false;
        for (int i = 0; i < ring.size(); i++) {
            double toX = ring.x(i) + ring.edge(i).x();
            double toY = ring.y(i) + ring.edge(i).y();
            if ((ring.y(i) > y) != (toY > y)
                    && x < ring.x(i) + (y - ring.y(i)) / (toY - ring.y(i)) * (toX - ring.x(i))) {
                inside = !inside;
            }
        }
        return inside;
    }

    /** A rounded outline of 30 to 300 mm by 24 to 300 mm, its grain line of a third to nine tenths of its chord. */
    private static Piece randomPiece(RandomGenerator random) {
        double width = 15_000 + random.nextDouble() * 135_000;
        double height = 12_000 + random.nextDouble() * 138_000;
        double squareness = 2 + random.nextDouble() * 4;
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double angle = Math.PI * i / 20;
            double reach = Math.pow(
                    Math.pow(Math.abs(Math.cos(angle)), squareness) + Math.pow(Math.abs(Math.sin(angle)), squareness),
                    -1 / squareness);
            points.add(new Point(
                    Math.round(width * reach * Math.cos(angle)), Math.round(height * reach * Math.sin(angle))));
        }
        double y = (random.nextDouble() - 0.5) * 1.2;
        double chord = width * Math.pow(1 - Math.pow(Math.abs(y), squareness), 1 / squareness);
        double half = chord * (0.33 + random.nextDouble() * 0.57);
        long level = Math.round(y * height);
        Segment right = new Segment(new Point(Math.round(-half), level), new Point(Math.round(half), level));
        boolean left = random.nextBoolean();
        return piece(
                List.of("cup", "front-band", "back-wing", "gusset").get(random.nextInt(4)),
                Outline.of(Ring.of(points)),
                left ? new Segment(right.to(), right.from()) : right,
                random.nextInt(3) == 0 ? Optional.empty() : Optional.of(left ? QuarterTurn.HALF : QuarterTurn.NONE));
    }

    private static Piece piece(String name, Outline outline, Segment grain, Optional<QuarterTurn> up) {
        return new Piece(
                name,
                new Size("XL"),
                outline,
                up,
                Piece.Turning.ALONG_GRAIN,
                Optional.empty(),
                Optional.empty(),
                false,
                new PieceMarks(Optional.of(grain), List.of(), List.of(), List.of()));
    }

    private static Placement laid(Piece piece) {
        return new Placement(
                new Item(piece, List.of(new Garment(10, piece.size())), Hand.LEFT, false),
                new Pose(Orientation.AS_DRAWN, Point.ORIGIN));
    }

    private static MarkerOrder order() {
        return new MarkerOrder(
                SampleMarkers.fabric(
                        "oat",
                        Direction.EITHER_WAY,
                        new Spread(Spread.Form.SINGLE_LAYER, Length.ZERO),
                        Optional.empty()),
                Length.ZERO,
                List.of());
    }
}
