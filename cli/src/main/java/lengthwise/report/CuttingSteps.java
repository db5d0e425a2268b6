package lengthwise.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Axis;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Lying;
import lengthwise.model.Marker;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.model.PrintWords;
import lengthwise.model.Shade;
import lengthwise.model.ShadeWords;
import lengthwise.model.SharedCut;
import lengthwise.model.SpreadWords;
import lengthwise.model.TiltWords;

/** What the maker does with the cloth, from squaring its end to cutting. */
final class CuttingSteps {
    private CuttingSteps() {}

    /** Returns the steps, a sentence or more each, in the order in which they are done. */
    static List<String> of(Marker marker) {
        Fabric fabric = marker.order().fabric();
        Length laid = fabric.spread().onTable(marker.length());
        List<String> steps = new ArrayList<>();
        if (fabric.isWashedFirst()) {
            steps.add(
                    "Wash and dry the cloth as the garment will be, then press it flat. Measure it: it should have lost"
                            + " about %s lengthwise and %s crosswise."
                                    .formatted(
                                            Figures.percent(fabric.shrinkage().lengthwise()),
                                            Figures.percent(fabric.shrinkage().crosswise())));
        }
        steps.add("Square the cut end. Let stretch cloth lie without tension before it is cut.");
        steps.add(laying(fabric, LengthWords.both(laid)));
        steps.add("Measure the width: %s is counted on, from edge to edge. On narrower cloth this marker does not fit."
                .formatted(LengthWords.both(fabric.laidWidth())));
        switch (fabric.direction()) {
            case EITHER_WAY -> {}
            case ONE_WAY -> steps.add("The up end of print or pile points to the end of the marker, all along.");
            case ONE_WAY_PER_GARMENT ->
                steps.add("Print or pile: all pieces of one garment lie the same way; the next garment may be turned.");
        }
        fabric.pile().ifPresent(pile -> steps.add(SpreadWords.pile(pile)));
        steps.addAll(PrintWords.howToLay(marker));
        fabric.mostStretch()
                .ifPresent(axis -> steps.add("It stretches most %s; pull it to make sure before you cut."
                        .formatted(axis == Axis.LENGTHWISE ? "lengthwise" : "crosswise")));
        onBias(marker).ifPresent(steps::add);
        steps.add(
                "Hold the marker or the paper pieces down with weights, or pin inside the pieces, clear of the line.");
        steps.add("Cut along the middle of the line. Notches are short nicks inside the seam allowance.");
        Length once = SharedCut.together(SharedCut.on(marker));
        if (once.micrometres() > 0) {
            steps.add("Straight edges of two pieces coincide on %s of cut line, drawn with a grey band: cut them once."
                    .formatted(LengthWords.both(once)));
        }
        tied(marker).forEach(steps::add);
        offGrain(marker).ifPresent(steps::add);
        fabric.shade().ifPresent(shade -> steps.add(ofOneShade(marker, shade)));
        boolean blocks = !StraightBlock.on(marker).isEmpty();
        steps.add((blocks ? "Cut the straight-cut blocks out whole, as said below, then the rest" : "Cut")
                + " in the order of the numbers, from the start of the marker. As you lift a piece off, write on it what it"
                + " is, and L or R, and tick it on the cut list.");
        return List.copyOf(steps);
    }

    /** What lies where it does for the sake of a selvedge, a border or a zone. */
    private static List<String> tied(Marker marker) {
        Map<String, Set<String>> pieces = new TreeMap<>();
        for (Placement placement : marker.placements()) {
            String name = placement.item().piece().name();
            Lying lying = marker.order().lyingOf(name);
            Box box = placement.outline().box();
            if (box.minY() < 0
                    || box.maxY() > marker.order().fabric().cuttableWidth().micrometres()) {
                pieces.computeIfAbsent("With a straight edge on the selvedge itself", key -> new TreeSet<>())
                        .add(name);
            }
            lying.border()
                    .ifPresent(border -> pieces.computeIfAbsent(
                                    "Across the cloth, on the line of the border (%s)"
                                            .formatted(where(marker, border.y())),
                                    key -> new TreeSet<>())
                            .add(name));
            lying.zone()
                    .ifPresent(zone -> pieces.computeIfAbsent(
                                    "In the zone %s (%s to %s)"
                                            .formatted(
                                                    zone.name(),
                                                    where(marker, zone.band().from()),
                                                    where(marker, zone.band().to())),
                                    key -> new TreeSet<>())
                            .add(name));
        }
        return pieces.entrySet().stream()
                .map(entry -> entry.getKey() + ": " + String.join(", ", entry.getValue()) + ".")
                .toList();
    }

