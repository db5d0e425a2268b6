package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.JtsOracle;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
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
            checkPosition(i, demand.domain().positions(), layout, box);
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
            List<QuarterTurn> turns = ((Bond.SameTurn) bond)
                    .members().stream()
                            .map(m -> layout.poses().get(m).orientation().turn())
                            .distinct()
                            .toList();
            assertThat(turns).as("turns of %s", bond).hasSize(1);
        }
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
            long row = lattice.stepY() == 0 ? 0 : Math.round(at.y() / (double) lattice.stepY());
            double drop = lattice.halfDrop() && row % 2 != 0 ? lattice.stepX() / 2.0 : 0;
            if (lattice.stepY() > 0) {
                assertThat(Math.abs(at.y() - row * lattice.stepY())).isLessThanOrEqualTo(lattice.tolerance());
            }
            if (lattice.stepX() > 0) {
                double off = (at.x() - drop) / lattice.stepX();
                assertThat(Math.abs(off - Math.rint(off)) * lattice.stepX())
                        .as("demand %d off the lattice", i)
                        .isLessThanOrEqualTo(lattice.tolerance() + 1e-6);
            }
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
