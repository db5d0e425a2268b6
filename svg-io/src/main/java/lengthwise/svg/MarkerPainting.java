package lengthwise.svg;

import java.util.Comparator;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Set;
import java.util.TreeSet;
import lengthwise.drawing.Painted;

/**
 * A marker read back from a file with all that is painted on it, to be put on paper. Coordinates are those of the cloth
 * on the table: its corner lies at 0, 0, and x runs along it.
 *
 * @param marker what is read of it
 * @param beside title, facts, keys and notes, that stand before the start of the cloth
 * @param cloth what lies under the pieces: cloth, edges, print
 * @param pieces what is painted of each piece, in the order of the marker; the cut line first
 * @param over what lies on top of the pieces
 */
public record MarkerPainting(
        MarkerDrawing marker,
        List<Painted> beside,
        List<Painted> cloth,
        List<List<Painted>> pieces,
        List<Painted> over) {
    /** The mark of a square to be measured on paper. */
    public static final String CHECK_SQUARE = "check-square";

    /** The mark of a line under which one cut does for two pieces. */
    public static final String CUT_ONCE = "cut-once";

    public MarkerPainting {
        beside = List.copyOf(beside);
        cloth = List.copyOf(cloth);
        pieces = pieces.stream().map(List::copyOf).toList();
        over = List.copyOf(over);
    }

    /** Returns the edge of the cloth: of what lies under the pieces, the largest. */
    public Painted.Path clothEdge() {
        return cloth.stream()
                .filter(Painted.Path.class::isInstance)
                .map(Painted.Path.class::cast)
                .filter(path -> path.clip().isEmpty())
                .max(Comparator.comparingDouble(MarkerPainting::area))
                .orElseGet(() -> cutLine(0));
    }

    private static double area(Painted.Path path) {
        LongSummaryStatistics x = new LongSummaryStatistics();
        LongSummaryStatistics y = new LongSummaryStatistics();
        path.chains()
                .forEach(chain -> chain.points().forEach(point -> {
                    x.accept(point.x());
                    y.accept(point.y());
                }));
        return (double) (x.getMax() - x.getMin()) * (y.getMax() - y.getMin());
    }

    /** Returns the cut line of a piece. */
    public Painted.Path cutLine(int piece) {
        return (Painted.Path) pieces.get(piece).get(0);
    }

    /** Returns the sizes on the marker, in the order of their names; an empty one for pieces of no size. */
    public Set<String> sizes() {
        Set<String> sizes = new TreeSet<>();
        marker.pieces().forEach(piece -> sizes.add(piece.size()));
        return sizes;
    }
}