    /** Names every piece that is off its grain, since the paper pieces are laid by these angles. */
    private static Optional<String> offGrain(Marker marker) {
        List<String> turned = marker.inLayingOrder().stream()
                .filter(placement -> placement.pose().orientation().isTilted())
                .map(placement -> PlacedPiece.of(placement).called() + " " + TiltWords.of(placement))
                .toList();
        return turned.isEmpty()
                ? Optional.empty()
                : Optional.of("Off their grain, within the tolerance and only because that shortens the marker: %s."
                        .formatted(String.join("; ", turned)));
    }

    /** Says what the cloth's shade asks for, and which garment takes most of what it may. */
    private static String ofOneShade(Marker marker, Shade shade) {
        String kept = "Cut for %s. ".formatted(ShadeWords.onTheMarker(shade));
        TreeMap<Integer, Box> garments = new TreeMap<>();
        for (Placement placement : marker.placements()) {
            for (Garment garment : placement.item().garments()) {
                garments.merge(garment.number(), placement.outline().box(), Box::union);
            }
        }
        String most = shade.lengthwise().isEmpty()
                ? ""
                : garments.entrySet().stream()
                        .max(Comparator.comparingLong(entry -> entry.getValue().width()))
                        .map(entry -> "Garment %d takes most of the length, %s. "
                                .formatted(
                                        entry.getKey(),
                                        LengthWords.both(
                                                new Length(entry.getValue().width()))))
                        .orElse("");
        return kept + most + "Keep the pieces of each garment together when you sew.";
    }

    private static String where(Marker marker, Length y) {
        return LengthWords.both(marker.order().fabric().edgesOnTable().near().plus(y)) + " from the near selvedge";
    }

    /** A strip takes its width times the root of two of the selvedge: 45°, by plane geometry. */
    private static Optional<String> onBias(Marker marker) {
        Map<String, String> pieces = new LinkedHashMap<>();
        for (Placement placement : marker.inLayingOrder()) {
            Piece piece = placement.item().piece();
            if (piece.turning() == Piece.Turning.ON_BIAS) {
                pieces.put(piece.name(), piece.name() + (piece.strip() ? ofSelvedge(placement) : ""));
            }
        }
        return pieces.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "Cut on the bias, at 45° to the selvedge: %s. The grain arrow on each lies parallel to the selvedge; bias edges stretch, so do not pull them."
                                .formatted(String.join(", ", pieces.values())));
    }

    private static String ofSelvedge(Placement strip) {
        Ring ring = strip.outline().shell();
        double width =
                Math.min(ring.edge(0).distance(Point.ORIGIN), ring.edge(1).distance(Point.ORIGIN));
        Length wide = new Length(Math.round(width));
        return " (%s wide, takes %s of the selvedge)"
                .formatted(LengthWords.both(wide), LengthWords.both(wide.scaled(StrictMath.sqrt(2))));
    }

    private static String laying(Fabric fabric, String laid) {
        String offFold = " A fold that is off by 2 mm makes a piece on it 4 mm too wide or too narrow.";
        return switch (fabric.spread().form()) {
            case SINGLE_LAYER ->
                "Lay %s of it flat in one layer, right side up, without stretching it.".formatted(laid);
            case FOLD_LENGTHWISE ->
                "Fold it lengthwise, right sides together, selvedge on selvedge, %s of it. The lower layer lies"
                                .formatted(laid)
                        + " right side up."
                        + offFold;
            case FOLD_CROSSWISE ->
                "Fold it across, right sides together, selvedges on selvedges: %s from the fold, which is the start of"
                                .formatted(laid)
                        + " the marker, to the two cut ends. The lower layer lies right side up. In the upper layer the"
                        + " up end of the cloth points the other way."
                        + offFold;
            case SELVEDGES_TO_MIDDLE ->
                "Fold both selvedges to the middle, right sides together, %s of it. The lower layer lies right side up."
                                .formatted(laid)
                        + " Nothing is cut across the selvedges."
                        + offFold;
            case TUBE ->
                "Lay %s of the tube flat, without stretching it, its two folds on the straight grain.".formatted(laid)
                        + offFold;
            case PLIES_FACE_UP, PLIES_FACE_TO_FACE ->
                "Lay %s plies of %s each, without stretching them. %s"
                        .formatted(
                                Integer.toString(fabric.spread().layers()), laid, SpreadWords.layers(fabric.spread()));
        };
    }
}
