package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import lengthwise.drawing.Group;

/** How an element is drawn: what it inherits from where it stands. */
record Setting(
        AffineTransform toPage, double viewWidth, double viewHeight, Style style, List<Group> groups, int depth) {
    Setting with(AffineTransform map) {
        AffineTransform combined = new AffineTransform(toPage);
        combined.concatenate(map);
        return new Setting(combined, viewWidth, viewHeight, style, groups, depth);
    }

    Setting in(Group group) {
        List<Group> more = new ArrayList<>(groups);
        more.add(group);
        return new Setting(toPage, viewWidth, viewHeight, style, more, depth);
    }

    Setting showing(double width, double height) {
        return new Setting(toPage, width, height, style, groups, depth);
    }
}
