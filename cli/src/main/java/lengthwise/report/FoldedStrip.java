package lengthwise.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.CutOut;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.Piece;
import lengthwise.model.Placement;

/**
 * A tie or another strip as it is cut to length: folded end to end, half its length is measured from the fold, and both
 * ends are trimmed as one. A strip on the fold of the cloth lies there with half its length (common practice, no source).
 *
 * @param size empty for one size
 * @param width as cut, seam allowances included
 * @param whole from end to end, opened
 */
record FoldedStrip(String piece, String size, Length width, Length whole) {
    /**
     * Strips that are alike.
     *
     * @param count how many pieces of cloth
     */
    record Kind(FoldedStrip strip, int count) {}

    /** Returns the strips of a marker, the pieces and sizes in the order of its garments. */
    static List<Kind> on(Marker marker) {
        List<String> order = marker.order().withAllFillers().stream()
                .flatMap(bundle -> bundle.pieces().stream())
                .flatMap(cut ->
                        List.of(cut.piece().name(), "size " + cut.piece().size().name()).stream())
                .distinct()
                .toList();
        Map<FoldedStrip, Integer> counts =
                new TreeMap<>(Comparator.<FoldedStrip>comparingInt(strip -> order.indexOf(strip.piece))
                        .thenComparingInt(strip -> order.indexOf("size " + strip.size))
                        .thenComparing(FoldedStrip::whole)
                        .thenComparing(FoldedStrip::width));
        for (Placement placement : marker.placements()) {
            if (placement.item().piece().strip()) {
                counts.merge(
                        of(placement.item().piece()),
                        CutOut.of(placement.item(), marker.order()).size(),
                        Integer::sum);
            }
        }
        List<Kind> kinds = new ArrayList<>();
        counts.forEach((strip, count) -> kinds.add(new Kind(strip, count)));
        return kinds;
    }

    /** Returns kinds of strips that differ in nothing but their size together, the first of each where it stood. */
    static List<List<Kind>> alike(List<Kind> kinds) {
        Map<FoldedStrip, List<Kind>> alike = new LinkedHashMap<>();
        for (Kind kind : kinds) {
            FoldedStrip strip = kind.strip;
            alike.computeIfAbsent(
                            new FoldedStrip(strip.piece, "", strip.width, strip.whole), sizeless -> new ArrayList<>())
                    .add(kind);
        }
        return List.copyOf(alike.values());
    }

    private static FoldedStrip of(Piece piece) {
        Ring ring = piece.outline().shell();
        Length one = side(ring, 0);
        Length other = side(ring, 1);
        Length width = Length.min(one, other);
        Length whole = Length.max(one, other);
        if (piece.foldEdge().isPresent()) {
            width = new Length(Math.round(piece.foldEdge().get().length()));
            whole = (width.equals(one) ? other : one).times(2);
        }
        return new FoldedStrip(piece.name(), piece.size().name(), width, whole);
    }

    private static Length side(Ring ring, int index) {
        return new Length(Math.round(ring.edge(index).distance(Point.ORIGIN)));
    }

    /** Returns the length from the fold to both ends. */
    Length half() {
        return new Length(whole.micrometres() / 2);
    }
}
