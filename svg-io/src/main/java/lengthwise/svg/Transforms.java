package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads a {@code transform} attribute, or the transform property of a style with its units.
 *
 * <p>Reference: W3C, <i>Scalable Vector Graphics 1.1</i>, section 7.6; <i>CSS Transforms Level 1</i>, section 12.
 */
final class Transforms {
    private Transforms() {}

    /** Returns the transform; empty if the text is none. The rightmost item acts first. */
    static Optional<AffineTransform> parse(String text) {
        AffineTransform result = new AffineTransform();
        Scanner scanner = new Scanner(text);
        while (!scanner.atEnd()) {
            StringBuilder name = new StringBuilder();
            while (Character.isLetter(scanner.peek()) || Character.isDigit(scanner.peek())) {
                name.append(scanner.take());
            }
            while (Character.isWhitespace(scanner.peek())) {
                scanner.take();
            }
            if (scanner.peek() != '(') {
                return name.toString().equals("none") ? Optional.of(result) : Optional.empty();
            }
            scanner.take();
            List<Double> numbers = new ArrayList<>();
            while (!scanner.atEnd() && scanner.peek() != ')') {
                OptionalDouble number = scanner.number();
                if (number.isEmpty()) {
                    return Optional.empty();
                }
                Optional<Double> factor = unitFactor(scanner);
                if (factor.isEmpty()) {
                    return Optional.empty();
                }
                numbers.add(number.getAsDouble() * factor.get());
            }
            if (scanner.peek() != ')') {
                return Optional.empty();
            }
            scanner.take();
            Optional<AffineTransform> item = item(name.toString(), numbers);
            if (item.isEmpty()) {
                return Optional.empty();
            }
            result.concatenate(item.get());
        }
        return Optional.of(result);
    }

    private static Optional<Double> unitFactor(Scanner scanner) {
        StringBuilder unit = new StringBuilder();
        while (Character.isLetter(scanner.peek())) {
            unit.append(scanner.take());
        }
        return switch (unit.toString()) {
            case "", "px", "deg" -> Optional.of(1.0);
            case "rad" -> Optional.of(180 / Math.PI);
            case "grad" -> Optional.of(0.9);
            case "turn" -> Optional.of(360.0);
            default -> SvgLength.parse("1" + unit).filter(SvgLength::isPhysical).map(length -> length.userUnits(0));
        };
    }

    private static Optional<AffineTransform> item(String name, List<Double> n) {
        return Optional.ofNullable(
                switch (name + "/" + n.size()) {
                    case "matrix/6" -> new AffineTransform(n.get(0), n.get(1), n.get(2), n.get(3), n.get(4), n.get(5));
                    case "translate/1", "translateX/1" -> AffineTransform.getTranslateInstance(n.get(0), 0);
                    case "translateY/1" -> AffineTransform.getTranslateInstance(0, n.get(0));
                    case "translate/2" -> AffineTransform.getTranslateInstance(n.get(0), n.get(1));
                    case "scale/1" -> AffineTransform.getScaleInstance(n.get(0), n.get(0));
                    case "scaleX/1" -> AffineTransform.getScaleInstance(n.get(0), 1);
                    case "scaleY/1" -> AffineTransform.getScaleInstance(1, n.get(0));
                    case "scale/2" -> AffineTransform.getScaleInstance(n.get(0), n.get(1));
                    case "rotate/1" -> rotation(n.get(0));
                    case "rotate/3" -> {
                        AffineTransform about = AffineTransform.getTranslateInstance(n.get(1), n.get(2));
                        about.concatenate(rotation(n.get(0)));
                        about.translate(-n.get(1), -n.get(2));
                        yield about;
                    }
                    case "skewX/1" -> AffineTransform.getShearInstance(StrictMath.tan(Math.toRadians(n.get(0))), 0);
                    case "skewY/1" -> AffineTransform.getShearInstance(0, StrictMath.tan(Math.toRadians(n.get(0))));
                    default -> null;
                });
    }

    /** Quarter turns are exact; other angles are the same on every machine. */
    private static AffineTransform rotation(double degrees) {
        if (degrees % 90 == 0) {
            return AffineTransform.getQuadrantRotateInstance((int) (degrees % 360 / 90));
        }
        double radians = Math.toRadians(degrees);
        double cos = StrictMath.cos(radians);
        double sin = StrictMath.sin(radians);
        return new AffineTransform(cos, sin, -sin, cos, 0, 0);
    }
}
