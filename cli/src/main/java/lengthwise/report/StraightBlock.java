package lengthwise.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Marker;
import lengthwise.model.Placement;

/**
 * Equal rectangles that lie side by side on a marker, their ends level and their gap apart: they can be cut as one block.
 * Found by how the pieces lie, whoever laid them.
 *
 * @param numbers on the marker, in order
 * @param strip width of one
 * @param side its longer side
 * @param gap between two
 */
record StraightBlock(String pieces, List<Integer> numbers, Length strip, Length side, Length gap) {
    StraightBlock {
        numbers = List.copyOf(numbers);
    }

    /** A rectangle on the marker that may have neighbours. */
    private record Lying(int number, Placement placement, Box box, long gap) {
        boolean upright() {
            return box.height() >= box.width();
        }

        /** Says whether another lies next to this one, farther along or across the cloth. */
        boolean isFollowedBy(Lying next) {
            Point step = upright() ? new Point(box.width() + gap, 0) : new Point(0, box.height() + gap);
            return next.gap == gap && next.box.equals(box.moved(step));
        }
    }

    /** Returns the blocks of two strips or more, the one that begins first on the marker first. */
    static List<StraightBlock> on(Marker marker) {
        List<Lying> rectangles = new ArrayList<>();
        List<Placement> placements = marker.inLayingOrder();
        for (int i = 0; i < placements.size(); i++) {
            Placement placement = placements.get(i);
            Box box = placement.outline().box();
            if (placement.outline().doubleArea() == 2 * box.width() * box.height()
                    && placement.item().piece().foldEdge().isEmpty()) {
                String name = placement.item().piece().name();
                rectangles.add(new Lying(
                        i + 1, placement, box, marker.order().gapOf(name).micrometres()));
            }
        }
        List<StraightBlock> blocks = new ArrayList<>();
        while (!rectangles.isEmpty()) {
            List<Lying> row = new ArrayList<>(List.of(rectangles.remove(0)));
            Optional<Lying> next = after(row, rectangles);
            while (next.isPresent()) {
                row.add(next.get());
                rectangles.remove(next.get());
                next = after(row, rectangles);
            }
            if (row.size() > 1) {
                blocks.add(of(row));
            }
        }
        return blocks;
    }

    private static Optional<Lying> after(List<Lying> row, List<Lying> rectangles) {
        return rectangles.stream().filter(row.get(row.size() - 1)::isFollowedBy).findFirst();
    }

    private static StraightBlock of(List<Lying> row) {
        Lying first = row.get(0);
        Map<String, Integer> counts = new LinkedHashMap<>();
        row.forEach(lying -> counts.merge(lying.placement.item().piece().name(), 1, Integer::sum));
        String pieces = counts.entrySet().stream()
                .map(count -> count.getValue() + " × " + count.getKey())
                .collect(Collectors.joining(", "));
        Box box = first.box;
        return new StraightBlock(
                pieces,
                row.stream()
                        .map(Lying::number)
                        .sorted(Comparator.naturalOrder())
                        .toList(),
                new Length(Math.min(box.width(), box.height())),
                new Length(Math.max(box.width(), box.height())),
                new Length(first.gap));
    }

    /** Returns the way from one strip to the next. */
    Length pitch() {
        return strip.plus(gap);
    }

    /** Returns the width of all strips and the gaps between them. */
    Length breadth() {
        return pitch().times(numbers.size()).minus(gap);
    }

    /** Returns what it is: "20 × neck-tie (nos. 3 to 22) as one straight-cut block, …". */
    String sentence() {
        return "%s (%s) as one straight-cut block, %s by %s: a strip of %s every %s."
                .formatted(
                        pieces,
                        numbersInWords(),
                        LengthWords.both(breadth()),
                        LengthWords.both(side),
                        fine(strip),
                        fine(pitch()));
    }

    /** To a sixteenth of an inch: an eighth is as much as the gap between two strips. */
    private static String fine(Length length) {
        return LengthWords.metric(length) + " (" + LengthWords.inches(length, 16) + ")";
    }

    private String numbersInWords() {
        int from = numbers.get(0);
        int to = numbers.get(numbers.size() - 1);
        return to - from == numbers.size() - 1
                ? "nos. %d to %d".formatted(from, to)
                : "nos. " + numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }

    /** Returns how to cut blocks with these gaps between strips, in words: common practice, no source. */
    static String howToCut(List<StraightBlock> blocks) {
        boolean touching = blocks.stream().allMatch(block -> block.gap.micrometres() == 0);
        return "Cut a block out whole, along its outer edges. Fold it to and fro like a concertina, strip on strip%s, in no"
                        .formatted(touching ? "" : ", each fold in the middle of a gap")
                + " more layers than your blade takes cleanly. Then %s"
                        .formatted(
                                touching
                                        ? "slit the folds."
                                        : "cut half of a gap away along both folded sides, through all layers at once.");
    }
}
