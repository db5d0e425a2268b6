package lengthwise.svg;

import lengthwise.geometry.Point;
import lengthwise.model.Axis;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Repeat;

/**
 * Where a matched print comes again, as thin lines over the cuttable area: they cross at the points of the print that match
 * points fall on. Drawn along those axes only along which it matters where the print lies.
 */
final class RepeatGrid {
    /** More lines are no picture but a grey. */
    private static final long MOST_LINES = 5_000;

    private final Repeat repeat;
    private final long length;
    private final long width;
    private final Point corner;
    private final StringBuilder path = new StringBuilder();

    private RepeatGrid(Marker marker, Repeat repeat, Point corner) {
        this.repeat = repeat;
        this.length = marker.length().micrometres();
        this.width = marker.order().fabric().cuttableWidth().micrometres();
        this.corner = corner;
    }

    /** Returns the path, or nothing where no match point has a place of its own in the print. */
    static String path(Marker marker, Point corner) {
        MarkerOrder order = marker.order();
        boolean lengthwise = order.hasPlaceInPrint(Axis.LENGTHWISE);
        boolean crosswise = order.hasPlaceInPrint(Axis.CROSSWISE);
        if (!lengthwise && !crosswise) {
            return "";
        }
        RepeatGrid grid = new RepeatGrid(marker, order.fabric().repeatOnTable().orElseThrow(), corner);
        return grid.draw(lengthwise, crosswise);
    }

    private String draw(boolean lengthwise, boolean crosswise) {
        long along = repeat.lengthwise().micrometres();
        long across = repeat.crosswise().micrometres();
        long columns = lengthwise ? length / along + 1 : 1;
        long rows = crosswise ? width / across + 1 : 1;
        boolean drops = repeat.halfDrop() && lengthwise && crosswise;
        if ((drops ? columns * rows : columns + rows) > MOST_LINES) {
            return "";
        }
        if (crosswise) {
            for (long y = first(repeat.originY().micrometres(), across); y <= width; y += across) {
                line(0, y, length, y);
            }
        }
        if (drops) {
            dropped(along, across);
        } else if (lengthwise) {
            for (long x = first(repeat.originX().micrometres(), along); x <= length; x += along) {
                line(x, 0, x, width);
            }
        }
        return path.toString().strip();
    }

    /** Every column has lines of its own, from half a repeat before its middle to half a repeat behind it. */
    private void dropped(long along, long across) {
        long origin = repeat.originY().micrometres();
        for (long column = Math.floorDiv(-origin, across); origin + column * across - across / 2 <= width; column++) {
            long middle = origin + column * across;
            long from = Math.max(0, middle - across / 2);
            long to = Math.min(width, middle + across / 2);
            long start = repeat.originX().micrometres() + (Math.floorMod(column, 2) == 1 ? along / 2 : 0);
            for (long x = first(start, along); x <= length && from < to; x += along) {
                line(x, from, x, to);
            }
        }
    }

    private static long first(long origin, long step) {
        return Math.floorMod(origin, step);
    }

    private void line(long fromX, long fromY, long toX, long toY) {
        path.append("M%s %s L%s %s "
                .formatted(
                        Millimetres.of(fromX + corner.x()),
                        Millimetres.of(fromY + corner.y()),
                        Millimetres.of(toX + corner.x()),
                        Millimetres.of(toY + corner.y())));
    }
}
