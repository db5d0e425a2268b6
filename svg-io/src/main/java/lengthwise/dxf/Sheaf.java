package lengthwise.dxf;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawnShape;
import lengthwise.drawing.DrawnText;
import lengthwise.drawing.Group;
import lengthwise.drawing.Names;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/** What is drawn together: a piece with everything on it, or what is in no piece. Micrometres, y down. */
final class Sheaf {
    private static final long APART = 50_000;
    private static final int MOST_PIECES = 5_000;
    private static final int PROBES = 16;

    private final List<DrawnShape> shapes = new ArrayList<>();
    private final List<DrawnText> texts = new ArrayList<>();
    private final List<Notch> notches = new ArrayList<>();

    private record Notch(DrawnShape mark, Point at) {}

    List<DrawnShape> shapes() {
        return shapes;
    }

    List<DrawnText> texts() {
        return texts;
    }

    void add(DrawnShape shape) {
        shapes.add(shape);
    }

    void add(DrawnText text) {
        texts.add(text);
    }

    /** Adds a notch that is a point; its stroke is drawn once the boundary is known. */
    void addNotch(DrawnShape mark, Point at) {
        notches.add(new Notch(mark, at));
    }

    /** Adds lettering in the middle of the piece. */
    void letter(String words, List<Group> groups) {
        box().ifPresent(box -> texts.add(new DrawnText(
                words,
                new Point((box.minX() + box.maxX()) / 2, (box.minY() + box.maxY()) / 2),
                0,
                Names.NONE,
                groups,
                true,
                "the block's text")));
    }

    /** Draws the strokes of notches; returns how many lie on no boundary. */
    Map<String, Integer> finishNotches() {
        Map<String, Integer> off = new TreeMap<>();
        List<Chain> boundaries = boundaries();
        for (Notch notch : notches) {
            Optional<Segment> stroke = NotchPoints.stroke(notch.at, boundaries);
            if (stroke.isPresent()) {
                Segment line = stroke.get();
                shapes.add(with(notch.mark, List.of(new Chain(List.of(line.from(), line.to()), false))));
            } else {
                off.merge("notch beside the boundary", 1, Integer::sum);
            }
        }
        notches.clear();
        return off;
    }

    private List<Chain> boundaries() {
        return shapes.stream()
                .filter(shape -> shape.visible() && shape.names().classes().contains(ApparelLayer.BOUNDARY.word()))
                .flatMap(shape -> shape.chains().stream())
                .toList();
    }

    /** Returns the box around what shows. */
    Optional<Box> box() {
        return Box.around(shapes.stream()
                .filter(DrawnShape::visible)
                .flatMap(shape -> shape.chains().stream())
                .flatMap(chain -> chain.points().stream()));
    }

    void move(Point by) {
        shapes.replaceAll(shape -> with(
                shape,
                shape.chains().stream()
                        .map(chain -> new Chain(
                                chain.points().stream()
                                        .map(point -> point.plus(by))
                                        .toList(),
                                chain.closed()))
                        .toList()));
        texts.replaceAll(text -> new DrawnText(
                text.words(),
                text.middle().plus(by),
                text.radians(),
                text.names(),
                text.groups(),
                text.visible(),
                text.place()));
    }

    private static DrawnShape with(DrawnShape shape, List<Chain> chains) {
        return new DrawnShape(
                shape.names(),
                shape.groups(),
                chains,
                shape.fillRule(),
                shape.visible(),
                shape.filled(),
                shape.dashed(),
                shape.headAtStart(),
                shape.headAtEnd(),
                shape.reflected(),
                shape.place());
    }

    /**
     * Lays pieces side by side if one lies in another, as where each has an origin of its own: it would pass for a mark
     * on the other. Says whether it did.
     */
    static boolean layApart(List<Sheaf> sheaves) {
        List<Sheaf> pieces =
                sheaves.stream().filter(sheaf -> !sheaf.boundaries().isEmpty()).toList();
        if (!anyHolds(pieces)) {
            return false;
        }
        long x = 0;
        for (Sheaf piece : pieces) {
            Box box = piece.box().orElseThrow();
            piece.move(new Point(x - box.minX(), -box.minY()));
            x += box.width() + APART;
        }
        return true;
    }

    private static boolean anyHolds(List<Sheaf> pieces) {
        if (pieces.size() > MOST_PIECES) {
            return false;
        }
        List<Box> boxes =
                pieces.stream().map(piece -> piece.box().orElseThrow()).toList();
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = 0; j < pieces.size(); j++) {
                if (i != j
                        && boxes.get(i).contains(boxes.get(j))
                        && pieces.get(i).holds(pieces.get(j))) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Says whether a boundary goes round any of some points of another; one in several lines is judged by its box. */
    private boolean holds(Sheaf other) {
        List<Chain> own = boundaries();
        if (own.size() > 1) {
            return true;
        }
        List<Point> ring = own.get(0).points();
        List<Point> points = other.boundaries().get(0).points();
        int step = Math.max(1, points.size() / PROBES);
        for (int i = 0; i < points.size(); i += step) {
            if (NotchPoints.covers(ring, points.get(i))) {
                return true;
            }
        }
        return false;
    }
}
