package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Finds the name of a piece in its lettering: the first words that say nothing else. Common practice, no source. */
final class LetteredNames {
    private static final int LONGEST = 40;

    /** What follows the name on the same line: "front · size M", "front, cut 1 pair", "front (lining)". */
    private static final Pattern END =
            Pattern.compile("\\s[-–—]\\s|[·–—|:;,(/]|\\b(?:cut|size)\\b", Pattern.CASE_INSENSITIVE);

    /** "3 of 8: front". */
    private static final Pattern NUMBER = Pattern.compile("^\\s*\\d+\\s*(?:of|/)\\s*\\d+\\s*[:.]?\\s*");

    private static final Set<String> NO_NAMES = Set.of(
            "cut",
            "size",
            "sizes",
            "fold",
            "grain",
            "grainline",
            "seam",
            "allowance",
            "stretch",
            "notch",
            "scale",
            "test",
            "page",
            "sheet",
            "line",
            "cm",
            "mm",
            "in",
            "inch");

    private LetteredNames() {}

    static Optional<String> of(List<String> lines) {
        return whole(lines).stream()
                .map(line -> END.split(NUMBER.matcher(line).replaceFirst(""), 2)[0].strip())
                .filter(LetteredNames::isName)
                .findFirst();
    }

    /** Puts a word together that is broken at the end of a line. */
    private static List<String> whole(List<String> lines) {
        List<String> whole = new ArrayList<>();
        for (String line : lines) {
            int last = whole.size() - 1;
            if (last >= 0 && whole.get(last).endsWith("-")) {
                whole.set(last, whole.get(last) + line);
            } else {
                whole.add(line);
            }
        }
        return whole;
    }

    private static boolean isName(String words) {
        List<String> all = Names.words(words).toList();
        return words.length() <= LONGEST
                && all.stream().anyMatch(word -> word.length() > 1)
                && all.stream().noneMatch(NO_NAMES::contains)
                && SizeNames.of(words).isEmpty()
                && !MarkKind.isAllThereIs(words);
    }
}
