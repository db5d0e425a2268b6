package lengthwise.model;

import java.util.List;
import java.util.stream.Collectors;
import lengthwise.geometry.Outline;

/**
 * A piece as it lies in a marker, with what is written on it: all that can be seen of a piece in a marker, whether it
 * comes from our own search or is read back from a file.
 *
 * @param size empty for what comes in one size
 * @param garments numbers of the garments it is for: one, or on folded fabric one a layer, maybe the same twice
 * @param hand L, R or nothing
 * @param customers the names of whom these are made for, as {@link Garment#customers} writes them
 * @param outline the cut line in marker coordinates
 */
public record PlacedPiece(
        String piece, String size, List<Integer> garments, String customers, String hand, Outline outline) {
    public PlacedPiece {
        garments = List.copyOf(garments);
    }

    /** A piece that is made for nobody by name. */
    public PlacedPiece(String piece, String size, List<Integer> garments, String hand, Outline outline) {
        this(piece, size, garments, "", hand, outline);
    }

    /** Returns what is cut of a placement of our own. */
    public static PlacedPiece of(Placement placement) {
        Item item = placement.item();
        return new PlacedPiece(
                item.piece().name(),
                item.piece().size().name(),
                item.garments().stream().map(Garment::number).toList(),
                Garment.customers(item.garments()),
                item.hand().letter(),
                placement.outline());
    }

    /** Says whether the same is written on both: they are for the same place in the same garments. */
    public boolean isLabelledAs(PlacedPiece other) {
        return piece.equals(other.piece)
                && size.equals(other.size)
                && garments.equals(other.garments)
                && hand.equals(other.hand);
    }

    /** Returns what a maker calls it: "cup S, L, of garment 3 (Wren)". */
    public String called() {
        String sized = size.isEmpty() ? piece : piece + " " + size;
        String handed = hand.isEmpty() ? sized : sized + ", " + hand + ",";
        String numbers = garments.stream().distinct().map(String::valueOf).collect(Collectors.joining(" and "));
        boolean several = garments.stream().distinct().count() > 1;
        String named = customers.isEmpty() ? "" : " (" + customers + ")";
        return numbers.isEmpty() ? handed : handed + (several ? " of garments " : " of garment ") + numbers + named;
    }
}
