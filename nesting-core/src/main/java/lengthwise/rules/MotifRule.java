package lengthwise.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.model.CutPiece;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Lying;
import lengthwise.model.MarkRef;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Motif;
import lengthwise.model.Piece;
import lengthwise.model.Repeat;
import lengthwise.model.Spread;
import lengthwise.model.Unfolding;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * Motifs of a print that a piece, or a mark of it, keeps off, or that a mark of it lies on: that leaves a region of
 * positions within one repeat, which {@link RepeatCells} gives as rectangles. Through two layers that meet in a fold at y = 0
 * the motifs of the lower one count too, where they lie under the upper one.
 */
final class MotifRule {
    private final MarkerOrder order;
    private final Fabric fabric;
    private final Optional<Repeat> repeat;
    private final Map<Looked, List<Box>> known = new HashMap<>();

    /** A piece that was looked at already at some turn and flip. */
    private record Looked(Piece piece, Orientation way) {}

    MotifRule(MarkerOrder order) {
        this.order = order;
        this.fabric = order.fabric();
        this.repeat = fabric.repeatOnTable();
    }

    /**
     * Returns where an item may lie of what other rules allow it.
     *
     * @param moves whether the search may move the lattice that it is matched by
     */
    PlacementDomain domain(Item item, PlacementDomain allowed, boolean moves) throws RefusedException {
        List<Lying.MotifTie> ties = order.lyingOf(item.piece().name()).motifs();
        if (ties.isEmpty() || repeat.isEmpty()) {
            return allowed;
        }
        refuseOthers(item.piece(), allowed.positions(), moves);
        Map<Orientation, List<Box>> boxes = new LinkedHashMap<>();
        for (Orientation way : allowed.orientations()) {
            List<Box> left = left(item.piece(), ties, way);
            if (allowed.positions() instanceof Positions.Lattice lattice) {
                left = matched(left, lattice, way);
            }
            if (!left.isEmpty()) {
                boxes.put(way, left);
            }
        }
        if (boxes.isEmpty()) {
            throw refused(
                    item.piece(),
                    "no place within the repeat is left for it%s. Let it mind fewer of them, by a mark alone (at), or make them smaller."
                            .formatted(
                                    allowed.positions() instanceof Positions.Lattice
                                            ? " where its match point meets the print"
                                            : ""));
        }
        Repeat print = repeat.get();
        return new PlacementDomain(
                allowed.orientations().stream().filter(boxes::containsKey).toList(),
                new Positions.Cells(
                        new Point(print.originX().micrometres(), print.originY().micrometres()),
                        print.lengthwise().micrometres(),
                        print.crosswise().micrometres(),
                        print.halfDrop() && print.crosswise().micrometres() > 0,
                        boxes));
    }

    private void refuseOthers(Piece piece, Positions positions, boolean moves) throws RefusedException {
        switch (fabric.spread().form()) {
            case SINGLE_LAYER, FOLD_LENGTHWISE, PLIES_FACE_UP -> {}
            case FOLD_CROSSWISE, SELVEDGES_TO_MIDDLE, TUBE, PLIES_FACE_TO_FACE ->
                throw refused(
                        piece,
                        "the print of the lower layers does not lie under it. Lay this fabric in a single layer, or in plies face up with their prints pinned on each other.");
        }
        if (piece.foldEdge().isPresent()) {
            throw refused(piece, "it lies on the fold. Lay this fabric in a single layer.");
        }
        if (moves) {
            throw refused(
                    piece,
                    "it is matched to a piece that has no place of its own in the print. Give one of them a match point without to, or leave one of the two out.");
        }
        if (!(positions instanceof Positions.Free || positions instanceof Positions.Lattice)) {
            throw refused(piece, "its zone or its border say where it lies. Say one of the two.");
        }
    }

    private RefusedException refused(Piece piece, String why) {
        List<Lying.MotifTie> ties = order.lyingOf(piece.name()).motifs();
        String names = ties.stream().map(tie -> tie.motif().name()).distinct().collect(Collectors.joining(", "));
        return new RefusedException(
                "%s minds the motifs of %s (%s), but %s".formatted(SpreadRule.named(piece), fabric.name(), names, why));
    }

