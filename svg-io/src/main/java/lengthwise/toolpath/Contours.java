package lengthwise.toolpath;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.drawing.DrawingException;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;
import lengthwise.svg.MarkerDrawing;

/**
 * What is to be cut of a piece.
 *
 * @param piece its place among those of the marker
 * @param path along its outline and holes, the kerf allowed for
 * @param foldEdge where the path is not cut
 * @param foldReach how far the path may lie off the fold edge, in micrometres
 */
record Contours(
        int piece,
        Outline path,
        Optional<Segment> foldEdge,
        double foldReach,
        List<Segment> slits,
        List<Outline> drillHoles) {
    /** Drawn coordinates are rounded; a marker moved by hand is judged as the check judges it (µm). */
    private static final long TOLERANCE = 20;

    /** Across a drill hole, in micrometres: enough for an awl or a thread, little of the cloth. */
    private static final long DRILL_HOLE = 1_000;

    private static final int DRILL_HOLE_CORNERS = 16;

    static List<Contours> of(MarkerDrawing marker, Kerf kerf) throws DrawingException {
        List<Integer> uncut = new ArrayList<>();
        for (int i = 0; i < marker.pieces().size(); i++) {
            if (!marker.states().get(i).cutAlready()) {
                uncut.add(i);
            }
        }
        if (uncut.isEmpty()) {
            throw new DrawingException("The marker has no piece to be cut.");
        }
        refuseNear(marker.pieces(), uncut, kerf);
        List<Contours> contours = new ArrayList<>();
        for (int piece : uncut) {
            PieceMarks marks = marker.marks().get(piece);
            refuseOutside(marks, marker.pieces().get(piece));
            List<Outline> drillHoles = new ArrayList<>();
            for (Point hole : marks.drillHoles()) {
                drillHoles.add(drillHole(hole, marker.pieces().get(piece), kerf));
            }
            contours.add(new Contours(
                    piece,
                    along(marker.pieces().get(piece), kerf),
                    marker.states().get(piece).foldEdge(),
                    kerf.half() + TOLERANCE,
                    marks.notches(),
                    drillHoles));
        }
        return contours;
    }

    private static void refuseNear(List<PlacedPiece> pieces, List<Integer> uncut, Kerf kerf) throws DrawingException {
        List<PlacedArea> areas = new ArrayList<>();
        for (int piece : uncut) {
            if (!PlacedArea.isRegion(pieces.get(piece).outline())) {
                throw new DrawingException("The cut line of %s crosses or touches itself; lay the marker anew."
                        .formatted(pieces.get(piece).called()));
            }
            areas.add(PlacedArea.of(pieces.get(piece).outline()));
        }
        long room = kerf.side() == Kerf.Side.OUTWARD ? kerf.width().micrometres() - TOLERANCE : 0;
        for (int i = 0; i < areas.size(); i++) {
            for (int j = i + 1; j < areas.size(); j++) {
                String both = pieces.get(uncut.get(i)).called() + " and "
                        + pieces.get(uncut.get(j)).called();
                if (areas.get(i).overlaps(areas.get(j), TOLERANCE)) {
                    throw new DrawingException(
                            "%s overlap; run lengthwise check on the marker and mend it.".formatted(both));
                }
                if (room > 0 && areas.get(i).isNearerThan(areas.get(j), room)) {
                    throw new DrawingException(
                            "%s lie %s apart, and the kerf takes %s: each would lose cloth to the other's cut. Lay the marker with a gap of at least the kerf, or cut along the lines with no kerf."
                                    .formatted(
                                            both,
                                            LengthWords.both(new Length(StrictMath.round(
                                                    areas.get(i).distance(areas.get(j))))),
                                            LengthWords.both(kerf.width())));
                }
            }
        }
    }

    /** A mark that was moved off its piece by hand would be cut into another one. */
    private static void refuseOutside(PieceMarks marks, PlacedPiece piece) throws DrawingException {
        List<Point> inside = new ArrayList<>(marks.drillHoles());
        marks.notches().forEach(notch -> inside.add(notch.to()));
        for (Point mark : inside) {
            if (!isInside(mark, piece.outline().shell())) {
                throw new DrawingException(
                        "%s has a notch or a drill hole outside its cut line; put it back or take it out."
                                .formatted(piece.called()));
            }
        }
    }

    /** Counts the edges that a ray along +x crosses. */
    private static boolean isInside(Point point, Ring ring) {
        boolean inside = false;
        for (int i = 0; i < ring.size(); i++) {
            Point from = ring.vertex(i).minus(point);
            Point edge = ring.edge(i);
            if (from.y() > 0 != from.y() + edge.y() > 0) {
                inside ^= from.cross(edge) > 0 == edge.y() > 0;
            }
        }
        return inside;
    }

    private static Outline along(PlacedPiece piece, Kerf kerf) throws DrawingException {
        List<Outline> parts = kerf.along(piece.outline());
        if (parts.size() != 1
                || parts.get(0).holes().size() != piece.outline().holes().size()) {
            throw new DrawingException("%s is narrower somewhere, or has a hole narrower, than the kerf of %s."
                    .formatted(piece.called(), LengthWords.both(kerf.width())));
        }
        return parts.get(0);
    }

    private static Outline drillHole(Point middle, PlacedPiece piece, Kerf kerf) throws DrawingException {
        long radius = DRILL_HOLE / 2 - (kerf.side() == Kerf.Side.OUTWARD ? kerf.half() : -kerf.half());
        if (radius <= 0) {
            throw new DrawingException("%s has drill holes of %s, and the kerf is %s."
                    .formatted(
                            piece.called(), LengthWords.both(new Length(DRILL_HOLE)), LengthWords.both(kerf.width())));
        }
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < DRILL_HOLE_CORNERS; i++) {
            double angle = 2 * StrictMath.PI * i / DRILL_HOLE_CORNERS;
            corners.add(middle.plus(new Point(
                    StrictMath.round(radius * StrictMath.cos(angle)),
                    StrictMath.round(radius * StrictMath.sin(angle)))));
        }
        return Outline.of(Ring.of(corners));
    }
}
