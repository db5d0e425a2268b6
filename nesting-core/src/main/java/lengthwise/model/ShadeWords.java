package lengthwise.model;

import java.util.ArrayList;
import java.util.List;

/** What shade asks for, in words for people. */
public final class ShadeWords {
    private ShadeWords() {}

    /** Returns what is allowed: "lengthwise 60 cm (23 5/8 in), crosswise 30 cm (11 3/4 in)". */
    public static String allowed(Shade shade) {
        List<String> words = new ArrayList<>();
        shade.lengthwise().ifPresent(length -> words.add("lengthwise " + LengthWords.both(length)));
        shade.crosswise().ifPresent(length -> words.add("crosswise " + LengthWords.both(length)));
        return String.join(", ", words);
    }

    /** Returns what the marker keeps to, as it stands at its edge. */
    public static String onTheMarker(Shade shade) {
        List<String> words = new ArrayList<>();
        shade.lengthwise()
                .ifPresent(length -> words.add("each garment within " + LengthWords.both(length) + " lengthwise"));
        shade.crosswise()
                .ifPresent(length -> words.add("left and right within " + LengthWords.both(length) + " crosswise"));
        return "one shade: " + String.join("; ", words);
    }
}
