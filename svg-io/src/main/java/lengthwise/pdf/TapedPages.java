package lengthwise.pdf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawnShape;
import lengthwise.drawing.DrawnText;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;

/**
 * Pages laid on each other as they would be taped. What two pages show alike is taken once; an open line is cut where one
 * page ends and the next begins, half of the overlap in, and goes on in the line that comes nearest there.
 */
final class TapedPages {
    /** How far lines of two pages may be apart and still be the same (µm), as for gaps in an outline. */
    private static final double REACH = 500;

    /** Below this (µm) pages meet. */
    private static final double MEET = 50;

    private static final long CELL = 1_000;

    /** Smaller outlines (µm) may well lie near to others like them: marks and letters. */
    private static final long SMALL = 20_000;

    /** So many outlines are looked at, at most, for one that lies beside itself. */
    private static final int MOST_LOOKED_AT = 100_000;

    private final List<Sheet> sheets;
    private final List<DrawnShape> shapes = new ArrayList<>();
    private final List<DrawnText> texts = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private double drift;
    private int joined;
    private int loose;
    private double nearest = Double.POSITIVE_INFINITY;
    private double beside = Double.POSITIVE_INFINITY;
    private int lookedAt;

    /**
     * A page in its place.
     *
     * @param own the part of the whole that this page answers for; sides without a neighbour are far away
     */
    record Sheet(DrawnPage page, Box own) {}

    /**
     * What came of it.
     *
     * @param drift how far apart lines were that were taken for one (µm)
     * @param joined how many ends met
     * @param loose how many ends at the edge of a page found nothing to go on in
     * @param nearest how far away the nearest other end was from one of these (µm)
     * @param beside how far an outline that two pages show whole lies from itself (µm); without bound where none does
     */
    record Taped(DrawnPage page, double drift, int joined, int loose, double nearest, double beside) {
        /** Returns what the maker must know, if anything. */
        Optional<String> said() {
            if (!Double.isInfinite(beside)) {
                return Optional.of(String.format(
                        Locale.ROOT,
                        "The same outline stands on two pages and would lie %.1f mm beside itself: correct the overlap by that much, or export the pattern on one page.",
                        beside / 1000));
            }
            if (loose > 0) {
                return Optional.of(String.format(
                        Locale.ROOT,
                        "%s where two pages meet and %s not go on%s: check the overlap, or export the pattern on one page.",
                        loose == 1 ? "1 line ends" : loose + " lines end",
                        loose == 1 ? "does" : "do",
                        Double.isInfinite(nearest) ? "" : " (the nearest is %.1f mm off)".formatted(nearest / 1000)));
            }
            return drift > MEET
                    ? Optional.of(String.format(
                            Locale.ROOT,
                            "The pages do not meet exactly: lines are up to %.2f mm apart, and the middle is taken.",
                            drift / 1000))
                    : Optional.empty();
        }

        /** Says whether more ends meet than not. */
        boolean fits() {
            return joined >= loose && Double.isInfinite(beside);
        }
    }

    /** An open line, of one page, cut to what the page answers for; what its ends go on in. */
    private static final class Part {
        private final DrawnShape shape;
        private final int sheet;
        private final List<Point> points;
        private final Optional<End>[] next;
        private boolean done;

        @SuppressWarnings({"unchecked", "rawtypes"})
        Part(DrawnShape shape, int sheet, List<Point> points) {
            this.shape = shape;
            this.sheet = sheet;
            this.points = points;
            this.next = new Optional[] {Optional.empty(), Optional.empty()};
        }
    }

    /** The first or the last point of a part. */
    private record End(Part part, int which) {
        Point at() {
            return part.points.get(which == 0 ? 0 : part.points.size() - 1);
        }

        void move(Point to) {
            part.points.set(which == 0 ? 0 : part.points.size() - 1, to);
        }
    }

    private TapedPages(List<Sheet> sheets) {
        this.sheets = sheets;
    }

    /** Lays pages that stand in one frame on each other. */
    static Taped of(List<Sheet> sheets) {
        return new TapedPages(sheets).join();
    }

