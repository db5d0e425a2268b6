package lengthwise.dxf;

/** Text from a file as a complaint shows it: in one line, not too long. */
final class Shown {
    private static final int LONGEST = 40;

    private Shown() {}

    static String of(String text) {
        String plain = text.replaceAll("\\p{Cntrl}", "?").strip();
        return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST) + "…";
    }
}
