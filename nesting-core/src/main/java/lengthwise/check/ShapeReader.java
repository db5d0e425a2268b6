package lengthwise.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Congruence;
import lengthwise.model.Length;
import lengthwise.model.PlacedPiece;

/**
 * Finds out from the outline alone how a piece lies: which of the eight flips and quarter turns of the ordered outline
 * it is, and if it is none of them, whether it is turned off grain or another shape.
 */
final class ShapeReader {
    /** Vertices that are turned by any angle are rounded to the grid: off by up to half its diagonal, on both sides. */
    private static final double GRID_ROUNDING = 2;
    /** Orientations of another shape that fit nearly as badly as the best one cannot be told from it. */
    private static final double NEARLY_AS_GOOD = 2;

    private final long tolerance;
    private final Map<Outline, List<Orientation>> symmetries = new HashMap<>();

    ShapeReader(Length tolerance) {
        this.tolerance = tolerance.micrometres();
    }

    /** The readings of a placed outline, nearest first, and what is wrong with its shape. */
    record Finding(List<Reading> readings, List<Violation> violations) {}

    /** Returns the orientations of {@code ordered} that the placed outline is, within the tolerance. */
    List<Reading> readings(Outline placed, Outline ordered) {
        return orientations()
                .flatMap(orientation -> exact(placed, ordered, orientation).stream())
                .findFirst()
                .or(() -> near(placed, ordered))
                .map(reading -> withSymmetries(reading, placed, ordered))
                .orElse(List.of());
    }

    /** Returns the orientations of {@code ordered} that the placed outline is when each is tilted by at most so many degrees. */
    List<Reading> tilted(Outline placed, Outline ordered, double mostDegrees) {
        List<Reading> readings = new ArrayList<>();
        for (Orientation orientation : mostDegrees > 0 ? orientations().toList() : List.<Orientation>of()) {
            Outline upright = orientation.apply(ordered);
            RigidFit fit = RigidFit.of(Boundary.of(placed), Boundary.of(upright));
            if (Math.abs(fit.degrees()) <= mostDegrees && fit.deviation() <= tolerance + GRID_ROUNDING) {
                Pose pose = new Pose(orientation, corner(placed).minus(corner(upright)));
                readings.add(new Reading(pose, 0, orientation.flipped() ? -fit.degrees() : fit.degrees()));
            }
        }
        return readings;
    }

    /** Returns how a placed piece lies that is none of the eight orientations of the ordered outline. */
    Finding nearest(PlacedPiece placed, Outline ordered) {
        Boundary lies = Boundary.of(placed.outline());
        List<Reading> upright = orientations()
                .map(orientation -> aligned(placed.outline(), ordered, orientation))
                .sorted(Comparator.comparingDouble(Reading::deviation))
                .toList();
        double least = upright.get(0).deviation();
        List<Reading> readings = upright.stream()
                .filter(reading -> reading.deviation() <= NEARLY_AS_GOOD * least + GRID_ROUNDING)
                .toList();
        RigidFit fit = readings.stream()
                .map(reading -> RigidFit.of(
                        lies, Boundary.of(reading.pose().orientation().apply(ordered))))
                .min(Comparator.comparingDouble(RigidFit::deviation))
                .orElseThrow();
        List<Violation> violations = new ArrayList<>();
        boolean turned = fit.deviation() < least / 2;
        if (turned) {
            violations.add(new Violation.OffGrain(placed, degreesFromQuarter(fit.degrees())));
        }
        if (!turned || fit.deviation() > tolerance + GRID_ROUNDING) {
            violations.add(new Violation.WrongShape(placed, (turned ? fit.deviation() : least) / 1000));
        }
        return new Finding(readings, violations);
    }

    private static double degreesFromQuarter(double degrees) {
        return Math.abs(degrees - 90 * Math.rint(degrees / 90));
    }

    private static Stream<Orientation> orientations() {
        return Stream.of(false, true)
                .flatMap(flipped -> Arrays.stream(QuarterTurn.values()).map(turn -> new Orientation(flipped, turn)));
    }

    private static Optional<Reading> exact(Outline placed, Outline ordered, Orientation orientation) {
        Outline turned = orientation.apply(ordered);
        Point offset = corner(placed).minus(corner(turned));
        return isSame(placed, turned.moved(offset))
                ? Optional.of(new Reading(new Pose(orientation, offset), 0))
                : Optional.empty();
    }

