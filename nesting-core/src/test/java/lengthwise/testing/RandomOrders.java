package lengthwise.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.RandomRings;
import lengthwise.geometry.Ring;
import lengthwise.model.Axis;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.Cut.Manner;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.GrainTolerance;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.MarkRef;
import lengthwise.model.MarkerOrder;
import lengthwise.model.MatchPoint;
import lengthwise.model.MatchPoint.Partner;
import lengthwise.model.Piece;
import lengthwise.model.Piece.Turning;
import lengthwise.model.PieceMarks;
import lengthwise.model.Repeat;
import lengthwise.model.Segment;
import lengthwise.model.Shade;
import lengthwise.model.Shrinkage;
import lengthwise.model.Size;
import lengthwise.model.Spread;

/** Seeded orders of every kind that this product lays: pieces, cuts, fabrics and garments at random. Micrometres. */
public final class RandomOrders {
    private final SplittableRandom random;

    private RandomOrders(long seed) {
        this.random = new SplittableRandom(seed);
    }

    public static MarkerOrder of(long seed) {
        return new RandomOrders(seed).order();
    }

    private MarkerOrder order() {
        Fabric fabric = fabric();
        List<List<CutPiece>> sizes = new ArrayList<>();
        List<CutPiece> smallest = pieces(fabric);
        int sizeCount = random.nextInt(1, 3);
        for (int i = 0; i < sizeCount; i++) {
            sizes.add(graded(smallest, new Size("" + (36 + 2 * i)), 1 + 0.07 * i));
        }
        List<Bundle> bundles = new ArrayList<>();
        int garments = random.nextInt(1, 4);
        for (int number = 1; number <= garments; number++) {
            List<CutPiece> pieces = sizes.get(number % sizeCount);
            bundles.add(new Bundle(new Garment(number, pieces.get(0).piece().size()), pieces));
        }
        long gap = random.nextBoolean() ? 0 : random.nextLong(5_000);
        Map<String, Length> ownGaps = new TreeMap<>();
        for (CutPiece cut : smallest) {
            if (random.nextInt(4) == 0) {
                ownGaps.put(cut.piece().name(), new Length(random.nextLong(8_000)));
            }
        }
        MarkerOrder order = new MarkerOrder(fabric, new Length(gap), ownGaps, bundles);
        MarkerOrder tied = random.nextInt(3) == 0 ? order.withLying(lying(order)) : order;
        MarkerOrder near =
                random.nextInt(4) == 0 ? tied.withFabric(fabric.withShade(Optional.of(shade(fabric)))) : tied;
        return random.nextInt(4) == 0 ? tolerant(near) : near;
    }

    /** Some pieces may be off their grain. */
    private MarkerOrder tolerant(MarkerOrder order) {
        Map<String, Lying> lying = new TreeMap<>(order.lying());
        for (CutPiece cut : order.bundles().get(0).pieces()) {
            boolean may = cut.piece().foldEdge().isEmpty()
                    && cut.piece().turning() == Turning.ALONG_GRAIN
                    && cut.piece().matchPoint().isEmpty();
            if (may && random.nextBoolean()) {
                Lying now = order.lyingOf(cut.piece().name());
                GrainTolerance tolerance = random.nextBoolean()
                        ? new GrainTolerance.Degrees(random.nextDouble(0.1, 3))
                        : new GrainTolerance.Deviation(length(1_000, 5_000));
                lying.put(
                        cut.piece().name(),
                        new Lying(now.onSelvedge(), now.border(), now.zone(), Optional.of(tolerance)));
            }
        }
        return order.withLying(lying);
    }

    /** Now and then too little for a piece. */
    private Shade shade(Fabric fabric) {
        boolean across = !fabric.spread().mirrors() && random.nextBoolean();
        return new Shade(
                across && random.nextBoolean() ? Optional.empty() : Optional.of(length(300_000, 1_200_000)),
                across ? Optional.of(length(200_000, 600_000)) : Optional.empty());
    }

