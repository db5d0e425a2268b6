package lengthwise.model;

import java.util.ArrayList;
import java.util.List;

/** How the repeat of a print is said to the maker. */
public final class PrintWords {
    private PrintWords() {}

    /** Returns how the cloth has to lie, so that match points and motifs meet the print; nothing where there are none. */
    public static List<String> howToLay(Marker marker) {
        MarkerOrder order = marker.order();
        if (order.matchPoints().isEmpty() && order.motifs().isEmpty()) {
            return List.of();
        }
        Fabric fabric = order.fabric();
        Repeat repeat = fabric.repeatOnTable().orElseThrow();
        List<String> words = new ArrayList<>();
        words.add("Matched print: %s. %s".formatted(repeats(repeat), place(order, repeat)));
        if (fabric.spread().lengths() > 1 && order.isMatchedLengthwise()) {
            Length onward = fabric.spread().onTable(marker.length());
            long times = onward.micrometres() / repeat.lengthwise().micrometres();
            words.add(
                    "Each ply begins %s behind the start of the one before, which is %s: pin the prints on each other."
                            .formatted(LengthWords.both(onward), times == 1 ? "one repeat" : times + " repeats"));
        }
        return List.copyOf(words);
    }

    private static String repeats(Repeat repeat) {
        if (repeat.crosswise().equals(Length.ZERO)) {
            return "it comes again every %s lengthwise".formatted(LengthWords.both(repeat.lengthwise()));
        }
        if (repeat.lengthwise().equals(Length.ZERO)) {
            return "it comes again every %s crosswise".formatted(LengthWords.both(repeat.crosswise()));
        }
        return "it comes again every %s lengthwise and %s crosswise%s"
                .formatted(
                        LengthWords.both(repeat.lengthwise()),
                        LengthWords.both(repeat.crosswise()),
                        repeat.halfDrop() ? ", each next column moved by half" : "");
    }

    private static String place(MarkerOrder order, Repeat repeat) {
        List<String> origin = origin(order, repeat);
        return origin.isEmpty()
                ? "It may begin anywhere: what is matched lies alike in it, wherever that is."
                : "Lay the cloth so that a point of the print lies %s: then %s."
                        .formatted(
                                String.join(" and ", origin),
                                order.motifs().isEmpty()
                                        ? "the match points meet it"
                                        : "its motifs lie where the marker shows them");
    }

    /** Where the point of the print lies that is nearest to the corner of the cloth, as far as that matters. */
    private static List<String> origin(MarkerOrder order, Repeat repeat) {
        Fabric fabric = order.fabric();
        List<String> origin = new ArrayList<>();
        if (order.hasPlaceInPrint(Axis.LENGTHWISE)) {
            Length along = first(repeat.originX().plus(fabric.spread().startAllowance()), repeat.lengthwise());
            origin.add(LengthWords.both(along) + " from the cut end");
        }
        if (order.hasPlaceInPrint(Axis.CROSSWISE)) {
            Length across = first(repeat.originY().plus(fabric.edgesOnTable().near()), repeat.crosswise());
            origin.add(LengthWords.both(across) + " from the "
                    + (fabric.spread().isFoldedLengthwise() ? "fold" : "near selvedge"));
        }
        return origin;
    }

    private static Length first(Length at, Length repeat) {
        return new Length(Math.floorMod(at.micrometres(), repeat.micrometres()));
    }
}
