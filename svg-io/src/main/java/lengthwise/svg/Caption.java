package lengthwise.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.drawing.StrokeLetters;
import lengthwise.geometry.Point;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;

/**
 * What is written on a laid piece for a machine that has letters of one width, a line for each part; to be centred on a
 * point, as large as fits.
 *
 * @param middle of the block, in marker coordinates, micrometres
 * @param height of the letters, in millimetres
 * @param turned whether it reads from below, a quarter turn from upright
 */
public record Caption(List<String> lines, Point middle, double height, boolean turned) {
    /** From one line to the next, in letter heights. */
    public static final double LEADING = 1.6;

    private static final double GREATEST_HEIGHT = 12;

    /** Letters of this height need not be larger to be read (mm). */
    private static final double GOOD_HEIGHT = 5;

    /**
     * So small letters may get to stay clear of every mark, and so small to stay clear of grain line and notches (mm): heights of
     * lettering of ISO 3098, from memory.
     */
    private static final double CLEAR_OF_ALL = 3.5;

    private static final double LEAST_HEIGHT = 2.5;

    /** How much larger letters must get to be worth turning the head. */
    private static final double TURNED_WORTH = 1.25;

    public Caption {
        lines = List.copyOf(lines);
    }

    /**
     * Returns the caption of a piece: its name and size, then garments and hand where they are said.
     *
     * @param number of the piece in its marker; 0 for none
     */
    public static Caption of(PlacedPiece piece, PieceMarks marks, int number) {
        String title = Stream.of(number == 0 ? "" : number + ":", piece.piece(), piece.size())
                .filter(word -> !word.isEmpty())
                .collect(Collectors.joining(" "));
        String garments =
                piece.garments().stream().distinct().map(String::valueOf).collect(Collectors.joining("+"));
        String rest = Stream.of(garments.isEmpty() ? "" : "garment " + garments, piece.customers(), piece.hand())
                .filter(word -> !word.isEmpty())
                .collect(Collectors.joining(", "));
        List<String> lines =
                Stream.of(title, rest).filter(line -> !line.isEmpty()).toList();
        return in(piece, marks, lines, false, GREATEST_HEIGHT);
    }

    /** Returns the same, turned by a quarter where that makes it easier to read. */
    public Caption turnedIfLarger(PlacedPiece piece, PieceMarks marks) {
        if (height >= GOOD_HEIGHT) {
            return this;
        }
        Caption other = in(piece, marks, lines, true, GREATEST_HEIGHT);
        return other.height > TURNED_WORTH * height ? other : this;
    }

    /** Returns other words on a piece, upright, as large as fits. */
    public static Caption saying(String words, PlacedPiece piece, PieceMarks marks) {
        return in(piece, marks, List.of(words), false, Double.MAX_VALUE);
    }

    private static Caption in(
            PlacedPiece piece, PieceMarks marks, List<String> lines, boolean turned, double greatest) {
        List<Segment> first = new ArrayList<>(marks.grainLine().stream().toList());
        first.addAll(marks.notches());
        List<Segment> all = new ArrayList<>(first);
        for (List<Point> line : marks.innerLines()) {
            for (int i = 1; i < line.size(); i++) {
                all.add(new Segment(line.get(i - 1), line.get(i)));
            }
        }
        LabelSpot spot = spot(piece, all, lines, turned, 1);
        if (spot.unit() < CLEAR_OF_ALL * 1000) {
            spot = spot(piece, first, lines, turned, 0.5);
        }
        if (spot.unit() < LEAST_HEIGHT * 1000) {
            spot = spot(piece, List.of(), lines, turned, 0.5);
        }
        return new Caption(
                lines,
                new Point(StrictMath.round(spot.x()), StrictMath.round(spot.y())),
                Math.min(greatest, spot.unit() / 1000),
                turned);
    }

    /** Returns where letters with so much air round them, in letter heights, are largest. */
    private static LabelSpot spot(
            PlacedPiece piece, List<Segment> clearOf, List<String> lines, boolean turned, double air) {
        double along = lines.stream().mapToInt(String::length).max().orElse(0) + 2 * air;
        double across = 1 + (lines.size() - 1) * LEADING + 2 * air;
        return LabelSpot.in(piece.outline(), clearOf, List.of(), turned ? across : along, turned ? along : across);
    }

    /** Returns the caption as letters of single strokes, in marker coordinates. */
    public List<List<Point>> strokes() {
        long letter = StrictMath.round(height * 1000);
        double block = letter * (1 + (lines.size() - 1) * LEADING);
        List<List<Point>> strokes = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            Point start = new Point(
                    -StrokeLetters.width(lines.get(i), letter) / 2,
                    StrictMath.round(letter * (1 + i * LEADING) - block / 2));
            for (List<Point> stroke : StrokeLetters.strokes(lines.get(i), start, letter)) {
                strokes.add(stroke.stream()
                        .map(point -> middle.plus(turned ? new Point(point.y(), -point.x()) : point))
                        .toList());
            }
        }
        return strokes;
    }
}