    /** Pieces tied to the edges of the cloth. */
    private Map<String, Lying> lying(MarkerOrder order) {
        boolean selvedge = random.nextBoolean();
        Map<String, Lying> lying = new TreeMap<>();
        for (CutPiece cut : order.bundles().get(0).pieces()) {
            long from = random.nextLong(200_000);
            Lying.Border border = new Lying.Border(
                    Lying.Tie.LOWEST_POINT, one(Lying.Selvedge.values()), new Length(random.nextLong(1_000_000)));
            Lying.Zone zone = new Lying.Zone(
                    "zone", new Fabric.Band(new Length(from), new Length(from + random.nextLong(150_000, 500_000))));
            int which = random.nextInt(6);
            if (which < 3) {
                lying.put(
                        cut.piece().name(),
                        new Lying(
                                selvedge && which == 0,
                                which == 1 && !selvedge ? Optional.of(border) : Optional.empty(),
                                which == 2 ? Optional.of(zone) : Optional.empty()));
            }
        }
        return lying;
    }

    private Fabric fabric() {
        Optional<Repeat> repeat = random.nextBoolean() ? Optional.empty() : Optional.of(repeat());
        Shrinkage shrinkage = random.nextInt(3) > 0
                ? Shrinkage.NONE
                : new Shrinkage(0.05 * random.nextDouble(), 0.05 * random.nextDouble(), Shrinkage.Handling.PRE_WASH);
        List<Box> flaws = new ArrayList<>();
        while (random.nextInt(3) == 0) {
            long x = random.nextLong(600_000);
            long y = random.nextLong(500_000);
            flaws.add(new Box(x, y, x + random.nextLong(1, 60_000), y + random.nextLong(1, 60_000)));
        }
        return new Fabric(
                "fuzz-cloth",
                "shell",
                length(900_000, 1_600_000),
                new Fabric.UnusableEdge(length(0, 25_000), length(0, 25_000)),
                one(Direction.values()),
                Optional.empty(),
                repeat,
                shrinkage,
                spread(),
                Optional.empty(),
                new Length(1),
                flaws,
                Optional.empty(),
                Optional.empty());
    }

    private Repeat repeat() {
        boolean stripesAlong = random.nextInt(6) == 0;
        boolean stripesAcross = !stripesAlong && random.nextBoolean();
        return new Repeat(
                stripesAlong ? Length.ZERO : length(50_000, 320_000),
                stripesAcross ? Length.ZERO : length(50_000, 160_000),
                !stripesAlong && random.nextBoolean(),
                random.nextInt(3) > 0,
                length(0, 50_000),
                random.nextBoolean() ? Length.ZERO : length(0, 50_000));
    }

    /** Half of them in a single layer or folded lengthwise, which is what most cloth is. */
    private Spread spread() {
        Spread.Form form = random.nextBoolean()
                ? one(new Spread.Form[] {Spread.Form.SINGLE_LAYER, Spread.Form.FOLD_LENGTHWISE})
                : one(Spread.Form.values());
        return switch (form) {
            case PLIES_FACE_UP -> new Spread(form, Length.ZERO, random.nextInt(1, 4), Spread.PlyRun.SAME_WAY);
            case PLIES_FACE_TO_FACE ->
                new Spread(form, Length.ZERO, 2 * random.nextInt(1, 3), one(Spread.PlyRun.values()));
            default -> new Spread(form, Length.ZERO);
        };
    }

    private List<CutPiece> pieces(Fabric fabric) {
        List<CutPiece> pieces = new ArrayList<>();
        int count = random.nextInt(1, 6);
        for (int i = 0; i < count; i++) {
            List<String> holed = pieces.stream()
                    .map(cut -> cut.piece().name())
                    .filter(name -> name.startsWith("any"))
                    .toList();
            pieces.add(
                    switch (random.nextInt(6)) {
                        case 0 -> strip("strip-" + i);
                        case 1, 2 -> half(fabric, "half-" + i);
                        case 3 -> even("even-" + i);
                        default -> any("any-" + i, fabric, holed);
                    });
        }
        return pieces;
    }

