package lengthwise.geometry;

import java.util.List;
import java.util.function.UnaryOperator;

/**
 * The area inside a shell and outside its holes. The shell is kept with positive area, holes with negative area, so
 * that the inside is always on the same hand.
 */
public record Outline(Ring shell, List<Ring> holes) {
    public Outline {
        shell = shell.positive();
        holes = holes.stream().map(hole -> hole.positive().reversed()).toList();
    }

    public static Outline of(Ring shell) {
        return new Outline(shell, List.of());
    }

    /** Returns twice the area of the shell less that of the holes, in µm². */
    public long doubleArea() {
        return shell.doubleArea() + holes.stream().mapToLong(Ring::doubleArea).sum();
    }

    /** Returns the area in mm². */
    public double squareMillimetres() {
        return doubleArea() / 2e6;
    }

    public Box box() {
        return shell.box();
    }

    public Outline moved(Point by) {
        return new Outline(
                shell.moved(by), holes.stream().map(hole -> hole.moved(by)).toList());
    }

    /** Returns the image under a map that may mirror; the orientation of the rings is restored. */
    public Outline mapped(UnaryOperator<Point> map) {
        return new Outline(
                shell.mapped(map), holes.stream().map(hole -> hole.mapped(map)).toList());
    }
}
