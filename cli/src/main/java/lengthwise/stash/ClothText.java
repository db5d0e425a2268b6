package lengthwise.stash;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.job.JobException;
import lengthwise.job.JobFabric.Corner;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.job.JobFabric.There;
import lengthwise.job.LengthText;
import lengthwise.job.LengthUnit;
import lengthwise.job.PriceText;
import lengthwise.job.Quote;
import lengthwise.model.Direction;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.Length;
import lengthwise.model.Shrinkage;

/** Reads and writes a cloth of the stash as words, the same on the command line and in a table. */
public final class ClothText {
    /** No cloth is wider, and no bolt longer: a larger number has the wrong unit. */
    private static final Length WIDEST = Length.ofMillimetres(10_000);

    private static final Length LONGEST = Length.ofMillimetres(500_000);
    /** In a job: whichever cloth of the fabric will do. */
    private static final String ANY = "stash";

    private static final int MOST_PLACES = 1_000;
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._()/-]{0,59}");
    private static final Pattern PERCENT = Pattern.compile("([0-9]{1,2}(?:\\.[0-9]{1,4})?) ?%");

    /** The words about a cloth, in the order of the table. */
    public enum Field {
        NAME("reef-1"),
        FABRIC("reef-print"),
        COLOUR("blue"),
        WIDTH("150 cm"),
        LENGTH("3.2 m"),
        OUTLINE("0 cm, 0 cm; 90 cm, 0 cm; 50 cm, 60 cm"),
        UNUSABLE_EDGE("2 cm; or the near and the far one: 1 cm, 3 cm"),
        DIRECTION("one-way"),
        SHRINKAGE("3 %, 2 %, pre-wash"),
        PRICE("14.50 per m"),
        PRINT("5 cm, 3 cm"),
        FLAWS("40 cm, 3 cm, 20 cm, 2 cm");

        private final String example;

        Field(String example) {
            this.example = example;
        }

        /** Returns its heading in a table, which is its option on the command line. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** Words a complaint about one field with its place. */
    @FunctionalInterface
    public interface Complaints {
        StashException at(Field field, String what);
    }

    private final Map<Field, String> words;
    private final Complaints complaints;

    private ClothText(Map<Field, String> words, Complaints complaints) {
        this.words = words;
        this.complaints = complaints;
    }

    /**
     * Reads a cloth.
     *
     * @param words what is said; nothing, or blanks, where nothing is
     * @throws StashException about the first field that is wrong
     */
    public static StashCloth parse(Map<Field, String> words, Complaints complaints) throws StashException {
        return new ClothText(words, complaints).cloth();
    }

    private StashCloth cloth() throws StashException {
        String name = name(Field.NAME);
        if (name.equals(ANY)) {
            throw complaints.at(Field.NAME, "found \"stash\", which in a job means any cloth; give it another name");
        }
        String fabric = name(Field.FABRIC);
        Optional<String> colour = said(Field.COLOUR).isEmpty() ? Optional.empty() : Optional.of(name(Field.COLOUR));
        Length width = positive(Field.WIDTH, need(Field.WIDTH), WIDEST);
        There there = there(width);
        Optional<UnusableEdge> edge = edge(width);
        Optional<Shrinkage> shrinkage = shrinkage();
        Optional<String> direction = said(Field.DIRECTION);
        Optional<String> price = said(Field.PRICE);
        return new StashCloth(
                name,
                fabric,
                colour,
                width,
                there,
                edge,
                direction.isEmpty()
                        ? Optional.empty()
                        : Optional.of(word(Field.DIRECTION, Direction.values(), direction.get())),
                shrinkage,
                price.isEmpty() ? Optional.empty() : Optional.of(at(Field.PRICE, () -> PriceText.parse(price.get()))),
                print(),
                flaws(width, there.length()));
    }

    private Optional<String> said(Field field) {
        return Optional.ofNullable(words.get(field)).map(String::strip).filter(text -> !text.isEmpty());
    }

    private String need(Field field) throws StashException {
        Optional<String> text = said(field);
        if (text.isEmpty()) {
            throw complaints.at(field, "nothing is said; write for example " + field.example);
        }
        return text.get();
    }

    private String name(Field field) throws StashException {
        String text = need(field);
        if (!NAME.matcher(text).matches()) {
            throw complaints.at(
                    field,
                    "found %s; it begins with a letter or a digit and has at most 60 letters, digits, blanks and . _ - / ( )"
                            .formatted(Quote.of(text)));
        }
        return text;
    }

    private There there(Length width) throws StashException {
        Optional<String> length = said(Field.LENGTH);
        Optional<String> outline = said(Field.OUTLINE);
        if (outline.isEmpty()) {
            return new There(positive(Field.LENGTH, need(Field.LENGTH), LONGEST), List.of());
        }
        List<Corner> corners = new ArrayList<>();
        for (String corner : places(Field.OUTLINE, outline.get())) {
            List<Length> lengths = lengths(Field.OUTLINE, corner, 2);
            corners.add(new Corner(
                    within(Field.OUTLINE, lengths.get(0), LONGEST), within(Field.OUTLINE, lengths.get(1), width)));
        }
        boolean region = corners.size() >= 3
                && PlacedArea.isRegion(Outline.of(Ring.of(corners.stream()
                        .map(corner -> new Point(
                                corner.fromStart().micrometres(),
                                corner.fromSelvedge().micrometres()))
                        .toList())));
        if (!region) {
            throw complaints.at(
                    Field.OUTLINE,
                    "found %s; give at least three corners in turn, each once, as from the cut end, from the near selvedge: %s"
                            .formatted(Quote.of(outline.get()), Field.OUTLINE.example));
        }
        Length farthest = corners.stream().map(Corner::fromStart).reduce(Length.ZERO, Length::max);
        if (length.isPresent()) {
            Length stated = positive(Field.LENGTH, length.get(), LONGEST);
            if (!stated.equals(farthest)) {
                throw complaints.at(
                        Field.LENGTH,
                        "found %s and the outline goes to %s; leave the length out beside an outline"
                                .formatted(Quote.of(length.get()), LengthText.print(farthest, LengthUnit.CM)));
            }
        }
        return new There(farthest, corners);
    }

    private Optional<UnusableEdge> edge(Length width) throws StashException {
        Optional<String> text = said(Field.UNUSABLE_EDGE);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        boolean both = text.get().contains(",");
        List<Length> strips = lengths(Field.UNUSABLE_EDGE, text.get(), both ? 2 : 1);
        UnusableEdge edge = new UnusableEdge(strips.get(0), strips.get(strips.size() - 1));
        within(Field.UNUSABLE_EDGE, edge.near(), WIDEST);
        within(Field.UNUSABLE_EDGE, edge.far(), WIDEST);
        if (edge.near().plus(edge.far()).compareTo(width) >= 0) {
            throw complaints.at(
                    Field.UNUSABLE_EDGE,
                    "found %s, and the cloth is %s wide: nothing is left to cut from"
                            .formatted(Quote.of(text.get()), LengthText.print(width, LengthUnit.CM)));
        }
        return Optional.of(edge);
    }

    private Optional<Shrinkage> shrinkage() throws StashException {
        Optional<String> text = said(Field.SHRINKAGE);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String[] parts = text.get().split(",", -1);
        if (parts.length != 3) {
            throw complaints.at(
                    Field.SHRINKAGE,
                    "found %s; write lengthwise, crosswise and how it is handled: %s"
                            .formatted(Quote.of(text.get()), Field.SHRINKAGE.example));
        }
        return Optional.of(new Shrinkage(
                share(parts[0].strip()),
                share(parts[1].strip()),
                word(Field.SHRINKAGE, Shrinkage.Handling.values(), parts[2].strip())));
    }

    private double share(String text) throws StashException {
        Matcher percent = PERCENT.matcher(text);
        if (!percent.matches() || Double.parseDouble(percent.group(1)) >= 50) {
            throw complaints.at(
                    Field.SHRINKAGE,
                    "found %s; write a percentage from 0 %% to below 50 %%, with at most four decimals"
                            .formatted(Quote.of(text)));
        }
        return new BigDecimal(percent.group(1)).movePointLeft(2).doubleValue();
    }

    private Optional<Corner> print() throws StashException {
        Optional<String> text = said(Field.PRINT);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        List<Length> lengths = lengths(Field.PRINT, text.get(), 2);
        Length along = lengths.get(0);
        if (Math.abs(along.micrometres()) > LONGEST.micrometres()) {
            throw complaints.at(Field.PRINT, tooLarge(along, LONGEST));
        }
        return Optional.of(new Corner(along, within(Field.PRINT, lengths.get(1), WIDEST)));
    }

    private List<Flaw> flaws(Length width, Length length) throws StashException {
        Optional<String> text = said(Field.FLAWS);
        List<Flaw> flaws = new ArrayList<>();
        if (text.isEmpty()) {
            return flaws;
        }
        for (String each : places(Field.FLAWS, text.get())) {
            List<Length> lengths = lengths(Field.FLAWS, each, 4);
            for (int i = 0; i < 4; i++) {
                within(Field.FLAWS, lengths.get(i), i < 2 ? length : width);
            }
            Flaw flaw = new Flaw(lengths.get(0), lengths.get(1), lengths.get(2), lengths.get(3));
            if (flaw.length().micrometres() == 0
                    || flaw.width().micrometres() == 0
                    || flaw.fromSelvedge().plus(flaw.width()).compareTo(width) > 0) {
                throw complaints.at(
                        Field.FLAWS,
                        "found %s; write from the cut end, length, from the near selvedge, width, within the cloth: %s"
                                .formatted(Quote.of(each.strip()), Field.FLAWS.example));
            }
            flaws.add(flaw);
        }
        return flaws;
    }

    private List<String> places(Field field, String text) throws StashException {
        List<String> places = Arrays.asList(text.split(";", -1));
        if (places.size() > MOST_PLACES) {
            throw complaints.at(field, "found %d places; at most %d go in".formatted(places.size(), MOST_PLACES));
        }
        return places;
    }

    private List<Length> lengths(Field field, String text, int count) throws StashException {
        List<Length> lengths = new ArrayList<>();
        for (String each : text.split(",", -1)) {
            lengths.add(at(field, () -> LengthText.parse(each.strip())));
        }
        if (lengths.size() != count) {
            throw complaints.at(
                    field, "found %s; write for example %s".formatted(Quote.of(text.strip()), field.example));
        }
        return lengths;
    }

    private Length positive(Field field, String text, Length most) throws StashException {
        Length length = at(field, () -> LengthText.parse(text));
        if (length.micrometres() <= 0) {
            throw complaints.at(field, "found %s; it must be more than 0".formatted(Quote.of(text)));
        }
        return within(field, length, most);
    }

    private Length within(Field field, Length length, Length most) throws StashException {
        if (length.micrometres() < 0 || length.compareTo(most) > 0) {
            throw complaints.at(field, tooLarge(length, most));
        }
        return length;
    }

    private static String tooLarge(Length length, Length most) {
        return "found %s; it is from 0 to %s here"
                .formatted(LengthText.print(length, LengthUnit.CM), LengthText.print(most, LengthUnit.CM));
    }

    private <E extends Enum<E>> E word(Field field, E[] words, String text) throws StashException {
        for (E constant : words) {
            if (word(constant).equals(text)) {
                return constant;
            }
        }
        throw complaints.at(
                field,
                "found %s; allowed: %s"
                        .formatted(
                                Quote.of(text),
                                Arrays.stream(words).map(ClothText::word).collect(Collectors.joining(", "))));
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @FunctionalInterface
    private interface Reading<T> {
        T read() throws JobException;
    }

    private <T> T at(Field field, Reading<T> reading) throws StashException {
        try {
            return reading.read();
        } catch (JobException wrong) {
            throw complaints.at(field, wrong.getMessage());
        }
    }

    /** Returns the words about one field of a cloth, which read back as the same; empty where nothing is known. */
    public static String print(StashCloth cloth, Field field, LengthUnit unit) {
        return switch (field) {
            case NAME -> cloth.name();
            case FABRIC -> cloth.fabric();
            case COLOUR -> cloth.colour().orElse("");
            case WIDTH -> LengthText.print(cloth.width(), unit);
            case LENGTH -> LengthText.print(cloth.there().length(), unit);
            case OUTLINE ->
                cloth.there().corners().stream()
                        .map(corner -> print(unit, corner.fromStart(), corner.fromSelvedge()))
                        .collect(Collectors.joining("; "));
            case UNUSABLE_EDGE ->
                cloth.edge()
                        .map(edge -> edge.near().equals(edge.far())
                                ? print(unit, edge.near())
                                : print(unit, edge.near(), edge.far()))
                        .orElse("");
            case DIRECTION -> cloth.direction().map(ClothText::word).orElse("");
            case SHRINKAGE ->
                cloth.shrinkage()
                        .map(shrinkage -> "%s, %s, %s"
                                .formatted(
                                        percent(shrinkage.lengthwise()),
                                        percent(shrinkage.crosswise()),
                                        word(shrinkage.handled())))
                        .orElse("");
            case PRICE -> cloth.price().map(PriceText::print).orElse("");
            case PRINT ->
                cloth.print()
                        .map(point -> print(unit, point.fromStart(), point.fromSelvedge()))
                        .orElse("");
            case FLAWS ->
                cloth.flaws().stream()
                        .map(flaw -> print(unit, flaw.fromStart(), flaw.length(), flaw.fromSelvedge(), flaw.width()))
                        .collect(Collectors.joining("; "));
        };
    }

    private static String print(LengthUnit unit, Length... lengths) {
        return Stream.of(lengths).map(length -> LengthText.print(length, unit)).collect(Collectors.joining(", "));
    }

    private static String percent(double share) {
        BigDecimal percent = BigDecimal.valueOf(share).movePointRight(2);
        return (percent.signum() == 0 ? "0" : percent.stripTrailingZeros().toPlainString()) + " %";
    }
}
