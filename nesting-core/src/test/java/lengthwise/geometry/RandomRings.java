package lengthwise.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Seeded simple rings for tests. */
public final class RandomRings {
    private RandomRings() {}

    /** Returns a star-shaped ring: random radii at random directions, on the grid, about the origin. */
    public static Ring star(SplittableRandom random, int vertices, long least, long most) {
        while (true) {
            List<Point> points = new ArrayList<>();
            double angle = random.nextDouble();
            for (int i = 0; i < vertices; i++) {
                double radius = least + (most - least) * random.nextDouble();
                angle += 2 * Math.PI / vertices * (0.6 + 0.8 * random.nextDouble());
                points.add(new Point(Math.round(radius * Math.cos(angle)), Math.round(radius * Math.sin(angle))));
            }
            Ring ring = Ring.of(points).positive();
            if (angle < 1 + 2 * Math.PI * 0.95 && isSimple(ring)) {
                return ring;
            }
        }
    }

    /** Returns a staircase ring on a coarse lattice: many right angles, flat vertices and exact contacts. */
    public static Ring staircase(SplittableRandom random, int steps, long unit) {
        List<Point> points = new ArrayList<>();
        points.add(new Point(0, 0));
        points.add(new Point(steps * unit, 0));
        long y = 0;
        for (int i = steps; i > 0; i--) {
            y = unit * (1 + random.nextInt(4));
            points.add(new Point(i * unit, y));
            points.add(new Point((i - 1) * unit, y));
        }
        return Ring.of(points.stream().distinct().toList()).withoutFlatVertices();
    }

    private static boolean isSimple(Ring ring) {
        for (int i = 0; i < ring.size(); i++) {
            for (int j = i + 1; j < ring.size(); j++) {
                if (ring.vertex(i).equals(ring.vertex(j))) {
                    return false;
                }
            }
        }
        return ring.doubleArea() > 0 && JtsOracle.polygon(ring).isValid();
    }
}
