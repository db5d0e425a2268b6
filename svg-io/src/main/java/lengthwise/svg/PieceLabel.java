package lengthwise.svg;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.model.CutOut;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.Spread;
import lengthwise.model.TiltWords;

/**
 * What is written on a laid piece, and where: its name, size, garments and hand, as large as fits inside the cut line
 * and clear of the grain arrow, and clear of the inner marks if that leaves it legible. Where an arrow leaves too little
 * room it is drawn along one half of the grain line only. Reads upright, or from below when turned.
 *
 * @param x centre of the block, in marker coordinates, micrometres
 * @param y likewise
 * @param size of the letters, in millimetres
 * @param arrow the grain arrow beside it
 * @param keyed whether the piece is too small for its name and only bears its number
 */
record PieceLabel(
        List<String> lines, double x, double y, double size, boolean turned, GrainArrow arrow, boolean keyed) {
    /** Smaller letters are not legible at arm's length (mm). */
    static final double LEAST_SIZE = 3;

    private static final double GREATEST_SIZE = 13;
    private static final double GOOD_SIZE = 5;

    /** How much larger letters must get to be worth turning the head. */
    private static final double TURNED_WORTH = 0.8;

    /** Letters larger than this are hardly worth fewer words (mm). */
    private static final double ENOUGH = 8;

    /** Air beside and above and below the block together, in parts of the letter size; tails of letters need more. */
    private static final double AIR_BESIDE = 0.8;

    private static final double AIR_ABOVE_AND_BELOW = 1.1;

    /** How much larger letters must get to be worth half of the arrow. */
    private static final double HALF_ARROW_WORTH = 1.25;

    static PieceLabel of(Placement placement, MarkerOrder order, int number) {
        Outline outline = placement.outline();
        GrainArrow arrow = GrainArrow.of(placement);
        List<Segment> marks = marks(placement);
        List<Wording> wordings = wordings(placement, order);
        PieceLabel clear = best(outline, marks, arrow, wordings);
        if (clear.size >= GOOD_SIZE) {
            return clear;
        }
        clear = withHalfTheArrow(clear, half -> best(outline, marks, half, wordings));
        if (clear.size >= GOOD_SIZE) {
            return clear;
        }
        PieceLabel across = best(outline, List.of(), arrow, wordings);
        if (across.size < GOOD_SIZE) {
            across = withHalfTheArrow(across, half -> best(outline, List.of(), half, wordings));
        }
        PieceLabel label = clear.size >= LEAST_SIZE && clear.size > 0.6 * across.size ? clear : across;
        if (label.size >= LEAST_SIZE) {
            return label;
        }
        List<Wording> numberAlone = List.of(new Wording(List.of(Integer.toString(number)), 1));
        PieceLabel key = best(outline, List.of(), arrow, numberAlone);
        if (key.size < LEAST_SIZE) {
            key = withHalfTheArrow(key, half -> best(outline, List.of(), half, numberAlone));
        }
        return new PieceLabel(key.lines, key.x, key.y, key.size, key.turned, key.arrow, true);
    }

    private static PieceLabel withHalfTheArrow(PieceLabel whole, Function<GrainArrow, PieceLabel> labelling) {
        return whole.arrow.halves().stream()
                .map(labelling)
                .filter(label -> label.size > HALF_ARROW_WORTH * whole.size)
                .reduce((a, b) -> b.size > HALF_ARROW_WORTH * a.size ? b : a)
                .orElse(whole);
    }

    /** Returns the height above the centre of the block at which a line's letters stand, in millimetres, y down. */
    double baseline(int line) {
        double height = Lettering.CAPITAL + (lines.size() - 1) * Lettering.LEADING;
        return size * (Lettering.CAPITAL - height / 2 + line * Lettering.LEADING);
    }

    /**
     * Says in words which hands a contour gives, that it opens at the fold or lies on the bias; empty where there is
     * nothing to say.
     */
    static String hands(Item item, MarkerOrder order) {
        List<CutOut> cutOuts = CutOut.of(item, order);
        Spread spread = order.fabric().spread();
        if (spread.mirrors() && item.piece().foldEdge().isPresent()) {
            return "on fold";
        }
        boolean pairs = spread.mirrors() && cutOuts.get(0).hand() != Hand.NONE;
        boolean sameGarment = cutOuts.stream().map(CutOut::garment).distinct().count() == 1;
        String hand = pairs
                ? "L + R"
                : item.hand() == Hand.NONE && item.mirrored()
                        ? "mirrored"
                        : item.hand().letter();
        String count = !pairs && cutOuts.size() > 1 && sameGarment ? count(cutOuts.size()) : "";
        int spare = spread.layers() - cutOuts.size();
        String bias = item.piece().turning() == Piece.Turning.ON_BIAS ? "bias" : "";
        return Stream.of(hand, count, spare > 0 ? "+ " + spare + " spare" : "", bias)
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private static String count(int count) {
        return count == 2 ? "two" : Integer.toString(count);
    }

    private static final Pattern NAME_PARTS = Pattern.compile("(?<=[-_/])|\\s+");

    private record Wording(List<String> lines, double worth) {
        /** A lone number is not turned: 6 and 9 would be told apart by luck. */
        double worth(boolean turned) {
            return turned ? worth * (lines.size() == 1 && lines.get(0).length() < 4 ? 0.4 : TURNED_WORTH) : worth;
        }
    }

    private static List<Wording> wordings(Placement placement, MarkerOrder order) {
        Item item = placement.item();
        String name = item.piece().name();
        String size = item.piece().size().name();
        String garments = garments(item);
        String hands = joined(hands(item, order), TiltWords.of(placement));
        String brief = joined(size, garments, hands);
        List<String> nameParts = nameParts(name);
        List<Wording> wordings = new ArrayList<>();
        wordings.add(new Wording(
                lines(List.of(name), joined(size.isEmpty() ? "" : "size " + size, "garment " + garments, hands)), 1));
        wordings.add(new Wording(
                lines(List.of(name), size.isEmpty() ? "" : "size " + size, joined("garment " + garments, hands)), 1));
        wordings.add(
                new Wording(lines(nameParts, size.isEmpty() ? "" : "size " + size, "garment " + garments, hands), 1));
        wordings.add(new Wording(lines(List.of(name), brief), 0.85));
        wordings.add(new Wording(lines(nameParts, brief), 0.75));
        wordings.add(new Wording(lines(List.of(joined(name, brief))), 0.85));
        wordings.add(new Wording(lines(nameParts, size, garments, hands), 0.7));
        return wordings;
    }

    static String garments(Item item) {
        return Garment.called(item.garments());
    }

    private static List<String> lines(List<String> name, String... others) {
        List<String> lines = new ArrayList<>(name);
        lines.addAll(List.of(others));
        lines.removeIf(String::isBlank);
        return lines;
    }

    private static String joined(String... parts) {
        return Arrays.stream(parts).filter(part -> !part.isBlank()).collect(Collectors.joining(" · "));
    }

    private static List<String> nameParts(String name) {
        return List.of(NAME_PARTS.split(name.strip(), -1));
    }

    private static PieceLabel best(Outline outline, List<Segment> clearOf, GrainArrow arrow, List<Wording> wordings) {
        PieceLabel best = new PieceLabel(List.of(), 0, 0, Double.NEGATIVE_INFINITY, false, arrow, false);
        List<Box> keepOut = List.of(arrow.room());
        double bestValue = Double.NEGATIVE_INFINITY;
        for (Wording wording : wordings) {
            double width =
                    wording.lines.stream().mapToDouble(Lettering::width).max().orElse(1) + AIR_BESIDE;
            double height = Lettering.CAPITAL + (wording.lines.size() - 1) * Lettering.LEADING + AIR_ABOVE_AND_BELOW;
            for (boolean turned : new boolean[] {false, true}) {
                double worth = wording.worth(turned);
                if (value(GREATEST_SIZE, worth) <= bestValue) {
                    continue;
                }
                LabelSpot spot = turned
                        ? LabelSpot.in(outline, clearOf, keepOut, height, width)
                        : LabelSpot.in(outline, clearOf, keepOut, width, height);
                double size = Math.min(GREATEST_SIZE, spot.unit() / 1000);
                if (value(size, worth) > bestValue) {
                    bestValue = value(size, worth);
                    best = new PieceLabel(wording.lines, spot.x(), spot.y(), size, turned, arrow, false);
                }
            }
        }
        return best;
    }

    private static double value(double size, double worth) {
        return worth * (Math.min(size, ENOUGH) + size / 10);
    }

    private static List<Segment> marks(Placement placement) {
        PieceMarks marks = placement.item().piece().marks().mapped(placement.pose()::apply);
        List<Segment> lines = new ArrayList<>(marks.notches());
        marks.innerLines().forEach(line -> {
            for (int i = 0; i + 1 < line.size(); i++) {
                lines.add(new Segment(line.get(i), line.get(i + 1)));
            }
        });
        for (Point hole : marks.drillHoles()) {
            lines.add(new Segment(hole.minus(new Point(2000, 0)), hole.plus(new Point(2000, 0))));
        }
        return lines;
    }
}
