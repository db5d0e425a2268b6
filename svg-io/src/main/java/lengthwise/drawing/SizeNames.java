package lengthwise.drawing;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Knows the names that sizes of clothing usually have. Common practice, no source; EN 13402 uses S, M, L as well. */
final class SizeNames {
    private static final Pattern LETTERS = Pattern.compile(
            "[2-9]?X{0,5}-?[SL]|M|[2-9]X|(?:x-?|extra )?(?:small|large)|medium|one size", Pattern.CASE_INSENSITIVE);
    private static final Pattern NUMBER =
            Pattern.compile("\\d{1,3}(?:[-/]\\d{1,3})?[A-Z]{0,2}", Pattern.CASE_INSENSITIVE);
    private static final Pattern SAID = Pattern.compile("size[\\s_:.-]*(\\S.*)", Pattern.CASE_INSENSITIVE);

    private SizeNames() {}

    /** Returns the size that a layer's name states: "M", "XL", "3XL", "38", "Size M". */
    static Optional<String> of(String name) {
        var said = SAID.matcher(name.strip());
        if (said.matches()) {
            return Optional.of(said.group(1).strip());
        }
        String plain = name.strip();
        boolean known =
                LETTERS.matcher(plain).matches() || NUMBER.matcher(plain).matches();
        return known ? Optional.of(plain) : Optional.empty();
    }

    static boolean isGenericLayer(String name) {
        return name.toLowerCase(Locale.ROOT).matches("(?:layer|ebene|calque|capa|group|g)[\\s_-]*\\d*(?:-\\d+)*");
    }
}
