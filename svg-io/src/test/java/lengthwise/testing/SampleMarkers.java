package lengthwise.testing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.Shrinkage;
import lengthwise.model.Size;
import lengthwise.model.Spread;

/** Markers laid by hand: curved pieces with marks, pieces on the fold, strips, and random ones. */
public final class SampleMarkers {
    private SampleMarkers() {}

    /** A single layer of one-way print: three garments in two sizes, pairs, a whole back, ties, a hole, a small tab. */
    public static Marker singleLayer() {
        Fabric fabric = fabric(
                "reef-print", Direction.ONE_WAY, new Spread(Spread.Form.SINGLE_LAYER, mm(20)), Optional.of(price()));
        List<Bundle> bundles = new ArrayList<>();
        List<Placement> placements = new ArrayList<>();
        long along = 0;
        int number = 0;
        for (String sizeName : List.of("S", "S", "M")) {
            Size size = new Size(sizeName);
            double scale = sizeName.equals("S") ? 1 : 1.1;
            Garment garment = new Garment(++number, size);
            Piece cup = cup(size, scale);
            Piece back = back(size, scale);
            Piece tie = strip("neck-tie", size, 32, 450);
            Piece tab = strip("tab", size, 24, 5);
            bundles.add(new Bundle(
                    garment,
                    List.of(
                            new CutPiece(cup, new Cut(1, Cut.Manner.PAIR), Hand.LEFT),
                            new CutPiece(back, new Cut(1, Cut.Manner.ALIKE), Hand.NONE),
                            new CutPiece(tie, new Cut(2, Cut.Manner.ALIKE), Hand.NONE),
                            new CutPiece(tab, new Cut(1, Cut.Manner.ALIKE), Hand.NONE))));
            placements.add(laid(cup, garment, Hand.LEFT, false, along, 0));
            placements.add(laid(cup, garment, Hand.RIGHT, true, along, 180_000));
            placements.add(laid(back, garment, Hand.NONE, false, along, 360_000));
            placements.add(laid(tie, garment, Hand.NONE, false, along, 720_000));
            placements.add(laid(tie, garment, Hand.NONE, false, along + 35_000, 720_000));
            placements.add(laid(tab, garment, Hand.NONE, false, along + 80_000, 720_000));
            along += 290_000;
        }
        return new Marker(new MarkerOrder(fabric, mm(3), bundles), placements, new Length(along));
    }

    /** A short and narrow lay of one-way print, 320 mm long on the table and 450 mm wide: two cups one above the other, and a tie. */
    public static Marker small() {
        Garment garment = new Garment(1, Size.ONE);
        Piece cup = cup(Size.ONE, 1);
        Piece tie = strip("tie", Size.ONE, 32, 400);
        List<CutPiece> pieces = List.of(
                new CutPiece(cup, new Cut(1, Cut.Manner.PAIR), Hand.LEFT),
                new CutPiece(tie, new Cut(1, Cut.Manner.ALIKE), Hand.NONE));
        return new Marker(
                new MarkerOrder(petals(450, Direction.ONE_WAY), mm(5), List.of(new Bundle(garment, pieces))),
                List.of(
                        laid(cup, garment, Hand.LEFT, false, 5_000, 5_000),
                        laid(cup, garment, Hand.RIGHT, true, 5_000, 180_000),
                        laid(tie, garment, Hand.NONE, false, 240_000, 5_000)),
                mm(280));
    }

    /** Nothing but a tie across cloth of 1.5 m: 72 mm on the table. */
    public static Marker tieAlone(Direction direction) {
        Garment garment = new Garment(1, Size.ONE);
        Piece tie = strip("tie", Size.ONE, 32, 1400);
        List<CutPiece> pieces = List.of(new CutPiece(tie, new Cut(1, Cut.Manner.ALIKE), Hand.NONE));
        return new Marker(
                new MarkerOrder(petals(1500, direction), Length.ZERO, List.of(new Bundle(garment, pieces))),
                List.of(laid(tie, garment, Hand.NONE, false, 0, 0)),
                mm(32));
    }

