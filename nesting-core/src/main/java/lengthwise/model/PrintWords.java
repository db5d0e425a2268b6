package lengthwise.model;

import java.util.List;

/** How the repeat of a print is said to the maker. */
public final class PrintWords {
    private PrintWords() {}

    /** Returns how the cloth has to lie, so that match points meet the print; nothing where there is none to meet. */
    public static List<String> howToLay(Marker marker) {
        MarkerOrder order = marker.order();
        if (!order.isMatched()) {
            return List.of();
        }
        Fabric fabric = order.fabric();
        Repeat repeat = fabric.repeatOnTable().orElseThrow();
        String laid =
                "Matched print: %s. Lay the cloth so that a point of the print lies %s: then the match points meet it."
                        .formatted(repeats(repeat), origin(fabric, repeat));
        int plies = fabric.spread().lengths();
        Length onward = fabric.spread().onTable(marker.length());
        if (plies == 1 || repeat.lengthwise().equals(Length.ZERO)) {
            return List.of(laid);
        }
        long times = onward.micrometres() / repeat.lengthwise().micrometres();
        return List.of(
                laid,
                "Each ply begins %s behind the start of the one before, which is %s: pin the prints on each other."
                        .formatted(LengthWords.both(onward), times == 1 ? "one repeat" : times + " repeats"));
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

    /** Where the point of the print lies that is nearest to the corner of the cloth. */
    private static String origin(Fabric fabric, Repeat repeat) {
        Length along = first(repeat.originX().plus(fabric.spread().startAllowance()), repeat.lengthwise());
        Length across = first(repeat.originY().plus(fabric.edgesOnTable().near()), repeat.crosswise());
        String fromStart = LengthWords.both(along) + " from the " + start(fabric);
        String fromEdge = LengthWords.both(across) + " from the "
                + (fabric.spread().isFoldedLengthwise() ? "fold" : "near selvedge");
        if (repeat.crosswise().equals(Length.ZERO)) {
            return fromStart;
        }
        return repeat.lengthwise().equals(Length.ZERO) ? fromEdge : fromStart + " and " + fromEdge;
    }

    private static String start(Fabric fabric) {
        return fabric.spread().isFoldedCrosswise() ? "fold" : "cut end";
    }

    private static Length first(Length at, Length repeat) {
        return repeat.equals(Length.ZERO) ? at : new Length(Math.floorMod(at.micrometres(), repeat.micrometres()));
    }
}