    private CutPiece strip(String name) {
        long length = random.nextLong(100_000, 450_000);
        long width = random.nextLong(20_000, 60_000);
        Turning turning = one(Turning.values());
        Ring ring = turning == Turning.ON_BIAS
                ? Ring.of(0, 0, length, length, length - width, length + width, -width, width)
                : new Box(0, 0, length, width).ring();
        // A strip that follows the print may have its up end on a long side, if it may run across.
        Optional<QuarterTurn> up = random.nextInt(3) > 0
                ? Optional.empty()
                : Optional.of(turning == Turning.ALONG_GRAIN ? QuarterTurn.NONE : one(QuarterTurn.values()));
        Piece piece = piece(name, Outline.of(ring), up, turning, Optional.empty(), Optional.empty());
        return new CutPiece(piece, new Cut(random.nextInt(1, 4), Manner.ALIKE), Hand.NONE);
    }

    /** A piece without symmetry, perhaps with a cut-out or a match point. */
    private CutPiece any(String name, Fabric fabric, List<String> holed) {
        Ring shell = random.nextBoolean()
                ? RandomRings.star(random, random.nextInt(5, 12), 30_000, 150_000)
                : blob(random.nextInt(12, 40), 40_000, 140_000);
        List<Ring> holes = random.nextInt(4) == 0 ? List.of(new Box(-5_000, -5_000, 4_000, 7_000).ring()) : List.of();
        List<Point> marks = List.of(inside(), inside());
        Optional<MatchPoint> match =
                random.nextBoolean() ? Optional.empty() : Optional.of(matchPoint(marks.get(0), holed));
        Outline outline = new Outline(shell, holes);
        Piece piece = new Piece(
                name,
                Size.ONE,
                outline,
                up(),
                Turning.ALONG_GRAIN,
                Optional.empty(),
                match,
                false,
                new PieceMarks(Optional.empty(), List.of(), marks, List.of()));
        // Pieces alike cannot be cut from layers face to face; ask for it now and then.
        boolean alike = random.nextInt(fabric.spread().mirrors() ? 8 : 2) == 0;
        return alike
                ? new CutPiece(piece, new Cut(random.nextInt(1, 3), Manner.ALIKE), one(Hand.values()))
                : new CutPiece(piece, new Cut(random.nextInt(1, 3), Manner.PAIR), one(Hand.values()));
    }

    private Point inside() {
        return new Point(random.nextLong(-20_000, 20_000), random.nextLong(-20_000, 20_000));
    }

