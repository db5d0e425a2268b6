package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.JtsOracle;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.rules.Bond;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Obstacle;
import lengthwise.rules.PlacementDomain.Positions;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.relateng.RelateNG;

/** Judges a layout by the definitions, with JTS relations on the placed outlines; shares no code with the search. */
final class LegalLayout {
    private LegalLayout() {}

    static void check(LayoutTask task, Layout layout) {
        assertThat(layout.poses()).hasSameSizeAs(task.demands());
        List<Outline> placed = new java.util.ArrayList<>();
        for (int i = 0; i < task.demands().size(); i++) {
            placed.add(layout.poses().get(i).apply(task.demands().get(i).outline()));
        }
        long end = placed.stream().mapToLong(o -> o.box().maxX()).max().orElse(0);
        assertThat(layout.length()).as("length").isEqualTo(end);
        for (int i = 0; i < placed.size(); i++) {
            Demand demand = task.demands().get(i);
            Box box = placed.get(i).box();
            assertThat(new Box(0, 0, layout.length(), task.height()).contains(box))
                    .as("demand %d inside the strip: %s", i, box)
                    .isTrue();
            assertThat(demand.domain().orientations())
                    .contains(layout.poses().get(i).orientation());
            int number = i;
            boolean latticeMoves = task.bonds().stream()
                    .anyMatch(bond -> bond instanceof Bond.SamePhase phase
                            && phase.members().contains(number));
            if (!latticeMoves) {
                checkPosition(i, demand.domain().positions(), layout, box);
            }
            for (Obstacle obstacle : task.obstacles()) {
                assertThat(meet(placed.get(i), obstacle.region()))
                        .as("demand %d on an obstacle", i)
                        .isFalse();
            }
            for (int j = 0; j < i; j++) {
                checkPair(task, i, j, placed.get(i), placed.get(j));
            }
        }
        for (Bond bond : task.bonds()) {
            if (bond instanceof Bond.SamePhase phase) {
                checkPhase(task, phase, layout);
                continue;
            }
            List<QuarterTurn> turns = ((Bond.SameTurn) bond)
                    .members().stream()
                            .map(m -> layout.poses().get(m).orientation().turn())
                            .distinct()
                            .toList();
            assertThat(turns).as("turns of %s", bond).hasSize(1);
        }
    }

    /** Any two anchors are a way between lattice points apart, as far as both may be off. */
    private static void checkPhase(LayoutTask task, Bond.SamePhase phase, Layout layout) {
        for (int one : phase.members()) {
            for (int other : phase.members()) {
                Positions.Lattice a =
                        (Positions.Lattice) task.demands().get(one).domain().positions();
                Positions.Lattice b =
                        (Positions.Lattice) task.demands().get(other).domain().positions();
                Point way = offset(a, one, phase, layout).minus(offset(b, other, phase, layout));
                checkOnLattice(one, way, a, a.tolerance() + b.tolerance());
            }
        }
    }

    private static Point offset(Positions.Lattice lattice, int demand, Bond.SamePhase phase, Layout layout) {
        Point at = layout.poses().get(demand).apply(lattice.anchor()).minus(lattice.origin());
        return phase.mirrored().contains(demand) ? new Point(at.x(), -at.y()) : at;
    }

    private static void checkPair(LayoutTask task, int i, int j, Outline a, Outline b) {
        long gap = Math.max(task.demands().get(i).gap(), task.demands().get(j).gap());
        Box near = a.box();
        if (new Box(near.minX() - gap, near.minY() - gap, near.maxX() + gap, near.maxY() + gap).overlaps(b.box())) {
            Outline shellA = Outline.of(a.shell());
            Outline shellB = Outline.of(b.shell());
            assertThat(meet(shellA, shellB))
                    .as("demands %d and %d overlap", j, i)
                    .isFalse();
            if (gap > 0) {
                assertThat(JtsOracle.distance(a.shell(), b.shell()))
                        .as("distance of demands %d and %d", j, i)
                        .isGreaterThan(gap - 1e-6);
            }
        }
    }

    private static void checkPosition(int i, Positions positions, Layout layout, Box box) {
        if (positions instanceof Positions.Line line) {
            assertThat(layout.poses().get(i).apply(line.anchor()).y())
                    .as("demand %d on its line", i)
                    .isEqualTo(line.y());
        } else if (positions instanceof Positions.Window window) {
            assertThat(box.minX()).isGreaterThanOrEqualTo(window.fromX());
            assertThat(box.maxX()).isLessThanOrEqualTo(window.toX());
        } else if (positions instanceof Positions.Lattice lattice) {
            Point at = layout.poses().get(i).apply(lattice.anchor()).minus(lattice.origin());
            checkOnLattice(i, at, lattice, lattice.tolerance());
        } else if (positions instanceof Positions.Cells cells) {
            assertThat(isInCells(layout.poses().get(i), cells))
                    .as("demand %d in a cell: %s", i, layout.poses().get(i))
                    .isTrue();
        }
    }

    /** Looks at every lattice point from which a box could reach the pose. */
    private static boolean isInCells(Pose pose, Positions.Cells cells) {
        for (Box box : cells.at(pose.orientation())) {
            Point from = pose.offset().minus(cells.origin());
            for (long j = (from.y() - box.maxY()) / cells.stepY() - 1;
                    j * cells.stepY() <= from.y() - box.minY();
                    j++) {
                long drop = cells.halfDrop() && j % 2 != 0 ? cells.stepX() / 2 : 0;
                for (long i = (from.x() - box.maxX()) / cells.stepX() - 2;
                        i * cells.stepX() + drop <= from.x() - box.minX();
                        i++) {
                    if (box.moved(new Point(i * cells.stepX() + drop, j * cells.stepY()))
                            .contains(from)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static void checkOnLattice(int i, Point at, Positions.Lattice lattice, long tolerance) {
        long row = lattice.stepY() == 0 ? 0 : Math.round(at.y() / (double) lattice.stepY());
        double drop = lattice.halfDrop() && row % 2 != 0 ? lattice.stepX() / 2.0 : 0;
        if (lattice.stepY() > 0) {
            assertThat(Math.abs(at.y() - row * lattice.stepY())).isLessThanOrEqualTo(tolerance);
        }
        if (lattice.stepX() > 0) {
            // without rows any column will do, also those that are moved by half
            double step = lattice.halfDrop() && lattice.stepY() == 0 ? lattice.stepX() / 2.0 : lattice.stepX();
            double off = (at.x() - drop) / step;
            assertThat(Math.abs(off - Math.rint(off)) * step)
                    .as("demand %d off the lattice", i)
                    .isLessThanOrEqualTo(tolerance + 1e-6);
        }
    }

    private static boolean meet(Outline a, Outline b) {
        return RelateNG.relate(polygon(a), polygon(b), "T********");
    }

    private static Polygon polygon(Outline outline) {
        GeometryFactory factory = new GeometryFactory();
        return factory.createPolygon(
                factory.createLinearRing(JtsOracle.polygon(outline.shell()).getCoordinates()),
                outline.holes().stream()
                        .map(hole -> {
                            Coordinate[] closed = JtsOracle.polygon(hole).getCoordinates();
                            return factory.createLinearRing(closed);
                        })
                        .toArray(LinearRing[]::new));
    }
}
