package lengthwise;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.IntStream;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SharedOrder;
import lengthwise.model.Unfolding;

/**
 * What comes from one piece of cloth, whichever: one piece of a garment, of a pair both; or all that the garment needs.
 *
 * @param bundle which of the order, from 0
 * @param counts how many it has of each piece of the bundle
 */
record Lot(int bundle, List<Integer> counts) {
    Lot {
        counts = List.copyOf(counts);
    }

    /** Returns the lots that an order is made of, in the order of the garments. */
    static List<Lot> of(SharedOrder shared) {
        List<Bundle> bundles = shared.cloths().get(0).bundles();
        List<Lot> lots = new ArrayList<>();
        for (int i = 0; i < bundles.size(); i++) {
            List<Integer> all = bundles.get(i).pieces().stream()
                    .map(piece -> piece.cut().count())
                    .toList();
            if (shared.keepsGarments() && !all.isEmpty()) {
                lots.add(new Lot(i, all));
            } else if (!shared.keepsGarments()) {
                for (int piece = 0; piece < all.size(); piece++) {
                    int only = piece;
                    Lot one = new Lot(
                            i,
                            IntStream.range(0, all.size())
                                    .mapToObj(j -> j == only ? 1 : 0)
                                    .toList());
                    for (int count = all.get(piece); count > 0; count--) {
                        lots.add(one);
                    }
                }
            }
        }
        return lots;
    }

    /** Returns the part of a whole order that some lots are. */
    static MarkerOrder order(MarkerOrder whole, Collection<Lot> lots) {
        List<Bundle> bundles = new ArrayList<>();
        for (int i = 0; i < whole.bundles().size(); i++) {
            int index = i;
            List<Lot> ofBundle =
                    lots.stream().filter(lot -> lot.bundle == index).toList();
            List<CutPiece> pieces = pieces(whole.bundles().get(i), ofBundle);
            if (!pieces.isEmpty()) {
                bundles.add(new Bundle(whole.bundles().get(i).garment(), pieces));
            }
        }
        return whole.withBundles(bundles);
    }

    /** Returns what is cut for it from a cloth, whichever garment it is for: lots of which that is equal are alike. */
    List<CutPiece> pieces(MarkerOrder whole) {
        return pieces(whole.bundles().get(bundle), List.of(this));
    }

    private static List<CutPiece> pieces(Bundle bundle, List<Lot> lots) {
        List<CutPiece> pieces = new ArrayList<>();
        for (int i = 0; i < bundle.pieces().size(); i++) {
            int index = i;
            CutPiece piece = bundle.pieces().get(i);
            int count = lots.stream().mapToInt(lot -> lot.counts.get(index)).sum();
            if (count > 0) {
                pieces.add(
                        new CutPiece(piece.piece(), new Cut(count, piece.cut().manner()), piece.drawnHand()));
            }
        }
        return pieces;
    }

    /** Returns the area of its pieces, whole where they are drawn as halves. */
    double squareMillimetres(MarkerOrder whole) {
        return pieces(whole).stream()
                .mapToDouble(piece -> (piece.cut().manner() == Cut.Manner.PAIR ? 2 : 1)
                        * piece.cut().count()
                        * Unfolding.whole(piece.piece()).outline().squareMillimetres())
                .sum();
    }

    /** Returns the longest side of its pieces, in micrometres. */
    long longestSide(MarkerOrder whole) {
        return pieces(whole).stream()
                .map(piece -> Unfolding.whole(piece.piece()).outline().box())
                .mapToLong(box -> Math.max(box.width(), box.height()))
                .max()
                .orElse(0);
    }
}