    private Optional<Reading> near(Outline placed, Outline ordered) {
        return orientations()
                .filter(orientation ->
                        isAsLarge(placed.box(), orientation.apply(ordered).box()))
                .map(orientation -> aligned(placed, ordered, orientation))
                .filter(reading -> reading.deviation() <= tolerance)
                .map(reading -> new Reading(reading.pose(), 0))
                .findFirst();
    }

    private boolean isAsLarge(Box a, Box b) {
        return Math.abs(a.width() - b.width()) <= 2 * tolerance && Math.abs(a.height() - b.height()) <= 2 * tolerance;
    }

    /** Adds the orientations that look the same, because the ordered outline is symmetric as well as it is drawn. */
    private List<Reading> withSymmetries(Reading reading, Outline placed, Outline ordered) {
        List<Reading> all = new ArrayList<>();
        all.add(reading);
        for (Orientation symmetry : symmetries.computeIfAbsent(ordered, ShapeReader::symmetriesOf)) {
            Orientation orientation = composed(reading.pose().orientation(), symmetry);
            Point offset = corner(placed).minus(corner(orientation.apply(ordered)));
            all.add(new Reading(new Pose(orientation, offset), 0));
        }
        return all;
    }

    private static List<Orientation> symmetriesOf(Outline outline) {
        return orientations()
                .filter(orientation -> !orientation.equals(Orientation.AS_DRAWN))
                .filter(orientation -> Congruence.byTranslation(outline, orientation.apply(outline)))
                .toList();
    }

    /** Returns the first, then the second: a flip turns a turn round. */
    private static Orientation composed(Orientation second, Orientation first) {
        QuarterTurn turn = second.flipped() ? first.turn().inverse() : first.turn();
        return new Orientation(
                second.flipped() != first.flipped(), second.turn().plus(turn));
    }

    private static Point corner(Outline outline) {
        return new Point(outline.box().minX(), outline.box().minY());
    }

    /**
     * Returns the reading that lays the two boundaries on each other: by a corner of their boxes, by the middle, or by
     * the middle and then the mean way between them, whichever leaves them nearest in the mean. So a vertex that was
     * moved is told with the whole way it was moved.
     */
    private static Reading aligned(Outline placed, Outline ordered, Orientation orientation) {
        Outline turned = orientation.apply(ordered);
        Boundary lies = Boundary.of(placed);
        List<Point> offsets = new ArrayList<>();
        for (int anchor = 0; anchor < 5; anchor++) {
            offsets.add(anchor(placed.box(), anchor).minus(anchor(turned.box(), anchor)));
        }
        double[] way = Boundary.of(turned.moved(offsets.get(0))).meanWay(lies);
        offsets.add(offsets.get(0).plus(new Point(Math.round(way[0]), Math.round(way[1]))));
        Point best = offsets.stream()
                .min(Comparator.comparingDouble(
                        offset -> Boundary.of(turned.moved(offset)).meanDistance(lies)))
                .orElseThrow();
        return new Reading(
                new Pose(orientation, best), Boundary.of(turned.moved(best)).deviation(lies));
    }

    /** Returns the middle of a box, then its corners. */
    private static Point anchor(Box box, int number) {
        return switch (number) {
            case 0 -> new Point(Math.floorDiv(box.minX() + box.maxX(), 2), Math.floorDiv(box.minY() + box.maxY(), 2));
            case 1 -> new Point(box.minX(), box.minY());
            case 2 -> new Point(box.maxX(), box.minY());
            case 3 -> new Point(box.maxX(), box.maxY());
            default -> new Point(box.minX(), box.maxY());
        };
    }

    private static boolean isSame(Outline a, Outline b) {
        return isSame(a.shell(), b.shell())
                && a.holes().size() == b.holes().size()
                && a.holes().stream().allMatch(hole -> b.holes().stream().anyMatch(other -> isSame(hole, other)));
    }

    /** Says whether two rings have the same vertices in the same order, whichever comes first. */
    private static boolean isSame(Ring a, Ring b) {
        if (a.size() != b.size()) {
            return false;
        }
        for (int first = 0; first < b.size(); first++) {
            if (a.vertex(0).equals(b.vertex(first))) {
                return isSameFrom(a, b, first);
            }
        }
        return false;
    }

    private static boolean isSameFrom(Ring a, Ring b, int first) {
        for (int i = 0; i < a.size(); i++) {
            if (!a.vertex(i).equals(b.vertex((first + i) % b.size()))) {
                return false;
            }
        }
        return true;
    }
}
