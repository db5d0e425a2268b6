package lengthwise.toolpath;

import java.time.Duration;
import java.util.List;
import lengthwise.drawing.DrawingException;
import lengthwise.geometry.Point;
import lengthwise.svg.MarkerDrawing;

/** The passes of a tool in order. It begins at the corner of the cuttable area, 0, 0, and stays where it ends. */
public record ToolPath(List<Pass> passes) {
    public ToolPath {
        passes = List.copyOf(passes);
    }

    /**
     * Returns the way through a marker: slits for notches, drill holes and holes of a piece before its outline, what lies
     * in a hole before the hole, pieces near to near. Nothing is cut on a fold, nor of pieces that are cut already.
     *
     * @throws DrawingException if nothing is to be cut, pieces overlap or leave no room for the kerf, or a piece is too
     *     narrow for it
     */
    public static ToolPath of(MarkerDrawing marker, Kerf kerf) throws DrawingException {
        return new ToolPath(new PassOrder(Contours.of(marker, kerf)).passes());
    }

    /** Returns how far the tool cuts, in micrometres. */
    public double cutLength() {
        return passes.stream().mapToDouble(Pass::length).sum();
    }

    /** Returns how far the tool goes lifted, in micrometres. */
    public double travelLength() {
        double sum = 0;
        Point at = Point.ORIGIN;
        for (Pass pass : passes) {
            sum += at.distance(pass.start());
            at = pass.end();
        }
        return sum;
    }

    /**
     * Returns how long it takes at one speed, cutting and lifted: what a machine needs to start, stop and lift comes on
     * top.
     *
     * @param speed in millimetres a second, above 0
     */
    public Duration time(double speed) {
        return Duration.ofMillis(StrictMath.round((cutLength() + travelLength()) / speed));
    }
}
