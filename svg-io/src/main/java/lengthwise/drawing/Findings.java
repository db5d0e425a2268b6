package lengthwise.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Collects what is to be said about a drawing: warnings one by one, what is left out by its reason. */
final class Findings {
    private static final int NAMED = 3;

    private final List<String> warnings;
    private final List<String> leftOut;
    private final Map<String, List<String>> counted = new LinkedHashMap<>();

    Findings(Drawing drawing) {
        warnings = new ArrayList<>(drawing.warnings());
        leftOut = new ArrayList<>(drawing.leftOut());
    }

    void warn(String sentence) {
        if (!warnings.contains(sentence)) {
            warnings.add(sentence);
        }
    }

    /** Notes that something is left out; equal reasons are counted together. */
    void leaveOut(String reason, String what) {
        counted.computeIfAbsent(reason, r -> new ArrayList<>()).add(what);
    }

    List<String> warnings() {
        return warnings;
    }

    /** Puts the first noun into the plural: "open lines", "outlines of less than 1 cm²". */
    private static String plural(String reason) {
        return reason.replaceFirst("(shape|line|outline|frame|letter|box|sign)\\b(?! of lettering)", "$1s")
                .replace("boxs", "boxes")
                .replace("line of lettering", "lines of lettering")
                .replace("lines that crosses itself", "lines that cross themselves")
                .replace("or sign drawn as an outline", "or signs drawn as outlines");
    }

    /** Returns sentences such as {@code 2 hidden shapes: 'h1' (line 4), 'h2' (line 5)}. */
    List<String> leftOut() {
        List<String> all = new ArrayList<>(leftOut);
        counted.forEach((reason, things) -> {
            String named = String.join(", ", things.subList(0, Math.min(NAMED, things.size())));
            String more = things.size() > NAMED ? " and " + (things.size() - NAMED) + " more" : "";
            all.add(things.size() + " " + (things.size() == 1 ? reason : plural(reason)) + ": " + named + more);
        });
        return all;
    }
}
