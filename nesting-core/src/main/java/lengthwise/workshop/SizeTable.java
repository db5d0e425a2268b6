package lengthwise.workshop;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.model.Length;
import lengthwise.model.Size;

/** Which measures of the body each size is made for. */
public record SizeTable(List<Row> rows) {
    /**
     * Women's sizes by letters: bust girths of EN 13402-3. That the classes end at 74, 78, 82, 86, 90, 94, 98, 102, 107, 113,
     * 119, 125 and 131 cm is taken from the standard as quoted in the data set bustSizesStandard of the R package
     * Anthropometry; which two of them make a letter, and the ends at 66 and 143 cm, from memory.
     */
    public static final SizeTable EN_13402_3 = new SizeTable(List.of(
            bust("XXS", 66, 74),
            bust("XS", 74, 82),
            bust("S", 82, 90),
            bust("M", 90, 98),
            bust("L", 98, 107),
            bust("XL", 107, 119),
            bust("XXL", 119, 131),
            bust("3XL", 131, 143)));

    /** A tape is read to half a centimetre: common practice, no source. */
    private static final Length AS_READ = Length.ofMillimetres(5);

    public SizeTable {
        rows = List.copyOf(rows);
    }

    private static Row bust(String size, int from, int to) {
        return new Row(
                new Size(size),
                List.of(new Range("bust", Length.ofMillimetres(10 * from), Length.ofMillimetres(10 * to))));
    }

    /** One size and the body it is made for. */
    public record Row(Size size, List<Range> ranges) {
        public Row {
            ranges = List.copyOf(ranges);
        }
    }

    /**
     * What a measure may be, both ends included. Where both are the same, it may be read half a centimetre off.
     *
     * @param measure its name, such as bust
     */
    public record Range(String measure, Length from, Length to) {
        public Range {
            if (from.compareTo(to) > 0) {
                throw new IllegalArgumentException("A range ends before it begins: %s to %s".formatted(from, to));
            }
        }

        boolean holds(Length value) {
            Length reach = from.equals(to) ? AS_READ : Length.ZERO;
            return value.compareTo(from.minus(reach)) >= 0 && value.compareTo(to.plus(reach)) <= 0;
        }
    }

    /** Returns the names of the measures that it chooses by, in the order of the table. */
    public List<String> measures() {
        return rows.stream()
                .flatMap(row -> row.ranges.stream())
                .map(Range::measure)
                .distinct()
                .toList();
    }

    /** Looks up the measures of a body by their names; those that the table does not have say nothing. */
    public SizeChoice choose(Map<String, Length> body) {
        List<SizeChoice.Finding> findings = new ArrayList<>();
        for (String measure : measures()) {
            Length value = body.get(measure);
            if (value != null) {
                findings.add(find(measure, value));
            }
        }
        return new SizeChoice(findings);
    }

    private SizeChoice.Finding find(String measure, Length value) {
        List<Size> fits = new ArrayList<>();
        Optional<Named> below = Optional.empty();
        Optional<Named> above = Optional.empty();
        for (Row row : rows) {
            for (Range range : row.ranges) {
                if (!range.measure.equals(measure)) {
                    continue;
                }
                if (range.holds(value)) {
                    fits.add(row.size);
                } else if (range.to.compareTo(value) < 0) {
                    if (below.isEmpty() || below.get().range.to.compareTo(range.to) < 0) {
                        below = Optional.of(new Named(row.size, range));
                    }
                } else if (above.isEmpty() || above.get().range.from.compareTo(range.from) > 0) {
                    above = Optional.of(new Named(row.size, range));
                }
            }
        }
        return new SizeChoice.Finding(
                measure, value, fits.stream().distinct().toList(), below.map(Named::size), above.map(Named::size));
    }

    private record Named(Size size, Range range) {}
}
