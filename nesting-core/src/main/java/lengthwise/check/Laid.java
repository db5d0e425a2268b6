package lengthwise.check;

import java.util.List;
import lengthwise.model.PlacedPiece;

/**
 * A placed piece, what it is in the order, and the ways in which its outline can be read.
 *
 * @param wanted what it is for, one for each of its garments; empty if the order does not name it
 * @param readings never empty where something is wanted
 */
record Laid(PlacedPiece placed, List<Wanted> wanted, List<Reading> readings) {
    Laid {
        wanted = List.copyOf(wanted);
        readings = List.copyOf(readings);
    }

    Laid readAs(List<Reading> kept) {
        return new Laid(placed, wanted, kept);
    }
}
