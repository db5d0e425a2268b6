package lengthwise.hpgl;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.drawing.StrokeLetters;
import lengthwise.geometry.Point;
import lengthwise.model.Length;

/**
 * How a long drawing is split along its length, into frames that are plotted one after the other.
 *
 * @param longest frame
 * @param overlapMarks whether two frames overlap by 20 mm and both bear the same crosses there, to lay one on the other;
 *     otherwise one ends where the next begins
 */
public record Frames(Length longest, boolean overlapMarks) {
    private static final long OVERLAP = 20_000;
    private static final long CROSS = 5_000;
    private static final long LETTER = 4_000;

    /** How far the crosses lie from the edges of the drawing. */
    private static final long INSET = 15_000;

    /** Shorter frames are a slip of the unit. */
    public static final Length SHORTEST = new Length(100_000);

    /** @throws IllegalArgumentException if the frames are shorter than {@link #SHORTEST} */
    public Frames {
        if (longest.compareTo(SHORTEST) < 0) {
            throw new IllegalArgumentException("A frame is 100 mm long or more, not " + longest + ".");
        }
    }

    /** One frame: what lies from one x to another. */
    record Frame(long from, long to, List<Stroke> strokes) {}

    /** Returns the frames of a drawing that begins at x = 0, in order. */
    static List<Frame> of(List<Stroke> strokes, long length, long width, Optional<Frames> split) {
        if (split.isEmpty() || length <= split.get().longest.micrometres()) {
            return List.of(new Frame(0, length, strokes));
        }
        return split.get().frames(strokes, length, width);
    }

    private List<Frame> frames(List<Stroke> strokes, long length, long width) {
        long overlap = overlapMarks ? OVERLAP : 0;
        long step = longest.micrometres() - overlap;
        List<Stroke> all = new ArrayList<>(strokes);
        if (overlapMarks) {
            for (long x = step; x + overlap < length; x += step) {
                all.addAll(crosses(x + OVERLAP / 2, width, x / step));
            }
        }
        List<Frame> frames = new ArrayList<>();
        for (long from = 0; from == 0 || from + overlap < length; from += step) {
            long to = Math.min(length, from + longest.micrometres());
            List<Stroke> inside = new ArrayList<>();
            for (Stroke stroke : all) {
                inside.addAll(between(stroke, from, to));
            }
            frames.add(new Frame(from, to, inside));
        }
        return frames;
    }

    /** A cross near either edge on the middle of the overlap, and which frames meet there. */
    private static List<Stroke> crosses(long x, long width, long before) {
        List<Stroke> marks = new ArrayList<>();
        for (long y : new long[] {INSET, width - INSET}) {
            marks.add(new Stroke(Stroke.Pen.MARKS, List.of(new Point(x - CROSS, y), new Point(x + CROSS, y))));
            marks.add(new Stroke(Stroke.Pen.MARKS, List.of(new Point(x, y - CROSS), new Point(x, y + CROSS))));
            String words = before + "+" + (before + 1);
            Point at = new Point(x - StrokeLetters.width(words, LETTER) / 2, y + CROSS + LETTER + 1_000);
            StrokeLetters.strokes(words, at, LETTER)
                    .forEach(letter -> marks.add(new Stroke(Stroke.Pen.LETTERING, letter)));
        }
        return marks;
    }

    /** Returns the parts of a stroke between two lines across the drawing. */
    static List<Stroke> between(Stroke stroke, long from, long to) {
        List<Stroke> parts = new ArrayList<>();
        List<Point> open = new ArrayList<>();
        for (int i = 1; i < stroke.points().size(); i++) {
            Point a = stroke.points().get(i - 1);
            Point b = stroke.points().get(i);
            if (Math.max(a.x(), b.x()) < from || Math.min(a.x(), b.x()) > to) {
                lift(stroke, open, parts);
                continue;
            }
            Point begins = at(a, b, a.x() < from ? from : Math.min(a.x(), to));
            Point ends = at(b, a, b.x() < from ? from : Math.min(b.x(), to));
            if (open.isEmpty() || !open.get(open.size() - 1).equals(begins)) {
                lift(stroke, open, parts);
                open.add(begins);
            }
            open.add(ends);
            if (!ends.equals(b)) {
                lift(stroke, open, parts);
            }
        }
        lift(stroke, open, parts);
        return parts;
    }

    private static void lift(Stroke stroke, List<Point> open, List<Stroke> parts) {
        if (open.size() > 1) {
            parts.add(new Stroke(stroke.pen(), open));
        }
        open.clear();
    }

    /** Returns the point of a line at an x between its ends; its start, if that is there. */
    private static Point at(Point start, Point end, long x) {
        if (start.x() == x) {
            return start;
        }
        double share = (x - start.x()) / (double) (end.x() - start.x());
        return new Point(x, start.y() + StrictMath.round(share * (end.y() - start.y())));
    }
}
