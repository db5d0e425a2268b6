package lengthwise.drawing;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import lengthwise.geometry.Point;

/**
 * Letters of single strokes, for pens and other tools that know lines only: Latin capitals, figures and signs, the same on
 * every machine. Small letters are drawn as capitals, accents are left off, and what is not known is a box.
 *
 * <p>Each letter stands on a grid 4 wide and 6 high; from one to the next it is 6.
 */
public final class StrokeLetters {
    /** From one letter to the next, in heights of a capital. */
    public static final double ADVANCE = 1;

    private static final int HEIGHT = 6;
    private static final String BOX = "00 06 46 40 00";
    private static final Map<Integer, List<List<Point>>> LETTERS = letters();

    private StrokeLetters() {}

    /** Strokes as pairs x y, y up from the line, a bar between two strokes. */
    private static Map<Integer, List<List<Point>>> letters() {
        Map<Integer, List<List<Point>>> letters = new HashMap<>();
        letter(letters, 'A', "00 26 40|13 33");
        letter(letters, 'B', "00 06 36 45 44 33 03|33 42 41 30 00");
        letter(letters, 'C', "45 36 16 05 01 10 30 41");
        letter(letters, 'D', "00 06 26 44 42 20 00");
        letter(letters, 'E', "46 06 00 40|03 33");
        letter(letters, 'F', "46 06 00|03 33");
        letter(letters, 'G', "45 36 16 05 01 10 30 41 43 23");
        letter(letters, 'H', "00 06|46 40|03 43");
        letter(letters, 'I', "10 30|20 26|16 36");
        letter(letters, 'J', "46 41 30 10 01");
        letter(letters, 'K', "06 00|46 03 40");
        letter(letters, 'L', "06 00 40");
        letter(letters, 'M', "00 06 23 46 40");
        letter(letters, 'N', "00 06 40 46");
        letter(letters, 'O', "10 01 05 16 36 45 41 30 10");
        letter(letters, 'P', "00 06 36 45 44 33 03");
        letter(letters, 'Q', "10 01 05 16 36 45 41 30 10|22 40");
        letter(letters, 'R', "00 06 36 45 44 33 03|23 40");
        letter(letters, 'S', "45 36 16 05 04 13 33 42 41 30 10 01");
        letter(letters, 'T', "06 46|26 20");
        letter(letters, 'U', "06 01 10 30 41 46");
        letter(letters, 'V', "06 20 46");
        letter(letters, 'W', "06 10 23 30 46");
        letter(letters, 'X', "00 46|06 40");
        letter(letters, 'Y', "06 23 46|23 20");
        letter(letters, 'Z', "06 46 00 40");
        letter(letters, '0', "10 01 05 16 36 45 41 30 10|01 45");
        letter(letters, '1', "15 26 20|10 30");
        letter(letters, '2', "05 16 36 45 44 00 40");
        letter(letters, '3', "05 16 36 45 44 33 13|33 42 41 30 10 01");
        letter(letters, '4', "30 36 02 42");
        letter(letters, '5', "46 06 03 33 42 41 30 10 01");
        letter(letters, '6', "45 36 16 05 01 10 30 41 42 33 03");
        letter(letters, '7', "06 46 20");
        letter(letters, '8', "13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33");
        letter(letters, '9', "01 10 30 41 45 36 16 05 04 13 43");
        letter(letters, '-', "13 33");
        letter(letters, '\u2212', "13 33");
        letter(letters, '\u2013', "03 43");
        letter(letters, '+', "03 43|21 25");
        letter(letters, '=', "02 42|04 44");
        letter(letters, '_', "00 40");
        letter(letters, '.', "20 21");
        letter(letters, ',', "21 10");
        letter(letters, ':', "21 22|24 25");
        letter(letters, ';', "22 10|24 25");
        letter(letters, '!', "26 22|20 21");
        letter(letters, '?', "05 16 36 45 44 23 22|20 21");
        letter(letters, '\'', "26 24");
        letter(letters, '\u2019', "26 24");
        letter(letters, '"', "16 14|36 34");
        letter(letters, '/', "00 46");
        letter(letters, '\\', "06 40");
        letter(letters, '|', "20 26");
        letter(letters, '(', "36 25 21 30");
        letter(letters, ')', "16 25 21 10");
        letter(letters, '[', "36 16 10 30");
        letter(letters, ']', "16 36 30 10");
        letter(letters, '<', "45 03 41");
        letter(letters, '>', "05 43 01");
        letter(letters, '#', "10 16|36 30|02 42|04 44");
        letter(letters, '%', "00 46|05 06 16 15 05|31 30 40 41 31");
        letter(letters, '&', "40 15 26 35 02 01 10 20 42");
        letter(letters, '*', "13 33|12 34|14 32");
        letter(letters, '\u00b7', "22 23");
        letter(letters, '\u00d7', "11 33|13 31");
        letter(letters, '\u00b0', "15 26 35 24 15");
        letter(letters, ' ', "");
        letter(letters, '\u00a0', "");
        return Map.copyOf(letters);
    }

    private static void letter(Map<Integer, List<List<Point>>> letters, char letter, String strokes) {
        letters.put((int) letter, strokes(strokes));
    }

    private static List<List<Point>> strokes(String text) {
        List<List<Point>> strokes = new ArrayList<>();
        for (String stroke : text.isEmpty() ? new String[0] : text.split("\\|", -1)) {
            List<Point> points = new ArrayList<>();
            for (String pair : stroke.split(" ", -1)) {
                points.add(new Point(pair.charAt(0) - '0', pair.charAt(1) - '0'));
            }
            strokes.add(List.copyOf(points));
        }
        return List.copyOf(strokes);
    }

    /** Says whether every letter of a text is known, with or without its accents. */
    public static boolean knows(String text) {
        return plain(text).codePoints().allMatch(LETTERS::containsKey);
    }

    /** Returns how far a line of text goes, in micrometres. */
    public static long width(String text, long height) {
        long letters = plain(text).codePoints().count();
        return StrictMath.round(height * Math.max(0, letters * ADVANCE - 1.0 / 3));
    }

    /**
     * Returns the strokes of a line of text.
     *
     * @param at where the line begins, in micrometres, y down the page; letters stand on it
     * @param height of a capital
     */
    public static List<List<Point>> strokes(String text, Point at, long height) {
        List<List<Point>> drawn = new ArrayList<>();
        int[] letters = plain(text).codePoints().toArray();
        for (int i = 0; i < letters.length; i++) {
            long left = at.x() + StrictMath.round(i * ADVANCE * height);
            for (List<Point> stroke : LETTERS.getOrDefault(letters[i], strokes(BOX))) {
                drawn.add(stroke.stream()
                        .map(point ->
                                new Point(left + point.x() * height / HEIGHT, at.y() - point.y() * height / HEIGHT))
                        .toList());
            }
        }
        return drawn;
    }

    private static String plain(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}+", "")
                .toUpperCase(Locale.ROOT);
    }
}
