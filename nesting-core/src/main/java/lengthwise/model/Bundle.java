package lengthwise.model;

import java.util.List;

/** All pieces that one garment needs from one fabric. */
public record Bundle(Garment garment, List<CutPiece> pieces) {
    public Bundle {
        pieces = List.copyOf(pieces);
    }
}