    /** Returns the offsets at which the piece minds all motifs, from the print's origin. */
    private List<Box> left(Piece piece, List<Lying.MotifTie> ties, Orientation way) throws RefusedException {
        List<Box> before = known.get(new Looked(piece, way));
        if (before != null) {
            return before;
        }
        RepeatCells cells = new RepeatCells(repeat.orElseThrow());
        for (Lying.MotifTie tie : ties) {
            for (Motif motif : inAllLayers(tie.motif())) {
                if (tie.at().isEmpty()) {
                    cells.takeOut(meeting(motif, piece, way));
                    continue;
                }
                for (Point point : points(piece, tie.at().get())) {
                    Point back = way.apply(point).negated();
                    List<Box> boxes = (tie.on() ? Bands.inside(motif) : Bands.covering(motif))
                            .stream().map(box -> box.moved(back)).toList();
                    if (tie.on()) {
                        cells.keepTo(boxes);
                    } else {
                        cells.takeOut(boxes);
                    }
                }
            }
        }
        List<Box> left = cells.left();
        known.put(new Looked(piece, way), left);
        return left;
    }

    /** Returns the motif, and on cloth that is folded lengthwise that of the lower layer as it lies under the upper one. */
    private List<Motif> inAllLayers(Motif motif) {
        Box box = motif.place();
        if (fabric.spread().form() != Spread.Form.FOLD_LENGTHWISE
                || repeat.orElseThrow().crosswise().micrometres() == 0) {
            return List.of(motif);
        }
        long twice = 2 * repeat.orElseThrow().originY().micrometres();
        Box below = new Box(box.minX(), -twice - box.maxY(), box.maxX(), -twice - box.minY());
        return Stream.of(motif, new Motif(motif.name(), below, motif.round()))
                .distinct()
                .toList();
    }

    /** Returns rectangles of offsets that hold all at which a piece lies over a motif. */
    private List<Box> meeting(Motif motif, Piece piece, Orientation way) {
        List<Box> meeting = new ArrayList<>();
        for (Box of : Bands.covering(way.apply(piece.outline()).shell())) {
            for (Box place : Bands.covering(motif)) {
                meeting.add(new Box(
                        place.minX() - of.maxX(),
                        place.minY() - of.maxY(),
                        place.maxX() - of.minX(),
                        place.maxY() - of.minY()));
            }
        }
        return meeting;
    }

    /** Returns where a mark is on a piece, and its mirror image on one that is drawn as a half. */
    private List<Point> points(Piece piece, MarkRef mark) throws RefusedException {
        Point at = piece.marks()
                .at(mark)
                .orElseThrow(() ->
                        refused(piece, "there is no %s on it. Draw it, or name another.".formatted(mark.called())));
        return order.withAllFillers().stream()
                .flatMap(bundle -> bundle.pieces().stream())
                .map(CutPiece::piece)
                .filter(drawn ->
                        drawn.name().equals(piece.name()) && drawn.size().equals(piece.size()))
                .findFirst()
                .map(drawn -> Unfolding.images(drawn, at))
                .orElse(List.of(at));
    }

    /** Returns what of some offsets lets the match point meet the print as well. */
    private List<Box> matched(List<Box> left, Positions.Lattice lattice, Orientation way) {
        Repeat print = repeat.orElseThrow();
        Point origin = new Point(print.originX().micrometres(), print.originY().micrometres());
        Point at = lattice.origin().minus(origin).minus(way.apply(lattice.anchor()));
        long t = lattice.tolerance();
        long alongX = lattice.stepX() == 0 ? Positions.Cells.ENDLESS : t;
        long alongY = lattice.stepY() == 0 ? Positions.Cells.ENDLESS : t;
        Box window = new Box(at.x() - alongX, at.y() - alongY, at.x() + alongX, at.y() + alongY);
        RepeatCells cells = new RepeatCells(print);
        List<Box> matched = new ArrayList<>(cells.inWindow(left, window));
        if (lattice.halfDrop() && lattice.stepX() > 0 && lattice.stepY() == 0) {
            // not matched across, it may be in any column, also in one that is moved by half
            matched.addAll(cells.inWindow(left, window.moved(new Point(lattice.stepX() / 2, 0))));
        }
        return matched;
    }
}
