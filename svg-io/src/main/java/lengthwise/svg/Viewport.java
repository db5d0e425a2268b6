package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Fits the {@code viewBox} of an element into its place.
 *
 * <p>Reference: W3C, <i>Scalable Vector Graphics 1.1</i>, sections 7.7 and 7.8.
 */
final class Viewport {
    private Viewport() {}

    /** The part of the user space that is shown. */
    record ViewBox(double x, double y, double width, double height) {
        /** Returns the view box that an attribute states; empty if it states none of positive size. */
        static Optional<ViewBox> parse(String text) {
            Scanner scanner = new Scanner(text);
            double[] numbers = new double[4];
            for (int i = 0; i < 4; i++) {
                OptionalDouble number = scanner.number();
                if (number.isEmpty()) {
                    return Optional.empty();
                }
                numbers[i] = number.getAsDouble();
            }
            return numbers[2] > 0 && numbers[3] > 0
                    ? Optional.of(new ViewBox(numbers[0], numbers[1], numbers[2], numbers[3]))
                    : Optional.empty();
        }
    }

    /** Returns the map from the view box to a rectangle of this size at the origin. */
    static AffineTransform fit(ViewBox box, double width, double height, String preserveAspectRatio) {
        boolean stretched = preserveAspectRatio.contains("none");
        boolean slice = preserveAspectRatio.contains("slice");
        double scaleX = width / box.width;
        double scaleY = height / box.height;
        double shiftX = 0;
        double shiftY = 0;
        if (!stretched) {
            double scale = slice ? Math.max(scaleX, scaleY) : Math.min(scaleX, scaleY);
            scaleX = scale;
            scaleY = scale;
            shiftX = (width - scale * box.width) * share(preserveAspectRatio, "xMin", "xMax");
            shiftY = (height - scale * box.height) * share(preserveAspectRatio, "YMin", "YMax");
        }
        AffineTransform fit = new AffineTransform(scaleX, 0, 0, scaleY, shiftX, shiftY);
        fit.translate(-box.x, -box.y);
        return fit;
    }

    private static double share(String align, String min, String max) {
        return align.contains(min) ? 0 : align.contains(max) ? 1 : 0.5;
    }
}
