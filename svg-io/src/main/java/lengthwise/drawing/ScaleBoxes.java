package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Length;

/**
 * The test square of a drawing: the one the maker names, or one named or lettered as such. It must measure what it
 * should in both directions.
 */
final class ScaleBoxes {
    /** How far a side may be off, as a share: a quarter of a millimetre on 10 cm, where 4 in is 1.6 mm more. */
    private static final double TOLERANCE = 0.0025;

    /** Larger squares (mm) are no test squares unless the maker says so. */
    private static final double LARGEST = 310;

    private static final Pattern LENGTH = Pattern.compile(
            "(\\d+(?:[.,]\\d+)?)\\s*-?\\s*(mm|cm|in|inch|inches|\"|″|”)(?![\\p{L}])", Pattern.CASE_INSENSITIVE);

    private static final Map<String, Double> USUAL = Map.of(
            "1 in", 25.4, "2 in", 50.8, "3 in", 76.2, "4 in", 101.6, "2 cm", 20.0, "3 cm", 30.0, "5 cm", 50.0, "10 cm",
            100.0, "20 cm", 200.0);

    private static final Map<String, Double> MISTAKES = Map.of(
            "read at 96 units to the inch, but drawn at 72", 72.0 / 96,
            "read at 72 units to the inch, but drawn at 96", 96.0 / 72,
            "read at 96 units to the inch, but drawn at 90", 90.0 / 96,
            "read at 90 units to the inch, but drawn at 96", 96.0 / 90,
            "read in millimetres, but drawn in inches", 1 / 25.4,
            "read in inches, but drawn in millimetres", 25.4,
            "read in millimetres, but drawn in centimetres", 0.1,
            "read in centimetres, but drawn in millimetres", 10.0);

    private ScaleBoxes() {}

    /**
     * A test square of the drawing.
     *
     * @param width the first side as drawn, in mm
     * @param height the other side, in mm
     * @param measures what it should measure, as the maker or its lettering says; empty if nobody says
     * @param byMaker whether the maker names it
     */
    record Found(DrawnShape shape, double width, double height, Optional<Length> measures, boolean byMaker) {
        /** Returns a sentence about what it measures. */
        String spoken() {
            return "%s, %.2f × %.2f mm".formatted(shape.spoken(), width, height)
                    + usual((width + height) / 2)
                            .map(usual -> " (" + usual + ")")
                            .orElse("");
        }
    }

    /** Finds the test squares. */
    static List<Found> in(Drawing drawing, ScaleStatement scale) throws DrawingException {
        List<Found> found = new ArrayList<>();
        if (scale.scaleBox().isPresent()) {
            ScaleStatement.ScaleBox said = scale.scaleBox().get();
            DrawnShape shape = named(drawing, said.id());
            Sides sides = Sides.of(shape)
                    .orElseThrow(
                            () -> new DrawingException("%s: the scale box %s is no square; draw one with four sides."
                                    .formatted(drawing.file(), shape.spoken())));
            found.add(new Found(shape, sides.width, sides.height, Optional.of(said.measures()), true));
        }
        for (DrawnShape shape : drawing.shapes()) {
            Optional<Sides> sides = Sides.of(shape);
            if (shape.visible()
                    && sides.isPresent()
                    && sides.get().isSquarish()
                    && found.stream().noneMatch(known -> known.shape().equals(shape))
                    && isCalledScaleBox(drawing, shape)) {
                found.add(new Found(
                        shape, sides.get().width, sides.get().height, lettered(drawing, shape, sides.get()), false));
            }
        }
        return found;
    }

    /** Returns the scale at which the drawing must be read for its test square to be right, if nothing else says it. */
    static OptionalDouble millimetresPerUnit(Drawing drawing, ScaleStatement scale) throws DrawingException {
        if (drawing.scaleStated()) {
            return OptionalDouble.empty();
        }
        for (Found box : in(drawing, scale)) {
            if (box.measures.isPresent()) {
                if (Math.abs(box.width / box.height - 1) > TOLERANCE) {
                    throw new DrawingException(
                            "%s: the scale box %s is not square, so the scale cannot be taken from it."
                                    .formatted(drawing.file(), box.spoken()));
                }
                double side = (box.width + box.height) / 2;
                return OptionalDouble.of(
                        drawing.millimetresPerUnit() * box.measures.get().millimetres() / side);
            }
        }
        return OptionalDouble.empty();
    }

    /** Checks that every test square measures what it should. */
    static void check(Drawing drawing, List<Found> boxes) throws DrawingException {
        for (Found box : boxes) {
            if (box.measures.isEmpty()) {
                continue;
            }
            double wanted = box.measures.get().millimetres();
            if (!fits(box.width, wanted) || !fits(box.height, wanted)) {
                throw new DrawingException("%s: the scale box %s should measure %s and measures %s. %s"
                        .formatted(
                                drawing.file(),
                                box.shape.spoken(),
                                both(wanted, wanted),
                                both(box.width, box.height),
                                advice(box, wanted)));
            }
        }
    }

