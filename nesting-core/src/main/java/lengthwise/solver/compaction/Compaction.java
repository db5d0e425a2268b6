package lengthwise.solver.compaction;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.ortools.Natives;

/**
 * Moves all bodies of a layout at once so that small overlaps vanish and the layout becomes shorter: a linear program
 * whose variables are displacements and the length. Every pair that can meet stays in a convex region of the complement
 * of its no-fit polygon ({@link HalfPlanes}); what overlaps now may do so at a high price.
 *
 * <p>Reference: Z. Li, V. Milenkovic, <i>Compaction and separation algorithms for non-convex polygons and their
 * applications</i>, EJOR 84, 1995. Solved by GLOP, which gives the same answer every time.
 */
public final class Compaction {
    private static final double PRICE_OF_OVERLAP = 100;
    private static final double NO_OVERLAP = 1e-3;

    private Compaction() {}

    /** Says whether linear programs can be solved here; loads the native library when first asked. */
    public static boolean isAvailable() {
        return Natives.areLoaded();
    }

    /**
     * Solves one program.
     *
     * @param bodies movable ones and obstacles
     * @param length the strip may not be longer, in micrometres
     * @param step how far a body may move along x and along y
     * @param tightening by how much rows that do not run along an axis are made stricter, against rounding
     * @param spans what has to stay near to what
     * @return the bodies where they go, not rounded; nothing if overlaps remain
     */
    public static Optional<List<Body>> solve(
            List<Body> bodies, double length, double step, double tightening, List<Span> spans) {
        MPSolver solver = MPSolver.createSolver("GLOP");
        if (solver == null) {
            return Optional.empty();
        }
        try {
            return new Program(solver, bodies, length, step, tightening, spans).solution();
        } finally {
            solver.delete();
        }
    }

    private static final class Program {
        private final MPSolver solver;
        private final List<Body> bodies;
        private final double step;
        private final double tightening;
        private final MPVariable[] moveX;
        private final MPVariable[] moveY;
        private final List<MPVariable> overlaps = new ArrayList<>();

        Program(MPSolver solver, List<Body> bodies, double length, double step, double tightening, List<Span> spans) {
            this.solver = solver;
            this.bodies = bodies;
            this.step = step;
            this.tightening = tightening;
            this.moveX = new MPVariable[bodies.size()];
            this.moveY = new MPVariable[bodies.size()];
            MPVariable end = solver.makeNumVar(0, length, "");
            MPObjective objective = solver.objective();
            objective.setCoefficient(end, 1);
            double pull = 1e-3 / bodies.size();
            for (int i = 0; i < bodies.size(); i++) {
                Body body = bodies.get(i);
                if (body.movable()) {
                    moveX[i] = move(body.x(), body.lowX(), body.highX());
                    moveY[i] = move(body.y(), body.lowY(), body.highY());
                    objective.setCoefficient(moveX[i], pull);
                    MPConstraint inside = solver.makeConstraint(body.x() + body.end(), MPSolver.infinity());
                    inside.setCoefficient(end, 1);
                    inside.setCoefficient(moveX[i], -1);
                }
            }
            HalfPlanes planes = new HalfPlanes();
            for (int i = 0; i < bodies.size(); i++) {
                for (int j = i + 1; j < bodies.size(); j++) {
                    if (bodies.get(i).movable() || bodies.get(j).movable()) {
                        planes.find(bodies.get(i), bodies.get(j), step);
                        for (int k = 0; k < planes.size; k++) {
                            keepApart(i, j, planes.nx[k], planes.ny[k], planes.least[k]);
                        }
                    }
                }
            }
            for (Span span : spans) {
                keepApart(span.last(), span.first(), span.alongX() ? 1 : 0, span.alongX() ? 0 : 1, -span.most());
            }
            objective.setMinimization();
        }

        private MPVariable move(double at, double low, double high) {
            return solver.makeNumVar(
                    Math.min(0, Math.max(-step, low - at)), Math.max(0, Math.min(step, high - at)), "");
        }

        private void keepApart(int i, int j, double nx, double ny, double least) {
            boolean alongAxis = Math.abs(nx) < 1e-12 || Math.abs(ny) < 1e-12;
            double now = nx * (bodies.get(j).x() - bodies.get(i).x())
                    + ny * (bodies.get(j).y() - bodies.get(i).y());
            double missing = least - now + (alongAxis ? 0 : tightening);
            MPConstraint row = solver.makeConstraint(missing, MPSolver.infinity());
            setMove(row, i, -nx, -ny);
            setMove(row, j, nx, ny);
            if (missing > 0) {
                MPVariable overlap = solver.makeNumVar(0, MPSolver.infinity(), "");
                row.setCoefficient(overlap, 1);
                solver.objective().setCoefficient(overlap, PRICE_OF_OVERLAP);
                overlaps.add(overlap);
            }
        }

        private void setMove(MPConstraint row, int i, double nx, double ny) {
            if (moveX[i] != null) {
                row.setCoefficient(moveX[i], nx);
                row.setCoefficient(moveY[i], ny);
            }
        }

        Optional<List<Body>> solution() {
            MPSolver.ResultStatus status = solver.solve();
            if (status != MPSolver.ResultStatus.OPTIMAL
                    || overlaps.stream().anyMatch(overlap -> overlap.solutionValue() > NO_OVERLAP)) {
                return Optional.empty();
            }
            List<Body> moved = new ArrayList<>();
            for (int i = 0; i < bodies.size(); i++) {
                Body body = bodies.get(i);
                moved.add(
                        body.movable()
                                ? body.at(body.x() + moveX[i].solutionValue(), body.y() + moveY[i].solutionValue())
                                : body);
            }
            return Optional.of(moved);
        }
    }
}
