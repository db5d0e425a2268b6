package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.model.Cut;
import org.jspecify.annotations.Nullable;

/**
 * Reads what makers letter on their pieces: "cut 2", "cut 1 pair", "cut 1 on fold", "cut 2 lining".
 *
 * <p>A line that names the role of a fabric speaks for that role only. Words it does not know are left alone.
 */
final class Lettering {
    /** Words of the trade for what a fabric is for; a cut lettered with one is not taken from another fabric. */
    static final List<String> ROLE_WORDS =
            List.of("shell", "outer", "self", "main", "lining", "interfacing", "interlining", "contrast", "mesh");

    private static final Pattern CUT = Pattern.compile(
            "\\bcut\\s+(?:(\\d+|one|two|three|four|six|eight)\\b\\s*(?:x|×)?\\s*)?(pairs?|alike)?\\s*(?:(?:in|of|from)\\s+)?(.*)",
            Pattern.CASE_INSENSITIVE);
    private static final int MOST = 9999;
    /** "cut 1 pair shell, 2 lining": what goes on with a number is another cut. */
    private static final Pattern MORE = Pattern.compile("^\\s*\\d+\\b");

    private static final Pattern PARTS = Pattern.compile("[,;+/]|\\band\\b");
    private static final Pattern FOLD = Pattern.compile("\\bfold\\b", Pattern.CASE_INSENSITIVE);
    private static final Pattern PAIR = Pattern.compile("\\bpairs?\\b|\\bmirrored\\b", Pattern.CASE_INSENSITIVE);
    private static final Pattern ALIKE = Pattern.compile("\\balike\\b|\\bidentical\\b", Pattern.CASE_INSENSITIVE);

    private Lettering() {}

    /** A cut as lettered; the role is empty where the line names none. */
    record LetteredCut(Optional<String> role, int count, Optional<Cut.Manner> manner) {}

    /**
     * Returns every cut that the lines state, in their order. A line that stands there twice, as when a drawing program keeps the
     * text of a piece in two ways, is one statement.
     *
     * @param roles the words that name a fabric's role
     */
    static List<LetteredCut> cuts(List<String> lines, List<String> roles) {
        List<LetteredCut> cuts = new ArrayList<>();
        List<String> statements = lines.stream()
                .map(line -> line.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT))
                .distinct()
                .toList();
        for (String line : statements) {
            boolean goesOn = false;
            for (String part : PARTS.splitAsStream(line).toList()) {
                String text = goesOn && MORE.matcher(part).find() ? "cut " + part.strip() : part.strip();
                Matcher cut = CUT.matcher(text);
                if (cut.find()
                        && (cut.group(1) != null
                                || cut.group(2) != null
                                || FOLD.matcher(part).find())) {
                    cuts.add(new LetteredCut(role(part, roles), count(cut.group(1)), manner(part)));
                    goesOn = true;
                }
            }
        }
        return cuts;
    }

    private static int count(@Nullable String number) {
        if (number == null) {
            return 1;
        }
        return switch (number.toLowerCase(Locale.ROOT)) {
            case "one" -> 1;
            case "two" -> 2;
            case "three" -> 3;
            case "four" -> 4;
            case "six" -> 6;
            case "eight" -> 8;
            default -> number.length() > 4 ? MOST : Math.max(1, Math.min(MOST, Integer.parseInt(number)));
        };
    }

    private static Optional<Cut.Manner> manner(String text) {
        if (FOLD.matcher(text).find()) {
            return Optional.of(Cut.Manner.ON_FOLD);
        }
        if (PAIR.matcher(text).find()) {
            return Optional.of(Cut.Manner.PAIR);
        }
        return ALIKE.matcher(text).find() ? Optional.of(Cut.Manner.ALIKE) : Optional.empty();
    }

    private static Optional<String> role(String text, List<String> roles) {
        String lower = text.toLowerCase(Locale.ROOT);
        return roles.stream()
                .filter(role -> Pattern.compile("\\b" + Pattern.quote(role.toLowerCase(Locale.ROOT)) + "\\b")
                        .matcher(lower)
                        .find())
                .findFirst();
    }
}