    private static Fabric petals(double width, Direction direction) {
        return new Fabric(
                "petal-print",
                "shell",
                mm(width),
                Fabric.UnusableEdge.eachSide(mm(15)),
                direction,
                Optional.empty(),
                Optional.empty(),
                Shrinkage.NONE,
                new Spread(Spread.Form.SINGLE_LAYER, mm(20)),
                Optional.of(price()),
                mm(100),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    /** Folded lining: half backs on the fold, pairs of cups, two loops from one contour and one to spare. */
    public static Marker folded() {
        Fabric fabric = fabric(
                "sand lining", Direction.EITHER_WAY, new Spread(Spread.Form.FOLD_LENGTHWISE, mm(15)), Optional.empty());
        Size size = Size.ONE;
        Piece cup = cup(size, 1);
        Piece half = halfBack(size);
        Piece loop = strip("loop", size, 60, 40);
        List<Bundle> bundles = new ArrayList<>();
        List<Placement> placements = new ArrayList<>();
        List<Garment> garments = List.of(new Garment(1, size), new Garment(2, size), new Garment(3, size));
        long along = 0;
        for (Garment garment : garments) {
            bundles.add(new Bundle(
                    garment,
                    List.of(
                            new CutPiece(cup, new Cut(1, Cut.Manner.PAIR), Hand.LEFT),
                            new CutPiece(half, new Cut(1, Cut.Manner.ON_FOLD), Hand.NONE),
                            new CutPiece(loop, new Cut(1, Cut.Manner.ALIKE), Hand.NONE))));
            boolean turned = garment.number() == 2;
            Orientation fold = new Orientation(turned, turned ? QuarterTurn.HALF : QuarterTurn.NONE);
            placements.add(new Placement(
                    new Item(half, List.of(garment), Hand.NONE, false),
                    new Pose(fold, new Point(turned ? along + 250_000 : along, 0))));
            placements.add(laid(cup, garment, Hand.NONE, turned, along, 200_000));
            along += 262_345;
        }
        placements.add(laidFor(loop, garments.subList(0, 2), 0, 400_000));
        placements.add(laidFor(loop, garments.subList(2, 3), 70_000, 400_000));
        return new Marker(new MarkerOrder(fabric, mm(2), bundles), placements, new Length(along));
    }

    /** A long single layer: cups at its start, in its middle and at its end, and nothing between them. */
    public static Marker farApart(int millimetres) {
        Fabric fabric = fabric(
                "long cloth", Direction.EITHER_WAY, new Spread(Spread.Form.SINGLE_LAYER, mm(20)), Optional.empty());
        Garment garment = new Garment(1, Size.ONE);
        Piece cup = cup(Size.ONE, 1);
        Piece bar = strip("bar", Size.ONE, 30, 1000);
        List<Placement> placements = new ArrayList<>();
        for (long x : new long[] {0, millimetres * 500L, millimetres * 1000L - 300_000}) {
            placements.add(laid(cup, garment, Hand.NONE, false, x, 0));
            placements.add(laid(bar, garment, Hand.NONE, false, x + 250_000, 0));
        }
        List<CutPiece> pieces = List.of(
                new CutPiece(cup, new Cut(3, Cut.Manner.ALIKE), Hand.NONE),
                new CutPiece(bar, new Cut(3, Cut.Manner.ALIKE), Hand.NONE));
        return new Marker(
                new MarkerOrder(fabric, mm(3), List.of(new Bundle(garment, pieces))), placements, mm(millimetres));
    }

    /** Outlines of random vertices, most with a hole, in random poses: they may overlap, which no writer minds. */
    public static Marker random(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        boolean folded = random.nextBoolean();
        Fabric fabric = fabric(
                "cloth " + seed,
                random.nextBoolean() ? Direction.EITHER_WAY : Direction.ONE_WAY_PER_GARMENT,
                new Spread(
                        folded ? Spread.Form.FOLD_LENGTHWISE : Spread.Form.SINGLE_LAYER,
                        new Length(random.nextLong(50_000))),
                Optional.empty());
        Garment garment = new Garment(1 + random.nextInt(20), new Size("XL"));
        List<Placement> placements = new ArrayList<>();
        List<CutPiece> pieces = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(5); i++) {
            Piece piece = new Piece(
                    "piece " + i,
                    garment.size(),
                    randomOutline(random),
                    Optional.empty(),
                    Piece.Turning.ANY_QUARTER,
                    Optional.empty(),
                    Optional.empty(),
                    false,
                    PieceMarks.NONE);
            pieces.add(new CutPiece(piece, new Cut(1, Cut.Manner.ALIKE), Hand.NONE));
            Pose pose = new Pose(
                    new Orientation(random.nextBoolean(), QuarterTurn.of(random.nextInt(4))),
                    new Point(random.nextLong(20_000_000), random.nextLong(1_000_000)));
            Hand hand = List.of(Hand.LEFT, Hand.RIGHT, Hand.NONE).get(random.nextInt(3));
            placements.add(new Placement(new Item(piece, List.of(garment), hand, false), pose));
        }
        return new Marker(
                new MarkerOrder(fabric, Length.ZERO, List.of(new Bundle(garment, pieces))),
                placements,
                new Length(1 + random.nextLong(21_000_000)));
    }

    private static Outline randomOutline(RandomGenerator random) {
        int corners = 3 + random.nextInt(40);
        long radius = 3_000 + random.nextLong(300_000);
        List<Point> shell = new ArrayList<>();
        List<Point> hole = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * i / corners;
            double reach = radius * (0.5 + random.nextDouble() / 2);
            shell.add(new Point(Math.round(reach * Math.cos(angle)), Math.round(reach * Math.sin(angle))));
            hole.add(new Point(Math.round(radius / 9.0 * Math.cos(angle)), Math.round(radius / 9.0 * Math.sin(angle))));
        }
        return new Outline(Ring.of(shell), random.nextBoolean() ? List.of(Ring.of(hole)) : List.of());
    }