    /** Matched to the print, to a hole of an earlier piece, or to its other hand. */
    private MatchPoint matchPoint(Point at, List<String> holed) {
        Optional<Partner> to = switch (random.nextInt(4)) {
            case 0 -> Optional.of(new Partner.OtherHand());
            case 1, 2 ->
                holed.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Partner.Mate(
                                holed.get(random.nextInt(holed.size())),
                                new MarkRef(MarkRef.Kind.DRILL_HOLE, random.nextInt(1, 3))));
            default -> Optional.empty();
        };
        Optional<Axis> along = random.nextInt(4) == 0 ? Optional.of(one(Axis.values())) : Optional.empty();
        return new MatchPoint(at, random.nextInt(3) == 0 ? Length.ZERO : length(100, 3_000), along, to);
    }

    /** A piece that is its own mirror image: about its grain, or now and then across it. */
    private CutPiece even(String name) {
        List<Point> right = new ArrayList<>();
        int n = random.nextInt(2, 6);
        for (int i = 0; i < n; i++) {
            right.add(new Point(i * 30_000L + random.nextLong(20_000), random.nextLong(20_000, 120_000)));
        }
        List<Point> ring = new ArrayList<>(right);
        for (int i = n - 1; i >= 0; i--) {
            ring.add(new Point(right.get(i).x(), -right.get(i).y()));
        }
        Outline outline = Outline.of(Ring.of(ring).positive());
        boolean across = random.nextInt(4) == 0;
        Outline laid = across ? new Orientation(false, QuarterTurn.QUARTER).apply(outline) : outline;
        Piece piece = piece(name, laid, up(), Turning.ALONG_GRAIN, Optional.empty(), Optional.empty());
        Manner manner = random.nextBoolean() ? Manner.ALIKE : Manner.PAIR;
        return new CutPiece(piece, new Cut(random.nextInt(1, 4), manner), Hand.NONE);
    }

    /** Half of a piece, its fold edge at some height along the grain, its body on either side. */
    private CutPiece half(Fabric fabric, String name) {
        long long_ = random.nextLong(80_000, 300_000);
        long y = random.nextLong(-50_000, 50_000);
        int side = random.nextBoolean() ? 1 : -1;
        List<Point> ring = new ArrayList<>(List.of(new Point(0, y), new Point(long_, y)));
        int n = random.nextInt(1, 8);
        for (int i = n; i >= 1; i--) {
            ring.add(new Point(
                    long_ * i / (n + 1) + random.nextLong(5_000), y + side * random.nextLong(30_000, 120_000)));
        }
        // A fold edge across the grain has no fold to lie on in cloth that is folded lengthwise.
        boolean across = !fabric.spread().isFoldedLengthwise() && random.nextInt(3) == 0;
        if (across) {
            ring.replaceAll(point -> new Point(point.y(), -point.x()));
        }
        Segment fold = new Segment(ring.get(0), ring.get(1));
        Piece piece = piece(
                name,
                Outline.of(Ring.of(ring).positive()),
                up(),
                Turning.ALONG_GRAIN,
                Optional.of(fold),
                Optional.empty());
        return new CutPiece(piece, new Cut(random.nextInt(1, 3), Manner.ON_FOLD), Hand.NONE);
    }

    /** Returns a smooth ring with dents, counter-clockwise about the origin. */
    private Ring blob(int vertices, double least, double most) {
        double phase = 2 * Math.PI * random.nextDouble();
        int lobes = random.nextInt(2, 5);
        double stretch = 1 + random.nextDouble();
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < vertices; i++) {
            double angle = 2 * Math.PI * i / vertices;
            double wave = 0.5 + 0.3 * Math.sin(lobes * angle + phase) + 0.2 * Math.cos(angle);
            double radius = least + (most - least) * wave;
            points.add(new Point(Math.round(stretch * radius * Math.cos(angle)), Math.round(radius * Math.sin(angle))));
        }
        return Ring.of(points);
    }

    private static List<CutPiece> graded(List<CutPiece> pieces, Size size, double factor) {
        return pieces.stream()
                .map(cut -> new CutPiece(graded(cut.piece(), size, factor), cut.cut(), cut.drawnHand()))
                .toList();
    }

    private static Piece graded(Piece piece, Size size, double factor) {
        Piece larger = piece.mapped(p -> new Point(Math.round(factor * p.x()), Math.round(factor * p.y())));
        return new Piece(
                larger.name(),
                size,
                larger.outline(),
                larger.up(),
                larger.turning(),
                larger.foldEdge(),
                larger.matchPoint(),
                larger.strip(),
                larger.marks());
    }

    private static Piece piece(
            String name,
            Outline outline,
            Optional<QuarterTurn> up,
            Turning turning,
            Optional<Segment> fold,
            Optional<MatchPoint> match) {
        return new Piece(name, Size.ONE, outline, up, turning, fold, match, name.startsWith("strip"), PieceMarks.NONE);
    }

    /** The up end, where there is one, lies at either end of the grain. */
    private Optional<QuarterTurn> up() {
        return switch (random.nextInt(5)) {
            case 0 -> Optional.empty();
            case 1 -> Optional.of(QuarterTurn.HALF);
            default -> Optional.of(QuarterTurn.NONE);
        };
    }

    private Length length(long least, long most) {
        return new Length(random.nextLong(least, most + 1));
    }

    private <T> T one(T[] values) {
        return values[random.nextInt(values.length)];
    }
}
