package lengthwise.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.text.Bidi;
import java.text.Normalizer;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The typeface of a document, embedded as far as it is used, so that every reader shows the same letters: Liberation
 * Sans, which comes with PDFBox. A letter that it lacks becomes a hollow box, and is remembered.
 */
final class Typeface {
    private static final String FILE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    private static final String BOX = "□";

    private final PDFont font;
    private final Map<Integer, Boolean> known = new HashMap<>();
    private final Set<String> missing = new TreeSet<>();

    Typeface(PDDocument document) throws IOException {
        try (InputStream file = PDDocument.class.getResourceAsStream(FILE)) {
            if (file == null) {
                throw new IOException("The library has lost its typeface " + FILE + ".");
            }
            font = PDType0Font.load(document, file, true);
        }
    }

    PDFont font() {
        return font;
    }

    /** Returns the letters that had to be shown as boxes. */
    Set<String> missing() {
        return missing;
    }

    /** Returns words as they can be shown, from left to right. */
    String shown(String words) {
        StringBuilder shown = new StringBuilder();
        leftToRight(Normalizer.normalize(words, Normalizer.Form.NFC))
                .codePoints()
                .forEach(c -> {
                    String letter = Character.toString(c);
                    if (Character.isWhitespace(c) || Character.isSpaceChar(c)) {
                        shown.append(' ');
                    } else if (Character.getType(c) == Character.FORMAT || Character.isISOControl(c)) {
                        // Marks of direction and the like have no shape of their own.
                    } else if (known.computeIfAbsent(c, any -> has(letter))) {
                        shown.append(letter);
                    } else {
                        missing.add(letter);
                        shown.append(BOX);
                    }
                });
        return shown.toString();
    }

    /** Letters that are read from right to left are stored in the order of reading. */
    private static String leftToRight(String words) {
        if (!Bidi.requiresBidi(words.toCharArray(), 0, words.length())) {
            return words;
        }
        Bidi bidi = new Bidi(words, Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT);
        byte[] levels = new byte[bidi.getRunCount()];
        String[] runs = new String[levels.length];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = (byte) bidi.getRunLevel(i);
            String run = words.substring(bidi.getRunStart(i), bidi.getRunLimit(i));
            runs[i] = levels[i] % 2 == 1 ? new StringBuilder(run).reverse().toString() : run;
        }
        Bidi.reorderVisually(levels, 0, runs, 0, runs.length);
        return String.join("", runs);
    }

    private boolean has(String letter) {
        try {
            return font.encode(letter).length > 0;
        } catch (IOException | IllegalArgumentException notThere) {
            return false;
        }
    }

    /** Returns how wide words are that {@link #shown} returned, in parts of the size of the letters. */
    double width(String shown) throws IOException {
        return font.getStringWidth(shown) / 1000;
    }
}