    private Taped join() {
        takeOnce();
        joinEnds();
        for (Part part : parts) {
            if (!part.done && part.next[0].isEmpty()) {
                shapes.add(follow(part, 0));
            }
        }
        for (Part part : parts) {
            if (!part.done) {
                shapes.add(follow(part, 0));
            }
        }
        Box whole = sheets.stream()
                .map(sheet -> sheet.page.box())
                .reduce(Box::union)
                .orElseThrow();
        return new Taped(new DrawnPage(whole, shapes, texts), drift, joined, loose, nearest, beside);
    }

    private void takeOnce() {
        Map<Point, List<Seen>> seen = new HashMap<>();
        List<Seen> inOrder = new ArrayList<>();
        Map<String, List<DrawnText>> lettering = new HashMap<>();
        for (int i = 0; i < sheets.size(); i++) {
            for (DrawnShape shape : sheets.get(i).page.shapes()) {
                Point corner = corner(shape);
                Optional<Seen> same = around(seen, corner, i, shape);
                if (same.isPresent()) {
                    same.get().times++;
                } else {
                    Seen first = new Seen(shape, i);
                    lookBeside(inOrder, first);
                    inOrder.add(first);
                    seen.computeIfAbsent(cell(corner), any -> new ArrayList<>()).add(first);
                }
            }
            for (DrawnText text : sheets.get(i).page.texts()) {
                List<DrawnText> alike = lettering.computeIfAbsent(text.words(), any -> new ArrayList<>());
                if (alike.stream().noneMatch(other -> other.middle().distance(text.middle()) < 4 * REACH)) {
                    alike.add(text);
                    texts.add(text);
                }
            }
        }
        for (Seen one : inOrder) {
            boolean whole = one.times > 1 || one.shape.chains().stream().allMatch(Chain::closed);
            if (whole) {
                shapes.add(one.shape);
            } else {
                cut(one.shape, one.sheet);
            }
        }
    }

    /** Pieces do not lie on each other: what lies on a piece like it, a little way off, is the same one at a wrong overlap. */
    private void lookBeside(List<Seen> before, Seen now) {
        Optional<Box> room = DrawnPage.room(now.shape);
        long half = room.map(box -> Math.min(box.width(), box.height()) / 2).orElse(0L);
        if (2 * half < SMALL || !now.shape.chains().stream().allMatch(Chain::closed)) {
            return;
        }
        for (Seen other : before) {
            if (other.sheet != now.sheet && lookedAt++ < MOST_LOOKED_AT) {
                Point by = corner(now.shape).minus(corner(other.shape));
                double way = by.distance(Point.ORIGIN);
                if (way < Math.min((double) half, beside) && apart(other.shape, by, now.shape) <= MEET) {
                    beside = way;
                }
            }
        }
    }

    private static final class Seen {
        private final DrawnShape shape;
        private final int sheet;
        private int times = 1;

        Seen(DrawnShape shape, int sheet) {
            this.shape = shape;
            this.sheet = sheet;
        }
    }

    private static Point corner(DrawnShape shape) {
        return DrawnPage.room(shape)
                .map(box -> new Point(box.minX(), box.minY()))
                .orElse(new Point(0, 0));
    }

    private static Point cell(Point at) {
        return new Point(Math.floorDiv(at.x(), CELL), Math.floorDiv(at.y(), CELL));
    }