    private static String both(double width, double height) {
        return "%.2f × %.2f mm (%.3f × %.3f in)".formatted(width, height, width / 25.4, height / 25.4);
    }

    private static String advice(Found box, double wanted) {
        if (!fits(box.width, box.height)) {
            return "The two directions differ: the drawing is stretched; export it again at its true size.";
        }
        double side = (box.width + box.height) / 2;
        Optional<String> usual = usual(side);
        if (usual.isPresent()) {
            return "It looks like a square of " + usual.get() + ": correct what it should measure, or the drawing.";
        }
        return MISTAKES.entrySet().stream()
                .filter(mistake -> fits(side, wanted * mistake.getValue()))
                .map(mistake -> "It looks as if the drawing was " + mistake.getKey() + ".")
                .findFirst()
                .orElse("Export the drawing again at its true size.");
    }

    private static Optional<String> usual(double side) {
        return USUAL.entrySet().stream()
                .filter(usual -> fits(side, usual.getValue()))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private static boolean fits(double side, double wanted) {
        return Math.abs(side - wanted) <= TOLERANCE * wanted;
    }

    private static DrawnShape named(Drawing drawing, String name) throws DrawingException {
        Optional<DrawnShape> own = drawing.shapes().stream()
                .filter(shape -> shape.names().match(name))
                .findFirst();
        Optional<DrawnShape> held = drawing.shapes().stream()
                .filter(shape ->
                        shape.groups().stream().anyMatch(group -> group.names().match(name)))
                .filter(shape -> Sides.of(shape).isPresent())
                .findFirst();
        return own.or(() -> held)
                .orElseThrow(() -> new DrawingException(
                        "%s: there is no scale box '%s' in the drawing; give the id or label of the test square."
                                .formatted(drawing.file(), name)));
    }

    private static boolean isCalledScaleBox(Drawing drawing, DrawnShape shape) {
        boolean named = Stream.concat(
                        Stream.of(shape.names()),
                        shape.groups().stream().filter(group -> !group.layer()).map(Group::names))
                .anyMatch(MarkKind.SCALE_BOX::isSaidByAny);
        return named
                || inside(drawing, shape)
                        .map(text -> new Names(Optional.of(text.words()), Optional.empty(), List.of()))
                        .anyMatch(MarkKind.SCALE_BOX::isSaidByAny);
    }

    private static Stream<DrawnText> inside(Drawing drawing, DrawnShape shape) {
        Optional<Box> box = Sides.box(shape);
        return drawing.texts().stream()
                .filter(DrawnText::visible)
                .filter(text -> box.filter(b -> b.contains(text.middle())).isPresent());
    }

    private static Optional<Length> lettered(Drawing drawing, DrawnShape shape, Sides sides) {
        Set<Length> said = new TreeSet<>();
        Stream.concat(shape.names().spoken().stream(), inside(drawing, shape).map(DrawnText::words))
                .forEach(words -> {
                    Matcher matcher = LENGTH.matcher(words);
                    while (matcher.find()) {
                        said.add(length(matcher.group(1), matcher.group(2)));
                    }
                });
        Optional<Length> right = said.stream()
                .filter(length -> fits(sides.width, length.millimetres()) && fits(sides.height, length.millimetres()))
                .findFirst();
        return right.or(() -> said.size() == 1 ? said.stream().findFirst() : Optional.empty());
    }

    private static Length length(String number, String unit) {
        double value = Double.parseDouble(number.replace(',', '.'));
        double millimetres = switch (unit.toLowerCase(Locale.ROOT)) {
            case "mm" -> 1;
            case "cm" -> 10;
            default -> 25.4;
        };
        return Length.ofMillimetres(value * millimetres);
    }

    /** The sides of a four-cornered shape, in mm, however it is turned. */
    private record Sides(double width, double height) {
        static Optional<Sides> of(DrawnShape shape) {
            return ring(shape)
                    .filter(ring -> ring.size() == 4)
                    .map(ring -> new Sides(
                            ring.vertex(0).distance(ring.vertex(1)) / 1000,
                            ring.vertex(1).distance(ring.vertex(2)) / 1000));
        }

        static Optional<Box> box(DrawnShape shape) {
            return ring(shape).map(Ring::box);
        }

        private static Optional<Ring> ring(DrawnShape shape) {
            return shape.chains().size() == 1
                    ? Mending.of(shape.chains().get(0)).ring()
                    : Optional.empty();
        }

        boolean isSquarish() {
            return Math.max(width, height) <= LARGEST && Math.abs(width / height - 1) < 0.1;
        }
    }

    /** Says whether a point of lettering belongs to one of the boxes. */
    static boolean lettersABox(List<Found> boxes, Point at) {
        return boxes.stream()
                .anyMatch(found ->
                        Sides.box(found.shape).filter(box -> box.contains(at)).isPresent());
    }
}
