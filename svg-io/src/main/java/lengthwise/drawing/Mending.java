package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;

/**
 * Makes a closed ring of a chain, within stated limits: a gap of at most {@value #SILENT} µm is closed, one of at most
 * {@value #WARNED} µm with a warning, a wider one never; doubled points are dropped; spikes without width are cut off
 * with a warning.
 *
 * @param ring the mended ring; empty if the chain is open or encloses nothing
 * @param gap the gap that was closed, or that keeps the chain open, in micrometres
 * @param spike the length of the longest spike cut off, in micrometres
 */
record Mending(Optional<Ring> ring, double gap, double spike) {
    static final double SILENT = 50;
    static final double WARNED = 500;

    /** Spikes shorter than this (µm) are left by rounding and cut off in silence. */
    static final double ROUNDING = 10;

    static Mending of(Chain chain) {
        List<Point> points = withoutDoubles(chain.points());
        if (points.size() < 3) {
            return new Mending(Optional.empty(), 0, 0);
        }
        double gap = chain.closed() ? 0 : points.get(0).distance(points.get(points.size() - 1));
        boolean closes = gap <= SILENT || (gap <= WARNED && chain.length() > 20 * gap);
        if (!closes) {
            return new Mending(Optional.empty(), gap, 0);
        }
        if (gap <= SILENT && !points.get(0).equals(points.get(points.size() - 1)) && !chain.closed()) {
            points.remove(points.size() - 1);
        }
        double spike = cutSpikes(points);
        return new Mending(
                points.size() >= 3 && !isStraight(points) ? Optional.of(Ring.of(points)) : Optional.empty(),
                gap,
                spike);
    }

    private static boolean isStraight(List<Point> points) {
        Point first = points.get(0);
        Point along = points.get(1).minus(first);
        return points.stream().allMatch(point -> along.cross(point.minus(first)) == 0);
    }

    private static List<Point> withoutDoubles(List<Point> points) {
        List<Point> kept = new ArrayList<>();
        for (Point point : points) {
            if (kept.isEmpty() || !kept.get(kept.size() - 1).equals(point)) {
                kept.add(point);
            }
        }
        return kept;
    }

    /** Removes vertices at which the ring turns straight back on itself; returns the length of the longest such way. */
    private static double cutSpikes(List<Point> points) {
        double longest = 0;
        int steady = 0;
        int i = 0;
        while (points.size() >= 3 && steady <= points.size()) {
            int n = points.size();
            i %= n;
            Point before = points.get((i + n - 1) % n);
            Point at = points.get(i);
            Point after = points.get((i + 1) % n);
            if (at.equals(after)) {
                points.remove(i);
                steady = 0;
            } else if (turnsBack(before, at, after)) {
                double length = Math.min(before.distance(at), at.distance(after));
                longest = Math.max(longest, length);
                points.remove(i);
                i = (i + n - 2) % (n - 1);
                steady = 0;
            } else {
                i++;
                steady++;
            }
        }
        return longest;
    }

    /** Says whether the way back runs within a micrometre of the way there. */
    private static boolean turnsBack(Point before, Point at, Point after) {
        Point there = at.minus(before);
        Point back = after.minus(at);
        if (there.dot(back) >= 0) {
            return false;
        }
        double longer = Math.max(before.distance(at), at.distance(after));
        double shorter = Math.min(before.distance(at), at.distance(after));
        return Math.abs((double) there.cross(back)) <= longer * Math.min(1.0, shorter / 2);
    }
}