    private Optional<Seen> around(Map<Point, List<Seen>> seen, Point corner, int sheet, DrawnShape shape) {
        Point cell = cell(corner);
        for (long x = -1; x <= 1; x++) {
            for (long y = -1; y <= 1; y++) {
                for (Seen other : seen.getOrDefault(cell.plus(new Point(x, y)), List.of())) {
                    double apart = other.sheet == sheet ? REACH + 1 : apart(other.shape, Point.ORIGIN, shape);
                    if (apart <= REACH) {
                        drift = Math.max(drift, apart);
                        return Optional.of(other);
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** Returns how far apart two shapes are, point by point, the first one moved; without bound if they are not alike. */
    private static double apart(DrawnShape one, Point by, DrawnShape other) {
        if (!alike(one, other) || one.chains().size() != other.chains().size()) {
            return Double.POSITIVE_INFINITY;
        }
        double most = 0;
        for (int i = 0; i < one.chains().size(); i++) {
            Chain a = one.chains().get(i);
            Chain b = other.chains().get(i);
            if (a.closed() != b.closed() || a.points().size() != b.points().size()) {
                return Double.POSITIVE_INFINITY;
            }
            for (int j = 0; j < a.points().size() && most <= REACH; j++) {
                most = Math.max(
                        most, a.points().get(j).plus(by).distance(b.points().get(j)));
            }
        }
        return most;
    }

    private static boolean alike(DrawnShape one, DrawnShape other) {
        return one.dashed() == other.dashed()
                && one.visible() == other.visible()
                && one.groups().equals(other.groups());
    }

    private void cut(DrawnShape shape, int sheet) {
        for (Chain chain : shape.chains()) {
            if (chain.closed()) {
                shapes.add(shape.with(List.of(chain)));
            } else {
                for (List<Point> inside : Clipping.inside(chain.points(), sheets.get(sheet).own)) {
                    parts.add(new Part(shape, sheet, new ArrayList<>(inside)));
                }
            }
        }
    }

    private record Pair(End one, End other, double distance) {}

    private void joinEnds() {
        List<End> ends = new ArrayList<>();
        for (Part part : parts) {
            for (int which = 0; which < 2; which++) {
                End end = new End(part, which);
                if (isAtEdge(end.at(), sheets.get(part.sheet).own)) {
                    ends.add(end);
                }
            }
        }
        ends.sort(Comparator.comparingLong(end -> end.at().x()));
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < ends.size(); i++) {
            for (int j = i + 1;
                    j < ends.size() && ends.get(j).at().x() - ends.get(i).at().x() <= REACH;
                    j++) {
                double distance = ends.get(i).at().distance(ends.get(j).at());
                if (distance <= REACH && canGoOn(ends.get(i), ends.get(j))) {
                    pairs.add(new Pair(ends.get(i), ends.get(j), distance));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::distance));
        for (Pair pair : pairs) {
            if (next(pair.one).isEmpty() && next(pair.other).isEmpty()) {
                pair.one.part.next[pair.one.which] = Optional.of(pair.other);
                pair.other.part.next[pair.other.which] = Optional.of(pair.one);
                Point sum = pair.one.at().plus(pair.other.at());
                Point middle = new Point(Math.floorDiv(sum.x(), 2), Math.floorDiv(sum.y(), 2));
                pair.one.move(middle);
                pair.other.move(middle);
                drift = Math.max(drift, pair.distance);
                joined += 2;
            }
        }
        for (End end : ends) {
            if (next(end).isEmpty()) {
                loose++;
                for (End other : ends) {
                    if (canGoOn(end, other) && next(other).isEmpty()) {
                        nearest = Math.min(nearest, end.at().distance(other.at()));
                    }
                }
            }
        }
    }

    private static Optional<End> next(End end) {
        return end.part.next[end.which];
    }

    private static boolean canGoOn(End one, End other) {
        return one.part.sheet != other.part.sheet && alike(one.part.shape, other.part.shape);
    }

    private static boolean isAtEdge(Point at, Box own) {
        return near(at.x(), own.minX())
                || near(at.x(), own.maxX())
                || near(at.y(), own.minY())
                || near(at.y(), own.maxY());
    }

    private static boolean near(long at, long edge) {
        return Math.abs(at - edge) <= REACH;
    }

    /** Follows a line from page to page. */
    private static DrawnShape follow(Part first, int from) {
        List<Point> points = new ArrayList<>();
        Part part = first;
        int entered = from;
        boolean closed = false;
        while (true) {
            part.done = true;
            List<Point> along = new ArrayList<>(part.points);
            if (entered == 1) {
                java.util.Collections.reverse(along);
            }
            points.addAll(points.isEmpty() ? along : along.subList(1, along.size()));
            Optional<End> next = part.next[1 - entered];
            if (next.isEmpty()) {
                break;
            }
            if (next.get().part.done) {
                closed = true;
                points.remove(points.size() - 1);
                break;
            }
            part = next.get().part;
            entered = next.get().which;
        }
        return first.shape.with(List.of(new Chain(points, closed)));
    }
}
