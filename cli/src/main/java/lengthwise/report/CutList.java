package lengthwise.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutOut;
import lengthwise.model.CutPiece;
import lengthwise.model.Garment;
import lengthwise.model.Marker;
import lengthwise.model.Placement;

/**
 * What has to be cut for each garment, ticked against what lies on the marker.
 *
 * @param lines in the order of the garments and their pieces
 */
record CutList(List<Line> lines) {
    /**
     * One piece of one garment, or all fillers of one kind that are laid.
     *
     * @param garment of fillers, the first
     * @param wanted how many pieces of cloth the order asks for
     * @param found those on the marker, with their numbers there
     */
    record Line(Garment garment, boolean filler, String piece, int wanted, List<Found> found) {
        private Line and(Line other) {
            return new Line(
                    garment,
                    filler,
                    piece,
                    wanted + other.wanted,
                    Stream.concat(found.stream(), other.found.stream()).toList());
        }

        boolean isComplete() {
            return found.size() == wanted;
        }
    }

    /** A piece of cloth and the number of the contour that gives it. */
    record Found(int number, CutOut cutOut) {}

    static CutList of(Marker marker) {
        List<Found> onMarker = new ArrayList<>();
        List<Placement> placements = marker.inLayingOrder();
        for (int i = 0; i < placements.size(); i++) {
            for (CutOut cutOut : CutOut.of(placements.get(i).item(), marker.order())) {
                onMarker.add(new Found(i + 1, cutOut));
            }
        }
        List<Line> lines = new ArrayList<>();
        Map<String, Line> fillers = new LinkedHashMap<>();
        List<Bundle> garments = marker.order().bundles();
        for (Bundle bundle : marker.order().withAllFillers()) {
            boolean filler = !garments.contains(bundle);
            if (filler
                    && onMarker.stream().noneMatch(one -> one.cutOut.garment().equals(bundle.garment()))) {
                continue;
            }
            for (String name : bundle.pieces().stream()
                    .map(cut -> cut.piece().name())
                    .distinct()
                    .toList()) {
                int wanted = bundle.pieces().stream()
                        .filter(cut -> cut.piece().name().equals(name))
                        .mapToInt(CutList::pieces)
                        .sum();
                List<Found> found = onMarker.stream()
                        .filter(one -> one.cutOut.garment().equals(bundle.garment())
                                && one.cutOut.piece().name().equals(name))
                        .toList();
                Line line = new Line(bundle.garment(), filler, name, wanted, found);
                if (filler) {
                    fillers.merge(name, line, Line::and);
                } else {
                    lines.add(line);
                }
            }
        }
        lines.addAll(fillers.values());
        return new CutList(lines);
    }

    private static int pieces(CutPiece cut) {
        return cut.cut().count() * (cut.cut().manner() == Cut.Manner.PAIR ? 2 : 1);
    }

    int wanted() {
        return lines.stream().mapToInt(Line::wanted).sum();
    }
}
