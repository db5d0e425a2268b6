package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import lengthwise.job.WiderFabric;
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

        /** Says whether a wider cloth came out longer. */
        boolean isLongerSomewhere() {
            return cells.stream()
                    .anyMatch(ofRow -> IntStream.range(1, ofRow.size())
                            .anyMatch(width -> IntStream.range(0, directions.size())
                                    .anyMatch(direction -> ofRow.get(width - 1)
                                            .get(direction)
                                            .isShorter(ofRow.get(width).get(direction)))));
        }

        public Cell cell(int row, int width, int direction) {
            return cells.get(row).get(width).get(direction);
        }

        /**
         * Returns the same with the shortest marker that is known in each cell: what lies on a stricter cloth lies on a freer
         * one too, and what lies on a narrower one on a wider, or on a wider one that is cut down.
         */
        public Cloth settled(WiderFabric wider) {
            List<List<List<Cell>>> settled = new ArrayList<>();
            for (int row = 0; row < rows.size(); row++) {
                List<List<Cell>> ofRow = new ArrayList<>();
                for (int width = 0; width < widths.size(); width++) {
                    List<Cell> ofWidth = new ArrayList<>();
                    for (int direction = 0; direction < directions.size(); direction++) {
                        Cell best = cell(row, width, direction);
                        for (int d = direction; d < directions.size(); d++) {
                            best = best.orShorter(cell(row, width, d));
                            for (int w = 0; w < width; w++) {
                                best = best.orNarrower(cell(row, w, d), widths.get(w), wider);
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
     * @param onWiderToo whether the marker lies on wider cloth as well, if that is of the same kind
     * @param cutDownTo the width that the cloth is cut down to before it is laid
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
            boolean onWiderToo,
            Optional<Length> cutDownTo,
            List<String> outlines,
            String reason) {
        private static final String HEAD = "lengthwise chart cell 3";
        private static final String END = "end";
        private static final Pattern PATH = Pattern.compile("[MLZ0-9 -]+");

        public Cell {
            outlines = List.copyOf(outlines);
        }

        /** Returns a cell that has no marker. */
        public static Cell none(String reason) {
            return new Cell(
                    Length.ZERO,
                    Length.ZERO,
                    Length.ZERO,
                    0,
                    Length.ZERO,
                    Length.ZERO,
                    Length.ZERO,
                    false,
                    Optional.empty(),
                    List.of(),
                    reason);
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

        /** Returns the shorter one of two for the same width. */
        private Cell orShorter(Cell other) {
            return other.isShorter(this) ? other.under(this) : this;
        }

        /**
         * Returns what was found for narrower cloth, if that is shorter and can be had of this one.
         *
         * @param width of the narrower cloth
         */
        private Cell orNarrower(Cell narrower, Length width, WiderFabric wider) {
            if (!narrower.isShorter(this)) {
                return this;
            }
            return switch (wider) {
                case TAKES_THE_SAME -> narrower.onWiderToo ? narrower.under(this) : this;
                case CAN_BE_CUT_DOWN -> narrower.under(this).cutDownTo(width);
                case ANOTHER_CLOTH -> this;
            };
        }

        private boolean isShorter(Cell other) {
            return isLaid() && other.isLaid() && marker.compareTo(other.marker) < 0;
        }

        /** Returns this marker on the cloth of another cell, of which it uses less if that is wider. */
        private Cell under(Cell wider) {
            return new Cell(
                    marker,
                    Length.min(lowerBound, wider.lowerBound),
                    needed,
                    efficiency * cuttable.millimetres() / wider.cuttable.millimetres(),
                    wider.cuttable,
                    laid,
                    wider.laidWidth,
                    onWiderToo,
                    Optional.empty(),
                    outlines,
                    "");
        }

        private Cell cutDownTo(Length width) {
            return new Cell(
                    marker,
                    lowerBound,
                    needed,
                    efficiency,
                    cuttable,
                    laid,
                    laidWidth,
                    onWiderToo,
                    Optional.of(width),
                    outlines,
                    "");
        }

        /** Returns the cell as it was worked out, as text for a file. */
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
                    Boolean.toString(onWiderToo),
                    reason.replaceAll("\\s+", " ")));
            lines.addAll(outlines);
            lines.add(END);
            return String.join("\n", lines) + "\n";
        }

        /** Reads such a text; empty if it is none, or not all of it. */
        public static Optional<Cell> parse(String text) {
            List<String> lines = text.lines().toList();
            int last = lines.size() - 1;
            if (last < 10 || !lines.get(0).equals(HEAD) || !lines.get(last).equals(END)) {
                return Optional.empty();
            }
            List<String> outlines = lines.subList(10, last);
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
                        lines.get(8).equals("true"),
                        Optional.empty(),
                        outlines,
                        lines.get(9)));
            } catch (NumberFormatException notOurs) {
                return Optional.empty();
            }
        }

        private static Length length(String micrometres) {
            return new Length(Long.parseLong(micrometres));
        }
    }
}
