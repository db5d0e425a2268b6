package lengthwise.drawing;

import java.util.List;
import lengthwise.geometry.Point;

/**
 * One line of lettering.
 *
 * @param middle about the middle of the line, by an estimate of its length
 * @param radians the direction of reading, from +x towards +y
 * @param groups what holds it, outermost first
 */
public record DrawnText(
        String words, Point middle, double radians, Names names, List<Group> groups, boolean visible, String place) {
    public DrawnText {
        groups = List.copyOf(groups);
    }
}
