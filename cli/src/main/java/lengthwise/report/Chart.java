package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import lengthwise.model.Direction;
import lengthwise.model.Length;

/**
 * How much cloth a pattern takes: each size alone and the order as it is, by width and direction of the cloth.
 *
 * @param version of Lengthwise
 */
public record Chart(String job, String version, List<Cloth> fabrics) {
    /** A shop that sells by the metre sells by this: common practice, no source. */
    private static final Length METRIC_STEP = Length.ofMillimetres(100);

    /** A shop that sells by the yard sells by an eighth: common practice, no source. 1 yd = 0.9144 m exactly (1959). */
    private static final Length EIGHTH_OF_A_YARD = Length.ofMillimetres(914.4 / 8);

    public Chart {
        fabrics = List.copyOf(fabrics);
    }

    /**
     * One fabric.
     *
     * @param inches whether the maker writes her lengths in inches or yards
     * @param widths from the narrowest to the widest
     * @param directions from the freest to the strictest
     * @param rows what is laid, in words
     * @param cells by row, width and direction
     */
    public record Cloth(
            String name,
            String role,
            boolean inches,
            List<Length> widths,
            List<Direction> directions,
            List<String> rows,
            List<List<List<Cell>>> cells) {
        /** Returns a width as it is asked for in a shop. */
        String width(int index) {
            return EstimateWords.width(widths.get(index), inches);
        }

        public Cell cell(int row, int width, int direction) {
            return cells.get(row).get(width).get(direction);
        }

        /**
         * Returns the same with the shortest marker that is known in each cell: what lies on a stricter cloth lies on a freer
         * one too, and what lies on a narrower one on a wider.
         *
         * @param onWider whether that holds of this fabric
         */
        public Cloth settled(boolean onWider) {
            List<List<List<Cell>>> settled = new ArrayList<>();
            for (int row = 0; row < rows.size(); row++) {
                List<List<Cell>> ofRow = new ArrayList<>();
                for (int width = 0; width < widths.size(); width++) {
                    List<Cell> ofWidth = new ArrayList<>();
                    for (int direction = 0; direction < directions.size(); direction++) {
                        Cell best = cell(row, width, direction);
                        for (int w = onWider ? 0 : width; w <= width; w++) {
                            for (int d = direction; d < directions.size(); d++) {
                                best = best.orShorter(cell(row, w, d));
                            }
                        }
                        ofWidth.add(best);
                    }
                    ofRow.add(ofWidth);
                }
                settled.add(ofRow);
            }
            return new Cloth(name, role, inches, widths, directions, rows, settled);
        }
    }

    /**
     * What one cell holds: a marker that the check has passed, or why there is none.
     *
     * @param lowerBound no marker can be shorter
     * @param needed the length of cloth, exactly, with ends, shrinkage and allowances
     * @param cuttable the cuttable width
     * @param laid the cloth as it lies on the table, with its ends
     * @param laidWidth likewise
     * @param outlines of the pieces on it, as SVG path data in whole millimetres
     * @param reason a sentence; empty where there is a marker
     */
    public record Cell(
            Length marker,
            Length lowerBound,
            Length needed,
            double efficiency,
            Length cuttable,
            Length laid,
            Length laidWidth,
            List<String> outlines,
            String reason) {
        private static final String HEAD = "lengthwise chart cell 2";
        private static final String END = "end";
        private static final Pattern PATH = Pattern.compile("[MLZ0-9 -]+");

        public Cell {
            outlines = List.copyOf(outlines);
        }

        /** Returns a cell that has no marker. */
        public static Cell none(String reason) {
            return new Cell(
                    Length.ZERO, Length.ZERO, Length.ZERO, 0, Length.ZERO, Length.ZERO, Length.ZERO, List.of(), reason);
        }

        public boolean isLaid() {
            return reason.isEmpty();
        }

        /** Returns what a shop sells that counts in metres: the need rounded up to 10 cm. */
        public Length metric() {
            return needed.upTo(METRIC_STEP);
        }

        /** Returns what a shop sells that counts in yards: the exact need rounded up to 1/8 yd. */
        public Length yards() {
            return needed.upTo(EIGHTH_OF_A_YARD);
        }

        private Cell orShorter(Cell other) {
            if (!isLaid() || !other.isLaid() || marker.compareTo(other.marker) <= 0) {
                return this;
            }
            double narrower = other.cuttable.millimetres() / cuttable.millimetres();
            return new Cell(
                    other.marker,
                    lowerBound,
                    other.needed,
                    other.efficiency * narrower,
                    cuttable,
                    other.laid,
                    laidWidth,
                    other.outlines,
                    "");
        }

        /** Returns the cell as text, for a file. */
        public String text() {
            List<String> lines = new ArrayList<>(List.of(
                    HEAD,
                    Long.toString(marker.micrometres()),
                    Long.toString(lowerBound.micrometres()),
                    Long.toString(needed.micrometres()),
                    Double.toString(efficiency),
                    Long.toString(cuttable.micrometres()),
                    Long.toString(laid.micrometres()),
                    Long.toString(laidWidth.micrometres()),
                    reason.replaceAll("\\s+", " ")));
            lines.addAll(outlines);
            lines.add(END);
            return String.join("\n", lines) + "\n";
        }

        /** Reads such a text; empty if it is none, or not all of it. */
        public static Optional<Cell> parse(String text) {
            List<String> lines = text.lines().toList();
            int last = lines.size() - 1;
            if (last < 9 || !lines.get(0).equals(HEAD) || !lines.get(last).equals(END)) {
                return Optional.empty();
            }
            List<String> outlines = lines.subList(9, last);
            if (!outlines.stream().allMatch(outline -> PATH.matcher(outline).matches())) {
                return Optional.empty();
            }
            try {
                return Optional.of(new Cell(
                        length(lines.get(1)),
                        length(lines.get(2)),
                        length(lines.get(3)),
                        Double.parseDouble(lines.get(4)),
                        length(lines.get(5)),
                        length(lines.get(6)),
                        length(lines.get(7)),
                        outlines,
                        lines.get(8)));
            } catch (NumberFormatException notOurs) {
                return Optional.empty();
            }
        }

        private static Length length(String micrometres) {
            return new Length(Long.parseLong(micrometres));
        }
    }
}
