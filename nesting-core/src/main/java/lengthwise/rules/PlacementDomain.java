package lengthwise.rules;

import java.util.List;
import java.util.Map;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;

/** Where a piece may lie: allowed orientations × allowed positions. Orientations keep their order in results. */
public record PlacementDomain(List<Orientation> orientations, Positions positions) {
    public PlacementDomain {
        orientations = List.copyOf(orientations);
        if (orientations.isEmpty()) {
            throw new IllegalArgumentException("A placement domain needs at least one orientation.");
        }
    }

    /** Allowed positions, within the strip. Points are in the frame of the piece, values in micrometres. */
    public sealed interface Positions {
        /** Anywhere in the strip. */
        record Free() implements Positions {}

        /**
         * An anchor of the piece must lie on a lattice of the strip: {@code origin + (i·stepX + halfDrop·j·stepX/2,
         * j·stepY)}, within {@code tolerance} along x and along y. A step of 0 leaves that axis free; where {@code
         * stepY} is 0, any j will do.
         */
        record Lattice(Point anchor, Point origin, long stepX, long stepY, boolean halfDrop, long tolerance)
                implements Positions {
            /** Returns the lattice moved by a way. */
            public Lattice moved(Point by) {
                return new Lattice(anchor, origin.plus(by), stepX, stepY, halfDrop, tolerance);
            }

            /** Returns the way to a point of the strip from the lattice point nearest to it; 0 along an axis that is free. */
            public Point off(Point point) {
                long row = stepY == 0 ? 0 : Math.floorDiv(2 * (point.y() - origin.y()) + stepY, 2 * stepY);
                long drop = halfDrop && stepY > 0 && Math.floorMod(row, 2) == 1 ? stepX / 2 : 0;
                long step = halfDrop && stepY == 0 ? stepX / 2 : stepX;
                long x = point.x() - origin.x() - drop;
                return new Point(
                        step == 0 ? 0 : x - step * Math.floorDiv(2 * x + step, 2 * step),
                        stepY == 0 ? 0 : point.y() - origin.y() - row * stepY);
            }
        }

        /**
         * The offset of the pose must lie in one of some boxes about a point of a lattice, which is that of {@link Lattice}.
         *
         * @param boxes from the lattice point, for every orientation; they may overlap, and one that is endless along an
         *     axis goes at least to ±{@link #ENDLESS} there
         */
        record Cells(Point origin, long stepX, long stepY, boolean halfDrop, Map<Orientation, List<Box>> boxes)
                implements Positions {
            /** Longer than any cloth. */
            public static final long ENDLESS = 1L << 40;

            public Cells {
                boxes = Map.copyOf(boxes);
            }

            /** Returns the boxes for an orientation. */
            public List<Box> at(Orientation way) {
                return boxes.getOrDefault(way, List.of());
            }

            /** Returns the same with its lattice moved by a way. */
            public Cells moved(Point by) {
                return new Cells(origin.plus(by), stepX, stepY, halfDrop, boxes);
            }
        }

        /** The anchor must lie on the line y = {@code y}: an edge on the fold. */
        record Line(Point anchor, long y) implements Positions {}

        /** The whole piece must lie between y = {@code fromY} and y = {@code toY}. */
        record Between(long fromY, long toY) implements Positions {}

        /** One or the other; both of them a {@link Line}, a {@link Between} or such a choice again. */
        record Either(Positions one, Positions other) implements Positions {}

        /** The whole piece must lie between x = {@code fromX} and x = {@code toX}. */
        record Window(long fromX, long toX) implements Positions {}

        /** The piece is laid already: its pose has this offset, and nothing moves it. It may reach out of the strip. */
        record Laid(Point offset) implements Positions {}
    }
}
