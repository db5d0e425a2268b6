package lengthwise.drawing;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/**
 * A piece as recognised in a drawing, in the frame of the page: micrometres from its upper left corner, y down.
 *
 * @param name its label, else the group or layer that holds it alone, else its id
 * @param size the layer named as a size that it lies on
 * @param outline the closed cut line, curves flattened, with cut-outs as holes
 * @param mirrored whether it is the mirror image of another piece of the same name in this file
 * @param foldEdge a straight part of the outline that is marked as lying on the fold
 * @param notches each from the cut line inwards
 * @param sewLines the line of stitching, where drawn: a mark, never a hole
 * @param lettering every line of text on the piece, in reading order
 */
public record DrawnPiece(
        String name,
        Optional<String> size,
        Outline outline,
        boolean mirrored,
        Optional<Arrow> arrow,
        Optional<Segment> foldEdge,
        List<Segment> notches,
        List<Point> drillHoles,
        List<List<Point>> sewLines,
        List<List<Point>> innerLines,
        List<String> lettering) {
    public DrawnPiece {
        notches = List.copyOf(notches);
        drillHoles = List.copyOf(drillHoles);
        sewLines = sewLines.stream().map(List::copyOf).toList();
        innerLines = innerLines.stream().map(List::copyOf).toList();
        lettering = List.copyOf(lettering);
    }
}