    public static Fabric fabric(String name, Direction direction, Spread spread, Optional<Fabric.Price> price) {
        return new Fabric(
                name,
                "shell",
                mm(spread.form() == Spread.Form.SINGLE_LAYER ? 1240 : 1100),
                Fabric.UnusableEdge.eachSide(mm(20)),
                direction,
                Optional.empty(),
                Optional.empty(),
                new Shrinkage(0.03, 0.02, Shrinkage.Handling.PRE_WASH),
                spread,
                price,
                mm(100),
                List.of(new Box(90_000, 1_100_000, 140_000, 1_160_000)),
                Optional.empty(),
                Optional.empty());
    }

    private static Fabric.Price price() {
        return new Fabric.Price(14.5, mm(1000));
    }

    /** A cup: a straight lower edge, a round upper one, a dart line, notches and an apex. */
    public static Piece cup(Size size, double scale) {
        List<Point> ring = new ArrayList<>();
        ring.add(at(0, 0, scale));
        ring.add(at(190, 20, scale));
        for (int i = 0; i <= 24; i++) {
            double angle = Math.PI * i / 24;
            ring.add(at(110 + 80 * Math.cos(angle), 60 + 95 * Math.sin(angle), scale));
        }
        PieceMarks marks = new PieceMarks(
                Optional.of(new Segment(at(50, 60, scale), at(160, 60, scale))),
                List.of(new Segment(at(95, 10, scale), at(95, 15, scale))),
                List.of(at(110, 110, scale)),
                List.of(List.of(at(60, 8, scale), at(100, 90, scale), at(90, 10, scale))));
        return piece("cup", size, Outline.of(Ring.of(ring)), Optional.empty(), marks);
    }

    private static Piece back(Size size, double scale) {
        List<Point> ring = new ArrayList<>(halfBackPoints(scale));
        List<Point> other = new ArrayList<>(
                ring.stream().skip(2).map(p -> new Point(p.x(), -p.y())).toList());
        Collections.reverse(other);
        ring.addAll(other);
        ring.remove(0);
        Outline moved = Outline.of(Ring.of(ring)).moved(at(0, 160, scale));
        List<Point> eyelet = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            eyelet.add(at(210 + 9 * Math.cos(Math.PI * i / 8), 160 + 9 * Math.sin(Math.PI * i / 8), scale));
        }
        Outline withHole = new Outline(moved.shell(), List.of(Ring.of(eyelet)));
        PieceMarks marks = new PieceMarks(
                Optional.of(new Segment(at(30, 160, scale), at(180, 160, scale))),
                List.of(new Segment(at(0, 100, scale), at(5, 100, scale))),
                List.of(),
                List.of());
        return piece("brief-back", size, withHole, Optional.empty(), marks);
    }

    private static Piece halfBack(Size size) {
        List<Point> ring = halfBackPoints(1);
        PieceMarks marks = new PieceMarks(
                Optional.of(new Segment(at(20, 60, 1), at(150, 60, 1))), List.of(), List.of(), List.of());
        return piece(
                "brief-back",
                size,
                Outline.of(Ring.of(ring)),
                Optional.of(new Segment(at(0, 0, 1), at(250, 0, 1))),
                marks);
    }

    private static List<Point> halfBackPoints(double scale) {
        List<Point> ring = new ArrayList<>();
        ring.add(at(0, 0, scale));
        ring.add(at(250, 0, scale));
        ring.add(at(250, 40, scale));
        for (int i = 0; i <= 20; i++) {
            double t = i / 20.0;
            ring.add(at(230 - 160 * t, 40 + 110 * t * t, scale));
        }
        ring.add(at(0, 150, scale));
        return ring;
    }

    private static Piece piece(String name, Size size, Outline outline, Optional<Segment> foldEdge, PieceMarks marks) {
        return new Piece(
                name,
                size,
                outline,
                Optional.of(QuarterTurn.NONE),
                Piece.Turning.ALONG_GRAIN,
                foldEdge,
                Optional.empty(),
                false,
                marks);
    }

    public static Piece strip(String name, Size size, double along, double across) {
        return new Piece(
                name,
                size,
                Outline.of(new Box(0, 0, mm(along).micrometres(), mm(across).micrometres()).ring()),
                Optional.empty(),
                Piece.Turning.ANY_QUARTER,
                Optional.empty(),
                Optional.empty(),
                true,
                PieceMarks.NONE);
    }

    /** Laid with the upper left corner of its box at a place. */
    private static Placement laid(Piece piece, Garment garment, Hand hand, boolean mirrored, long x, long y) {
        Orientation orientation = new Orientation(mirrored, QuarterTurn.NONE);
        Box box = orientation.apply(piece.outline()).box();
        return new Placement(
                new Item(piece, List.of(garment), hand, mirrored),
                new Pose(orientation, new Point(x - box.minX(), y - box.minY())));
    }

    private static Placement laidFor(Piece piece, List<Garment> garments, long x, long y) {
        return new Placement(
                new Item(piece, garments, Hand.NONE, false), new Pose(Orientation.AS_DRAWN, new Point(x, y)));
    }

    private static Point at(double x, double y, double scale) {
        return new Point(Math.round(x * 1000 * scale), Math.round(y * 1000 * scale));
    }

    public static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }
}
