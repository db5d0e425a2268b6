package lengthwise.svg;

import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.DrawingException;

/**
 * Draws the data of a {@code path} in double precision. What stands before an error is drawn; the error is returned.
 *
 * <p>Reference: W3C, <i>Scalable Vector Graphics 1.1</i>, sections 8.3 and F.2.
 */
final class PathData {
    private static final String COMMANDS = "MmLlHhVvCcSsQqTtAaZz";

    private final String data;
    private final Scanner scanner;
    private final TransformedPen pen;

    private double x;
    private double y;
    private double startX;
    private double startY;
    /** The last control point, for the smooth commands, and whether it is of a cubic ('C'), a quadratic ('Q') or none. */
    private double controlX;

    private double controlY;
    private char controlOf;
    /** Whether the next command continues after a close, with no move of its own. */
    private boolean reopened;

    private PathData(String data, TransformedPen pen) {
        this.data = data;
        this.scanner = new Scanner(data);
        this.pen = pen;
    }

    /** Draws the data; returns where and how they break, if they do. */
    static Optional<String> draw(String data, TransformedPen pen) throws DrawingException {
        if (data.isBlank() || data.strip().equals("none")) {
            return Optional.empty();
        }
        return new PathData(data, pen).draw();
    }

    private Optional<String> draw() throws DrawingException {
        char command = 0;
        boolean begun = false;
        while (!scanner.atEnd()) {
            int at = scanner.position();
            char next = scanner.peek();
            if (Character.isLetter(next)) {
                command = scanner.take();
                if (COMMANDS.indexOf(command) < 0) {
                    return broken(at);
                }
            } else if (command == 0 || command == 'z' || command == 'Z') {
                return broken(at);
            }
            if (!begun && command != 'M' && command != 'm') {
                return Optional.of("do not begin with a move");
            }
            begun = true;
            Optional<double[]> numbers = numbers(command);
            if (numbers.isEmpty()) {
                return broken(scanner.position());
            }
            step(command, numbers.get());
            if (command == 'M' || command == 'm') {
                command = command == 'M' ? 'L' : 'l';
            }
        }
        return Optional.empty();
    }

    private Optional<String> broken(int at) {
        String rest = data.substring(at).strip();
        return Optional.of("break at character %d (%s)"
                .formatted(at + 1, rest.isEmpty() ? "it ends too soon" : "'" + rest.split("[\\s,]", 2)[0] + "'"));
    }

    private Optional<double[]> numbers(char command) {
        double[] numbers = new double[arguments(command)];
        for (int i = 0; i < numbers.length; i++) {
            boolean flag = numbers.length == 7 && (i == 3 || i == 4);
            OptionalDouble number = flag ? scanner.flag() : scanner.number();
            if (number.isEmpty()) {
                return Optional.empty();
            }
            numbers[i] = number.getAsDouble();
        }
        return Optional.of(numbers);
    }

    private static int arguments(char command) {
        return switch (Character.toUpperCase(command)) {
            case 'Z' -> 0;
            case 'H', 'V' -> 1;
            case 'M', 'L', 'T' -> 2;
            case 'S', 'Q' -> 4;
            case 'C' -> 6;
            default -> 7;
        };
    }

    private void step(char command, double[] n) throws DrawingException {
        boolean relative = Character.isLowerCase(command);
        double baseX = relative ? x : 0;
        double baseY = relative ? y : 0;
        char upper = Character.toUpperCase(command);
        if (reopened && upper != 'M' && upper != 'Z') {
            pen.moveTo(x, y);
            reopened = false;
        }
        char before = controlOf;
        controlOf = 0;
        switch (upper) {
            case 'M' -> {
                pen.moveTo(baseX + n[0], baseY + n[1]);
                moved(baseX + n[0], baseY + n[1]);
                startX = x;
                startY = y;
                reopened = false;
            }
            case 'L' -> line(baseX + n[0], baseY + n[1]);
            case 'H' -> line(baseX + n[0], y);
            case 'V' -> line(x, baseY + n[0]);
            case 'C' -> cubic(baseX + n[0], baseY + n[1], baseX + n[2], baseY + n[3], baseX + n[4], baseY + n[5]);
            case 'S' ->
                cubic(
                        before == 'C' ? 2 * x - controlX : x,
                        before == 'C' ? 2 * y - controlY : y,
                        baseX + n[0],
                        baseY + n[1],
                        baseX + n[2],
                        baseY + n[3]);
            case 'Q' -> quadratic(baseX + n[0], baseY + n[1], baseX + n[2], baseY + n[3]);
            case 'T' ->
                quadratic(
                        before == 'Q' ? 2 * x - controlX : x,
                        before == 'Q' ? 2 * y - controlY : y,
                        baseX + n[0],
                        baseY + n[1]);
            case 'A' -> {
                pen.arcTo(x, y, n[0], n[1], n[2], n[3] != 0, n[4] != 0, baseX + n[5], baseY + n[6]);
                moved(baseX + n[5], baseY + n[6]);
            }
            default -> {
                pen.close();
                moved(startX, startY);
                reopened = true;
            }
        }
    }

    private void line(double toX, double toY) throws DrawingException {
        pen.lineTo(toX, toY);
        moved(toX, toY);
    }

    private void cubic(double x1, double y1, double x2, double y2, double toX, double toY) throws DrawingException {
        pen.cubicTo(x1, y1, x2, y2, toX, toY);
        moved(toX, toY);
        control('C', x2, y2);
    }

    private void quadratic(double x1, double y1, double toX, double toY) throws DrawingException {
        pen.quadTo(x1, y1, toX, toY);
        moved(toX, toY);
        control('Q', x1, y1);
    }

    private void moved(double toX, double toY) {
        x = toX;
        y = toY;
    }

    private void control(char of, double atX, double atY) {
        controlOf = of;
        controlX = atX;
        controlY = atY;
    }
}
