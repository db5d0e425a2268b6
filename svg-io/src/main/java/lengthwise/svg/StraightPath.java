package lengthwise.svg;

import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Reads path data that has straight lines only, in double precision: absolute and relative, with lines left out after
 * a command, as drawing programs rewrite them.
 *
 * <p>Reference: W3C, <i>Scalable Vector Graphics 1.1</i>, section 8.3.
 */
final class StraightPath {
    private static final int MOST_VERTICES = 1_000_000;

    private final Scanner scanner;
    private final List<Ring> rings = new ArrayList<>();
    private List<Point2D.Double> open = new ArrayList<>();
    private double x;
    private double y;
    private int vertices;

    private StraightPath(String data) {
        scanner = new Scanner(data);
    }

    /** One closed subpath; the first vertex is not repeated. */
    record Ring(List<Point2D.Double> vertices) {}

    /** Thrown for data that is no chain of closed straight lines; the message ends a sentence that begins with "it". */
    static final class Broken extends Exception {
        private static final long serialVersionUID = 1;

        Broken(String message) {
            super(message);
        }
    }

    static List<Ring> rings(String data) throws Broken {
        return new StraightPath(data).read();
    }

    private List<Ring> read() throws Broken {
        char command = 0;
        while (!scanner.atEnd()) {
            char next = scanner.peek();
            if (Character.isLetter(next)) {
                command = scanner.take();
            } else if (command == 0 || command == 'Z' || command == 'z') {
                throw new Broken("does not begin with a move");
            }
            step(command);
            command = command == 'M' ? 'L' : command == 'm' ? 'l' : command;
        }
        end(false);
        return rings;
    }

    private void step(char command) throws Broken {
        boolean relative = Character.isLowerCase(command);
        switch (Character.toUpperCase(command)) {
            case 'M' -> {
                end(false);
                to(number() + (relative ? x : 0), number() + (relative ? y : 0));
            }
            case 'L' -> to(number() + (relative ? x : 0), number() + (relative ? y : 0));
            case 'H' -> to(number() + (relative ? x : 0), y);
            case 'V' -> to(x, number() + (relative ? y : 0));
            case 'Z' -> end(true);
            case 'C', 'S', 'Q', 'T', 'A' ->
                throw new Broken(
                        "has a curve, and a cut line of a marker has straight lines only; undo what was done to it but"
                                + " moving, turning or mirroring");
            default -> throw new Broken("has the letter '" + command + "', which no path knows");
        }
    }

    private void to(double toX, double toY) throws Broken {
        if (++vertices > MOST_VERTICES) {
            throw new Broken("has more than " + MOST_VERTICES + " vertices");
        }
        x = toX;
        y = toY;
        open.add(new Point2D.Double(x, y));
    }

    private void end(boolean closed) throws Broken {
        if (open.isEmpty()) {
            return;
        }
        Point2D.Double first = open.get(0);
        boolean back = open.size() > 1 && open.get(open.size() - 1).equals(first);
        if (!closed && !back) {
            throw new Broken("is not closed");
        }
        if (back) {
            open.remove(open.size() - 1);
        }
        if (open.size() < 3) {
            throw new Broken("has a part of fewer than three vertices");
        }
        rings.add(new Ring(List.copyOf(open)));
        open = new ArrayList<>();
        x = first.x;
        y = first.y;
    }

    private double number() throws Broken {
        int at = scanner.position();
        OptionalDouble number = scanner.number();
        if (number.isEmpty()) {
            throw new Broken(String.format(Locale.ROOT, "breaks off at character %d", at + 1));
        }
        return number.getAsDouble();
    }
}
