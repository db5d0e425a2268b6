package lengthwise.toolpath;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Segment;
import lengthwise.model.SharedCut;

/**
 * Puts cuts in order: whatever sets cloth free comes after all that is cut in it. Where two outlines share a straight
 * line, the piece that comes later leaves it out.
 */
final class PassOrder {
    private final List<Contours> pieces;
    private final List<Pass> passes = new ArrayList<>();

    /** The piece in a hole of which a piece lies, for those that lie in one. */
    private final TreeMap<Integer, Integer> lyingIn = new TreeMap<>();

    private final List<Integer> done = new ArrayList<>();
    private Point at = Point.ORIGIN;

    PassOrder(List<Contours> pieces) {
        this.pieces = pieces;
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = 0; j < pieces.size(); j++) {
                if (i != j && liesInAHole(pieces.get(i).path(), pieces.get(j).path())) {
                    lyingIn.merge(i, j, this::smaller);
                }
            }
        }
    }

    List<Pass> passes() {
        if (passes.isEmpty()) {
            cut(within(-1));
        }
        return Collections.unmodifiableList(passes);
    }

    private static boolean liesInAHole(Outline inner, Outline outer) {
        return outer.holes().stream()
                .anyMatch(hole -> hole.box().contains(inner.box())
                        && !PlacedArea.of(inner)
                                .leaves(PlacedArea.of(Outline.of(hole)), 2 * Math.round(SharedCut.SAME_LINE)));
    }

    private int smaller(int one, int other) {
        return pieces.get(one).path().doubleArea() <= pieces.get(other).path().doubleArea() ? one : other;
    }

    private List<Integer> within(int holder) {
        List<Integer> inside = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            if (lyingIn.getOrDefault(i, -1) == holder) {
                inside.add(i);
            }
        }
        return inside;
    }

    private void cut(List<Integer> some) {
        List<List<Point>> stops =
                some.stream().map(i -> pieces.get(i).path().shell().vertices()).toList();
        for (Tour.Entry entry : Tour.through(at, stops)) {
            cut(some.get(entry.stop()));
        }
    }

    private void cut(int index) {
        cut(within(index));
        Contours piece = pieces.get(index);
        List<Pass> inner = new ArrayList<>();
        piece.slits().forEach(slit -> inner.add(pass(Pass.Kind.SLIT, piece, List.of(slit.from(), slit.to()))));
        piece.drillHoles().forEach(hole -> inner.add(pass(Pass.Kind.DRILL_HOLE, piece, closed(hole.shell()))));
        piece.path().holes().forEach(hole -> inner.add(pass(Pass.Kind.HOLE, piece, closed(hole))));
        cutShort(inner);
        cutNearest(outline(index));
        done.add(index);
    }

    private List<Pass> outline(int index) {
        Contours piece = pieces.get(index);
        List<Segment> shared = done.stream()
                .flatMap(
                        other -> SharedCut.lines(piece.path(), pieces.get(other).path()).stream())
                .toList();
        List<List<Point>> lines = Uncut.of(piece.path().shell(), shared, SharedCut.SAME_LINE);
        if (piece.foldEdge().isPresent()) {
            List<Segment> all =
                    Stream.concat(shared.stream(), piece.foldEdge().stream()).toList();
            lines = Uncut.of(piece.path().shell(), all, Math.max(SharedCut.SAME_LINE, piece.foldReach()));
        }
        return lines.stream().map(line -> pass(Pass.Kind.OUTLINE, piece, line)).toList();
    }

    private static Pass pass(Pass.Kind kind, Contours piece, List<Point> points) {
        return new Pass(kind, piece.piece(), points);
    }

    private static List<Point> closed(Ring ring) {
        List<Point> points = new ArrayList<>(ring.vertices());
        points.add(points.get(0));
        return points;
    }

    /** Cuts what ends about where it begins. */
    private void cutShort(List<Pass> some) {
        for (Tour.Entry entry : Tour.through(at, some.stream().map(Pass::starts).toList())) {
            cut(some.get(entry.stop()).from(entry.index()));
        }
    }

    /** Cuts lines that lead from one place to another, always the nearest next. */
    private void cutNearest(List<Pass> some) {
        List<Pass> left = new ArrayList<>(some);
        while (!left.isEmpty()) {
            int best = 0;
            for (int i = 1; i < left.size(); i++) {
                if (distance(left.get(i)) < distance(left.get(best))) {
                    best = i;
                }
            }
            Pass next = left.remove(best);
            cut(next.from(Tour.nearest(at, next.starts())));
        }
    }

    private void cut(Pass pass) {
        passes.add(pass);
        at = pass.end();
    }

    private double distance(Pass pass) {
        return at.distance(pass.starts().get(Tour.nearest(at, pass.starts())));
    }
}
