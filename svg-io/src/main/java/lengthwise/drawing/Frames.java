package lengthwise.drawing;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;

/**
 * Finds frames: upright rectangles named so, of the size of the page, or around most of what is drawn, that hold other
 * outlines than a line of stitching or a mark.
 */
final class Frames {
    /** How near the edges of the page the sides of its frame lie, in micrometres. */
    private static final long PAGE_EDGE = 2_000;

    private final Drawing drawing;
    private final Nesting nesting;

    Frames(Drawing drawing, Nesting nesting) {
        this.drawing = drawing;
        this.nesting = nesting;
    }

    /** Returns the first frame, or nothing. Inside a frame there may be another. */
    Optional<Contour> first() {
        return nesting.roots().stream().filter(this::isFrame).findFirst();
    }

    private boolean isFrame(Contour root) {
        if (!root.isUprightRectangle()) {
            return false;
        }
        List<Contour> held = nesting.inside(root).stream()
                .filter(inner -> !inner.shape().equals(root.shape()))
                .filter(inner -> inner.area() >= Recognition.SMALLEST_PIECE)
                .filter(inner -> !isMark(inner, root))
                .toList();
        if (MarkKind.of(root.shape().names()).filter(MarkKind.FRAME::equals).isPresent()) {
            return !held.isEmpty() || isPageSized(root);
        }
        if (held.isEmpty()) {
            return false;
        }
        long others = nesting.roots().stream()
                        .filter(c -> c.area() >= Recognition.SMALLEST_PIECE)
                        .count()
                - 1;
        return isPageSized(root) || (held.size() >= 2 && held.size() > others && !sharesItsGroup(root, held));
    }

    private static boolean isMark(Contour inner, Contour root) {
        Optional<MarkKind> kind = MarkKind.of(inner.shape().names());
        boolean named =
                kind.filter(k -> k != MarkKind.CUT && k != MarkKind.FRAME).isPresent();
        return named || inner.shape().dashed() || SewLines.runsAlong(root, inner);
    }

    private boolean isPageSized(Contour root) {
        return drawing.pages().stream().anyMatch(page -> near(page, root.box()));
    }

    private static boolean near(Box page, Box root) {
        return Math.abs(root.minX() - page.minX()) <= PAGE_EDGE
                && Math.abs(root.minY() - page.minY()) <= PAGE_EDGE
                && Math.abs(root.maxX() - page.maxX()) <= PAGE_EDGE
                && Math.abs(root.maxY() - page.maxY()) <= PAGE_EDGE;
    }

    /** Says whether a named group holds the rectangle and all it encloses: then it is a piece with pockets on it. */
    private static boolean sharesItsGroup(Contour root, List<Contour> held) {
        return root.shape().groups().stream()
                .filter(group -> !group.layer() && group.names().spoken().isPresent())
                .anyMatch(group ->
                        held.stream().allMatch(inner -> inner.shape().groups().contains(group)));
    }
}
