package lengthwise.model;

import java.math.BigDecimal;
import java.math.RoundingMode;
import lengthwise.geometry.Orientation;

/** How far a laid piece is off its grain, in words for people. */
public final class TiltWords {
    private TiltWords() {}

    /** Returns "turned 0.57° clockwise", as it looks on the marker; empty for a piece on its grain. */
    public static String of(Placement placement) {
        Orientation lies = placement.pose().orientation();
        if (!lies.isTilted()) {
            return "";
        }
        // y runs down the marker, so that from +x to +y is clockwise
        boolean clockwise = lies.tilt() > 0 != lies.flipped();
        return "turned %s° %s"
                .formatted(degrees(Math.abs(lies.tilt()) / 1e6), clockwise ? "clockwise" : "anticlockwise");
    }

    /** Returns an angle to a hundredth of a degree. */
    public static String degrees(double degrees) {
        return BigDecimal.valueOf(degrees)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
