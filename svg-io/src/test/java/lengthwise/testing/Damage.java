package lengthwise.testing;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Damage to a file of words: some are taken out, doubled, exchanged, replaced by odd ones or repeated with what follows. Or bytes
 * are changed and the rest is cut off.
 *
 * @param words what a word is, one way for each copy: numbers in it, its lines, its elements
 * @param odd words that readers stumble over
 */
public record Damage(List<Pattern> words, List<String> odd) {
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]*\\.?[0-9]+");
    private static final Pattern LINE = Pattern.compile("[^\r\n]*\r?\n");
    private static final Pattern PLAIN = Pattern.compile("[^\\s<>\"'=,;:(){}\\[\\]]+");
    private static final Pattern QUOTED = Pattern.compile("\"[^\"<>]*\"");
    private static final Pattern ELEMENT = Pattern.compile("<[^<>]*/>|<(\\w+)[^<>]*>[^<>]*</\\1>");

    /** Numbers that are none, too large, too small, or not written as in English. */
    private static final List<String> NUMBERS = List.of(
            "0",
            "-0",
            "-1",
            "1e308",
            "-1e999",
            "1e-320",
            "NaN",
            "Infinity",
            "0x10",
            "1,5",
            "2147483648",
            "99999999",
            "");

    public Damage {
        words = List.copyOf(words);
        odd = Stream.concat(NUMBERS.stream(), odd.stream()).toList();
    }

    /** Damage to a file of lines. */
    public static Damage toLines(String... odd) {
        return new Damage(
                List.of(NUMBER, LINE),
                Arrays.stream(odd).map(word -> word + "\n").toList());
    }

    /** Damage to XML. */
    public static Damage toElements(String... odd) {
        return new Damage(List.of(NUMBER, NUMBER, QUOTED, ELEMENT, ELEMENT, PLAIN), List.of(odd));
    }

    /** Damage to words on lines. */
    public static Damage toWords(String... odd) {
        return new Damage(List.of(NUMBER, LINE, PLAIN), List.of(odd));
    }

    /** Returns a damaged copy. */
    public byte[] to(byte[] whole, RandomGenerator random) {
        if (random.nextInt(8) == 0) {
            byte[] bytes = Arrays.copyOf(whole, random.nextBoolean() ? whole.length : random.nextInt(whole.length + 1));
            for (int k = 0; k < 3 && bytes.length > 0; k++) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            return bytes;
        }
        Pattern word = words.get(random.nextInt(words.size()));
        List<String> parts = parts(word.matcher(new String(whole, StandardCharsets.ISO_8859_1)));
        for (int k = random.nextInt(4); k >= 0 && parts.size() > 1; k--) {
            damage(parts, word == NUMBER ? NUMBERS : odd, random);
        }
        return String.join("", parts).getBytes(StandardCharsets.ISO_8859_1);
    }

    /** Returns the text in parts: what stands before a word, the word, what stands before the next. */
    private static List<String> parts(Matcher matcher) {
        List<String> parts = new ArrayList<>();
        StringBuilder rest = new StringBuilder();
        while (matcher.find()) {
            matcher.appendReplacement(rest, "");
            parts.add(rest.toString());
            parts.add(matcher.group());
            rest.setLength(0);
        }
        parts.add(matcher.appendTail(rest).toString());
        return parts;
    }

    private static void damage(List<String> parts, List<String> odd, RandomGenerator random) {
        int at = 2 * random.nextInt(parts.size() / 2) + 1;
        int other = 2 * random.nextInt(parts.size() / 2) + 1;
        switch (random.nextInt(7)) {
            case 0 -> parts.set(at, "");
            case 1 -> parts.set(at, parts.get(at) + parts.get(other));
            case 2 -> parts.set(at, parts.get(other));
            case 3 -> {
                List<String> some =
                        parts.subList(at, Math.min(parts.size(), at + 1 + random.nextInt(random.nextInt(2, 200))));
                parts.set(at, String.join("", some).repeat(random.nextInt(1, 5)));
            }
            default -> parts.set(at, odd.get(random.nextInt(odd.size())));
        }
    }
}
