package lengthwise.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lengthwise.MarkerAnswer;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;

/** Says how much is short where an order does not fit on the cloth that there is. */
public final class ShortOfCloth {
    private ShortOfCloth() {}

    /**
     * Returns some lines, each ended by a line feed.
     *
     * @param beside says what other cloth for the same purpose takes, where the order is shared out over several: nothing is
     *     certain then, since another share may fit
     */
    public static String words(MarkerAnswer.TooLong answer, Optional<String> beside) {
        Fabric fabric = answer.marker().order().fabric();
        Length shortfall = answer.shortfall();
        // each of the lengths that lie on one another is short by as much
        double asBoughtShort =
                (double) shortfall.micrometres() * fabric.spread().lengths() / fabric.lengthKept();
        Length asBought = new Length((long) StrictMath.ceil(asBoughtShort - 1e-6));
        StringBuilder words = new StringBuilder();
        words.append(
                "lengthwise: it does not fit on %s: %s mm short. There is room for a marker of %s; the shortest found is %s.\n"
                        .formatted(
                                fabric.name(),
                                millimetresUp(asBought),
                                LengthWords.both(answer.room()),
                                LengthWords.both(answer.marker().length())));
        if (beside.isPresent()) {
            words.append(beside.get()).append(" A longer search may share it out better.\n");
            return words.append("What stays out: %s.\n".formatted(names(answer.staysOut())))
                    .toString();
        }
        words.append(
                answer.isCertain()
                        ? "No marker can be shorter than %s, so that is certain.\n"
                                .formatted(LengthWords.atLeast(answer.lowerBound()))
                        : "A longer search may find a shorter one; only below %s is there certainly none.\n"
                                .formatted(LengthWords.atLeast(answer.lowerBound())));
        words.append("What stays out: %s.\n".formatted(names(answer.staysOut())));
        return words.toString();
    }

    /** Returns what contours are called, the same ones counted: "2 × cup S, brief-back M". */
    static String names(List<Item> items) {
        Map<String, Integer> counted = new LinkedHashMap<>();
        for (Item item : items) {
            String size = item.piece().size().name();
            String hand = item.hand().letter();
            String name = item.piece().name() + (size.isEmpty() ? "" : " " + size) + (hand.isEmpty() ? "" : " " + hand);
            counted.merge(name, 1, Integer::sum);
        }
        return counted.entrySet().stream()
                .map(entry -> entry.getValue() == 1 ? entry.getKey() : entry.getValue() + " × " + entry.getKey())
                .collect(Collectors.joining(", "));
    }

    /** Rounded up: cut to this, it is never too little. */
    private static String millimetresUp(Length length) {
        return Long.toString(Math.floorDiv(length.micrometres() + 999, 1000));
    }
}
