package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import lengthwise.model.LengthWords;
import lengthwise.model.Shrinkage;
import lengthwise.stash.Stash;
import lengthwise.stash.StashCloth;

/** The cloth that is there, for the terminal. */
public final class StashTable {
    private StashTable() {}

    /** Returns a line for each cloth under a heading, then how much there is of all, each ended by a line feed. */
    public static String of(List<Stash.Entry> entries) {
        if (entries.isEmpty()) {
            return "The stash is empty.\n";
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("name", "fabric", "colour", "length", "width", "m²", "what", "state"));
        double square = 0;
        for (Stash.Entry entry : entries) {
            StashCloth cloth = entry.cloth();
            square += cloth.squareMillimetres();
            rows.add(List.of(
                    cloth.name(),
                    cloth.fabric(),
                    cloth.colour().orElse("-"),
                    LengthWords.both(cloth.there().length()),
                    LengthWords.both(cloth.width()),
                    String.format(Locale.ROOT, "%.2f", cloth.squareMillimetres() / 1e6),
                    what(cloth),
                    state(entry)));
        }
        return Columns.of(rows)
                + String.format(
                        Locale.ROOT,
                        "%d %s, %.2f m² (%.2f yd²).\n",
                        entries.size(),
                        entries.size() == 1 ? "cloth" : "cloths",
                        square / 1e6,
                        square / (914.4 * 914.4));
    }

    private static String what(StashCloth cloth) {
        List<String> words = new ArrayList<>();
        words.add(
                cloth.isStraight()
                        ? "straight"
                        : "remnant of " + cloth.there().corners().size() + " corners");
        cloth.direction()
                .ifPresent(way -> words.add(way.name().toLowerCase(Locale.ROOT).replace('_', '-')));
        cloth.shrinkage().ifPresent(shrinkage -> words.add(shrinks(shrinkage)));
        if (!cloth.flaws().isEmpty()) {
            words.add(cloth.flaws().size() == 1 ? "1 flaw" : cloth.flaws().size() + " flaws");
        }
        return String.join(", ", words);
    }

    private static String shrinks(Shrinkage shrinkage) {
        return switch (shrinkage.handled()) {
            case PRE_WASH -> "to be washed";
            case ADD_TO_PIECES -> "shrinks";
            case IN_PATTERN -> "does not shrink, or in the pattern";
        };
    }

    private static String state(Stash.Entry entry) {
        return switch (entry.state()) {
            case FREE -> "free";
            case IN_USE -> "reserved by a run";
            case UNCLEAR ->
                "unclear: a run ended writing to %s; take it if it is cut, else give-back"
                        .formatted(entry.writesTo().orElse("?"));
        };
    }
}
