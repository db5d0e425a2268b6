package lengthwise.pdf;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lengthwise.model.Length;

/**
 * Paper to print on: a sheet as it stands in the printer, or a roll, of which only the width is given.
 *
 * <p>ISO 216 (A sizes) and ANSI/ASME Y14.1 (Letter, Legal, Tabloid).
 *
 * @param width from left to right; of a roll, its width
 * @param height from top to bottom; zero for a roll
 */
public record Paper(String name, Length width, Length height) {
    private static final List<Paper> SHEETS = List.of(
            millimetres("A4", 210, 297),
            inches("Letter", 8.5, 11),
            inches("Legal", 8.5, 14),
            millimetres("A3", 297, 420),
            inches("Tabloid", 11, 17),
            millimetres("A2", 420, 594),
            millimetres("A1", 594, 841),
            millimetres("A0", 841, 1189));

    /** Returns a sheet by its name, in letters of either case. */
    public static Optional<Paper> named(String name) {
        return SHEETS.stream()
                .filter(sheet -> sheet.name.equalsIgnoreCase(name.strip()))
                .findFirst();
    }

    /** Returns the names of the sheets, smaller ones first. */
    public static List<String> names() {
        return SHEETS.stream().map(Paper::name).toList();
    }

    public static Paper roll(Length width) {
        return new Paper("roll", width, Length.ZERO);
    }

    public boolean isRoll() {
        return height.equals(Length.ZERO);
    }

    /** Returns the sheet lying on its side. */
    public Paper landscape() {
        return isRoll() ? this : new Paper(name, height, width);
    }

    /** Returns its name and size: "A4, 210 × 297 mm". */
    public String called() {
        return isRoll()
                ? String.format(Locale.ROOT, "roll of %.1f mm", width.millimetres())
                : String.format(Locale.ROOT, "%s, %.1f × %.1f mm", name, width.millimetres(), height.millimetres());
    }

    private static Paper millimetres(String name, int width, int height) {
        return new Paper(name, Length.ofMillimetres(width), Length.ofMillimetres(height));
    }

    private static Paper inches(String name, double width, double height) {
        return new Paper(name, Length.ofMillimetres(width * 25.4), Length.ofMillimetres(height * 25.4));
    }
}
