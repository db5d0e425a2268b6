package lengthwise.dxf;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * In what a file is drawn: what the maker says, else the header's {@code $INSUNITS}, else the units text of a drawing of
 * sewn products. {@code $MEASUREMENT} says metric or not, never which unit: it decides what is shown, and the maker is
 * asked.
 *
 * <p>Reference: Autodesk, <i>DXF Reference</i>, "HEADER Section Group Codes".
 *
 * @param millimetres of one unit
 * @param stated whether somebody states it
 * @param warning what to say where nobody does
 */
record DrawingUnit(double millimetres, boolean stated, Optional<String> warning) {
    private static final double INCH = 25.4;

    private static final Map<String, Double> INSERTION_UNITS = Map.of(
            "1",
            INCH,
            "2",
            12 * INCH,
            "4",
            1.0,
            "5",
            10.0,
            "6",
            1000.0,
            "9",
            INCH / 1000,
            "10",
            36 * INCH,
            "13",
            0.001,
            "14",
            100.0);

    /** @param text METRIC or ENGLISH, where a drawing of sewn products says so */
    static DrawingUnit of(DxfFile file, Optional<String> text, OptionalDouble byMaker) {
        if (byMaker.isPresent()) {
            return new DrawingUnit(byMaker.getAsDouble(), true, Optional.empty());
        }
        Optional<String> code = file.header("$INSUNITS").filter(unit -> !unit.equals("0"));
        Optional<Double> byHeader = code.map(INSERTION_UNITS::get);
        Optional<Double> byText =
                text.map(units -> units.toUpperCase(Locale.ROOT).startsWith("METRIC") ? 1.0 : INCH);
        if (byHeader.isPresent() && byText.isPresent() && !byHeader.equals(byText)) {
            return asked(
                    byHeader.get(), "says two units, %s and %s".formatted(words(byHeader.get()), words(byText.get())));
        }
        Optional<Double> said = byHeader.or(() -> byText);
        if (said.isPresent()) {
            return new DrawingUnit(said.get(), true, Optional.empty());
        }
        boolean imperial = file.header("$MEASUREMENT").filter("0"::equals).isPresent();
        return asked(
                imperial ? INCH : 1,
                code.isPresent()
                        ? "names a unit that is not known ($INSUNITS " + Shown.of(code.get()) + ")"
                        : "does not say in what unit it is drawn");
    }

    private static DrawingUnit asked(double assumed, String what) {
        return new DrawingUnit(
                assumed,
                false,
                Optional.of("The file %s; %s are shown. Say drawing-unit: 1 mm, or 1 in, or 1 cm."
                        .formatted(what, words(assumed))));
    }

    private static String words(double millimetres) {
        return millimetres == 1 ? "millimetres" : millimetres == INCH ? "inches" : "units of " + millimetres + " mm";
    }
}
