package lengthwise.model;

import java.util.List;

/**
 * One contour to be laid and cut. On folded fabric it may serve two garments or give both hands at once.
 *
 * @param piece the outline that is laid: a whole piece, or the half whose fold edge lies on the fold
 * @param garments the garments it serves: one, or in several layers up to one a layer; the same may be there twice
 * @param hand the hand of what is cut in the upper layer; {@link Hand#NONE} for a pair cut in one go
 * @param mirrored whether the upper layer's piece is the mirror image of the drawing; on folded fabric either will do
 */
public record Item(Piece piece, List<Garment> garments, Hand hand, boolean mirrored) {
    public Item {
        garments = List.copyOf(garments);
    }
}
