package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.job.JobFabric.Across;
import lengthwise.job.JobFabric.Border;
import lengthwise.job.JobFabric.Corner;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.job.JobFabric.PrintRepeat;
import lengthwise.job.JobFabric.RightSide;
import lengthwise.job.JobFabric.There;
import lengthwise.job.JobFabric.Zone;
import lengthwise.model.Axis;
import lengthwise.model.Direction;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.Pile;
import lengthwise.model.Shade;
import lengthwise.model.Shrinkage;
import lengthwise.model.Spread;

/** Reads one fabric of the job file. */
final class FabricReading {
    /** No cloth is wider, and no shop's step longer: a larger number has the wrong unit. */
    static final Length WIDEST = Length.ofMillimetres(10_000);

    /** No bolt is longer: a larger number has the wrong unit. */
    private static final Length LONGEST = Length.ofMillimetres(500_000);

    private static final int MOST_CORNERS = 1_000;

    private static final int MOST_PLIES = 200;

    private static final Pattern FILE_NAME =
            Pattern.compile("[^/\\\\:*?\"<>|.\\p{Cntrl}][^/\\\\:*?\"<>|\\p{Cntrl}]{0,59}");

    private static final String[] KEYS = Stream.of(
                    List.of(
                            "for",
                            "width",
                            "unusable-edge",
                            "direction",
                            "pile",
                            "most-stretch",
                            "right-side",
                            "repeat",
                            "shrinkage",
                            "spread",
                            "price",
                            "sold-by",
                            "border",
                            "zones",
                            "shade",
                            "keep-together",
                            "flaws",
                            "length",
                            "outline",
                            "already-cut"),
                    BuyingReading.KEYS)
            .flatMap(List::stream)
            .toArray(String[]::new);

    private final Measuring measuring;

    FabricReading(Measuring measuring) {
        this.measuring = measuring;
    }

    JobFabric read(Entry entry) throws JobException {
        if (!FILE_NAME.matcher(entry.name()).matches() || entry.name().endsWith(".")) {
            throw entry.keyError("the name of a fabric names its marker's file, so it has at most 60 letters, "
                    + "none of / \\ : * ? \" < > | and no point at its ends");
        }
        Fields fabric = entry.fields("a block that begins with width: 150 cm", KEYS);
        String role = fabric.read("for", e -> e.text("what the fabric is for, such as shell or lining"))
                .orElse(entry.name());
        Length width = measuring.positive(fabric.need("width", "150 cm"), WIDEST);
        Optional<UnusableEdge> edge = fabric.read("unusable-edge", this::unusableEdge);
        JobSpread spread = fabric.read("spread", this::spread).orElse(JobSpread.UNSAID);
        Optional<There> there = there(fabric, width);
        if (edge.isPresent()) {
            refuseWrongEdges(width, edge.get(), spread.form(), fabric.need("unusable-edge", ""));
            refuseWrongEdges(width, edge.get(), spread.compare(), fabric.need("unusable-edge", ""));
        }
        refuseHiddenCloth(fabric, spread);
        Optional<Pile> pile = pile(fabric);
        Optional<PrintRepeat> repeat = fabric.read("repeat", new RepeatReading(measuring)::read);
        refuseUnevenEitherWay(fabric, repeat);
        Optional<JobCutAlready> cutAlready = fabric.read("already-cut", this::cutAlready);
        if (cutAlready.isPresent() && spread.compare().isPresent()) {
            throw fabric.need("already-cut", "")
                    .keyError("cloth that is cut already lies as it lies; take compare: out of spread, or this");
        }
        return new JobFabric(
                entry.name(),
                role,
                width,
                edge,
                fabric.read("direction", e -> e.word(Direction.class, Set.of())),
                fabric.read("most-stretch", e -> e.word(Axis.class, Set.of())),
                fabric.read("right-side", e -> e.word(RightSide.class, Set.of())),
                repeat,
                fabric.read("shrinkage", FabricReading::shrinkage),
                spread,
                fabric.read("price", this::price),
                fabric.read("sold-by", e -> measuring.positive(e, WIDEST)),
                fabric.read("flaws", e -> flaws(e, width, there)).orElse(List.of()),
                there,
                pile,
                cutAlready,
                across(fabric, width),
                new BuyingReading(measuring, this::price).read(fabric));
    }

    private JobCutAlready cutAlready(Entry entry) throws JobException {
        String example = "{marker: markers/reef-print.svg, up-to: 80 cm}, or numbers: [1, 2, 5] in place of up-to";
        Fields cut = entry.fields(example, "marker", "numbers", "up-to", "spoilt");
        String marker = cut.need("marker", "markers/reef-print.svg")
                .text("the path of the marker that is cut from, seen from the folder of the job file");
        List<Integer> numbers = cut.read("numbers", FabricReading::numbers).orElse(List.of());
        Optional<Length> upTo = cut.read("up-to", e -> measuring.positive(e, LONGEST));
        if (numbers.isEmpty() == upTo.isEmpty()) {
            throw entry.error("write either up-to: 80 cm, how far is cut, or numbers: [1, 2, 5], what is cut");
        }
        return new JobCutAlready(
                marker,
                numbers,
                upTo,
                cut.read("spoilt", FabricReading::numbers).orElse(List.of()));
    }

    private static List<Integer> numbers(Entry entry) throws JobException {
        List<Integer> numbers = new ArrayList<>();
        for (Entry item : entry.items("[1, 2, 5], the numbers on the marker")) {
            numbers.add(Measuring.count(item, 1_000_000, "a number on the marker, such as 5"));
        }
        return numbers;
    }

    private Across across(Fields fabric, Length width) throws JobException {
        return new Across(
                fabric.read("border", e -> border(e, width)),
                fabric.read("zones", e -> zones(e, width)).orElse(List.of()),
                fabric.read("shade", e -> shade(e, width)),
                isYes(fabric, "keep-together"));
    }

    private Shade shade(Entry entry, Length width) throws JobException {
        Fields shade = entry.fields("{lengthwise: 60 cm, crosswise: 30 cm}", "lengthwise", "crosswise");
        Optional<Length> lengthwise = shade.read("lengthwise", e -> measuring.positive(e, LONGEST));
        Optional<Length> crosswise = shade.read("crosswise", e -> measuring.positive(e, width));
        if (lengthwise.isEmpty() && crosswise.isEmpty()) {
            throw entry.error(
                    "write how near together the pieces of a garment lie, lengthwise: 60 cm, or left and right of a piece, crosswise: 30 cm, or both");
        }
        return new Shade(lengthwise, crosswise);
    }

    private Border border(Entry entry, Length width) throws JobException {
        Fields border = entry.fields("{from-selvedge: 4 cm, selvedge: near}", "from-selvedge", "selvedge");
        return new Border(
                measuring.notNegative(border.need("from-selvedge", "4 cm"), width),
                border.read("selvedge", e -> e.word(Lying.Selvedge.class, Set.of()))
                        .orElse(Lying.Selvedge.NEAR));
    }

    private List<Zone> zones(Entry entry, Length width) throws JobException {
        List<Zone> zones = new ArrayList<>();
        for (Entry item :
                entry.named("border: {from-selvedge: 0 cm, to: 30 cm}").values()) {
            Fields zone = item.fields("{from-selvedge: 0 cm, to: 30 cm}", "from-selvedge", "to");
            Length from = measuring.notNegative(zone.need("from-selvedge", "0 cm"), width);
            Length to = measuring.positive(zone.need("to", "30 cm"), width);
            if (to.compareTo(from) <= 0) {
                throw item.error("the zone ends %s from the near selvedge, before it begins"
                        .formatted(LengthText.print(to, LengthUnit.CM)));
            }
            zones.add(new Zone(item.name(), from, to));
        }
        return zones;
    }

    private static Optional<Pile> pile(Fields fabric) throws JobException {
        Optional<Pile> pile = fabric.read("pile", e -> e.word(Pile.class, Set.of()));
        Optional<Direction> direction = fabric.read("direction", e -> e.word(Direction.class, Set.of()));
        if (pile.isPresent() && direction.isPresent() && direction.get() != Direction.ONE_WAY) {
            throw fabric.need("pile", "up")
                    .keyError(
                            "pile looks different from either end, so its cloth is one-way: leave direction: %s out, or"
                                            .formatted(Entry.word(direction.get()))
                                    + " the pile");
        }
        return pile;
    }

    /** Uneven stripes and checks: Pacific Northwest Extension PNW187, Sewing with stripes, checks and plaids. */
    private static void refuseUnevenEitherWay(Fields fabric, Optional<PrintRepeat> repeat) throws JobException {
        Optional<Direction> direction = fabric.read("direction", e -> e.word(Direction.class, Set.of()));
        if (repeat.filter(PrintRepeat::uneven).isPresent() && direction.equals(Optional.of(Direction.EITHER_WAY))) {
            throw fabric.need("direction", "one-way")
                    .error(
                            "found either-way, and an uneven repeat looks different turned round; leave direction out for"
                                    + " one-way, write one-way-per-garment, or leave uneven out of the repeat");
        }
    }

    private UnusableEdge unusableEdge(Entry entry) throws JobException {
        Fields edge = entry.fields("{each-side: 2 cm}, or {near: 1 cm, far: 3 cm}", "each-side", "near", "far");
        Optional<Length> eachSide = edge.read("each-side", measuring::notNegative);
        Optional<Length> near = edge.read("near", measuring::notNegative);
        Optional<Length> far = edge.read("far", measuring::notNegative);
        if (eachSide.isPresent() ? near.isPresent() || far.isPresent() : near.isEmpty() || far.isEmpty()) {
            throw entry.error(
                    "write either each-side, or both near and far (near is the selvedge at the top of the marker)");
        }
        return eachSide.map(UnusableEdge::eachSide)
                .orElseGet(() -> new UnusableEdge(near.orElseThrow(), far.orElseThrow()));
    }

    private JobSpread spread(Entry entry) throws JobException {
        Fields spread = entry.fields(
                "{form: single-layer, end-allowance: {each-end: 2 cm}}",
                "form",
                "plies",
                "plies-run",
                "end-allowance",
                "compare");
        Optional<Spread.Form> form = spread.read("form", e -> e.word(Spread.Form.class, Set.of()));
        Optional<Integer> plies = spread.read(
                "plies",
                e -> plies(
                        e,
                        form.filter(JobSpread::isInPlies)
                                .orElseThrow(
                                        () -> e.keyError(
                                                "only plies are counted: write it with form: plies-face-up or form: plies-face-to-face"))));
        Optional<Spread.PlyRun> run = spread.read("plies-run", e -> {
            if (!form.equals(Optional.of(Spread.Form.PLIES_FACE_TO_FACE))) {
                throw e.keyError("only plies face to face have a choice; write it with form: plies-face-to-face");
            }
            return e.word(Spread.PlyRun.class, Set.of());
        });
        Optional<Spread.Form> compare = spread.read("compare", e -> comparison(e, form, plies));
        return new JobSpread(form, plies, run, spread.read("end-allowance", this::endAllowance), compare);
    }

    private static Spread.Form comparison(Entry entry, Optional<Spread.Form> form, Optional<Integer> plies)
            throws JobException {
        Spread.Form other = entry.word(Spread.Form.class, Set.of());
        Spread.Form laid = form.orElse(Spread.Form.SINGLE_LAYER);
        if (other == laid || other == Spread.Form.TUBE || laid == Spread.Form.TUBE) {
            throw entry.error(
                    other == laid
                            ? "found %s, which is how it lies; name another form".formatted(Entry.word(other))
                            : "a tube and flat cloth are not the same cloth; make two jobs of them");
        }
        if (other == Spread.Form.PLIES_FACE_TO_FACE && plies.orElse(2) % 2 == 1) {
            throw entry.error("plies face to face make pairs, and %d is odd; take an even number of plies"
                    .formatted(plies.orElseThrow()));
        }
        return other;
    }

    /** Where a place of the bought cloth comes to lie in the other layers is worked out for one lengthwise fold alone. */
    private static void refuseHiddenCloth(Fields fabric, JobSpread spread) throws JobException {
        List<Spread.Form> folded = Stream.of(spread.form(), spread.compare())
                .flatMap(Optional::stream)
                .filter(form -> form != Spread.Form.SINGLE_LAYER)
                .toList();
        Optional<Entry> outline = fabric.get("outline");
        if (outline.isPresent() && !folded.isEmpty()) {
            throw hidden(outline.get(), "single-layer", folded.get(0));
        }
        Optional<Entry> flaws = fabric.get("flaws");
        Optional<Spread.Form> otherwise = folded.stream()
                .filter(form -> form != Spread.Form.FOLD_LENGTHWISE)
                .findFirst();
        if (flaws.isPresent() && otherwise.isPresent()) {
            throw hidden(flaws.get(), "single-layer or fold-lengthwise", otherwise.get());
        }
    }

    private static JobException hidden(Entry entry, String goesWith, Spread.Form form) {
        return entry.keyError("goes with %s cloth, and this lies %s".formatted(goesWith, Entry.word(form)));
    }

    private static int plies(Entry entry, Spread.Form form) throws JobException {
        int plies = Measuring.count(entry, MOST_PLIES, "how many plies, such as 4");
        if (form == Spread.Form.PLIES_FACE_TO_FACE && plies % 2 == 1) {
            throw entry.error(
                    "found %d; plies face to face make pairs, so there is an even number of them".formatted(plies));
        }
        return plies;
    }

    private static void refuseWrongEdges(Length width, UnusableEdge edge, Optional<Spread.Form> form, Entry entry)
            throws JobException {
        if (form.equals(Optional.of(Spread.Form.TUBE)) && !edge.equals(UnusableEdge.eachSide(Length.ZERO))) {
            throw entry.error("a tube has no selvedges: leave unusable-edge out, or cut the tube open and lay it"
                    + " in a single layer");
        }
        boolean folded = form.equals(Optional.of(Spread.Form.FOLD_LENGTHWISE));
        boolean foldedTwice = form.equals(Optional.of(Spread.Form.SELVEDGES_TO_MIDDLE));
        Length lost = folded || foldedTwice
                ? Length.max(edge.near(), edge.far()).times(foldedTwice ? 4 : 2)
                : edge.near().plus(edge.far());
        if (lost.compareTo(width) >= 0) {
            throw entry.error("the unusable edges take %s%s and the fabric is %s wide: nothing is left to cut from"
                    .formatted(
                            LengthText.print(lost, LengthUnit.CM),
                            folded || foldedTwice ? " when folded" : "",
                            LengthText.print(width, LengthUnit.CM)));
        }
    }

    static boolean isYes(Fields fields, String key) throws JobException {
        return fields.read(key, e -> e.word(Answer.class, Set.of())).equals(Optional.of(Answer.YES));
    }

    private enum Answer {
        YES,
        NO
    }

    private static Shrinkage shrinkage(Entry entry) throws JobException {
        Fields shrinkage = entry.fields(
                "{lengthwise: 3 %, crosswise: 2 %, handled: pre-wash}", "lengthwise", "crosswise", "handled");
        double lengthwise = shrinkage.read("lengthwise", Measuring::share).orElse(0.0);
        double crosswise = shrinkage.read("crosswise", Measuring::share).orElse(0.0);
        Shrinkage.Handling handled = shrinkage
                .need("handled", "pre-wash (or add-to-pieces, in-pattern)")
                .word(Shrinkage.Handling.class, Set.of());
        return new Shrinkage(lengthwise, crosswise, handled);
    }

    private Length endAllowance(Entry entry) throws JobException {
        Fields ends = entry.fields("{each-end: 2 cm}", "each-end");
        return measuring.notNegative(ends.need("each-end", "2 cm"), WIDEST);
    }

    Price price(Entry entry) throws JobException {
        String text = entry.text(PriceText.EXAMPLE);
        return entry.placing(() -> PriceText.parse(text));
    }

    private Optional<There> there(Fields fabric, Length width) throws JobException {
        Optional<Length> length = fabric.read("length", e -> measuring.positive(e, LONGEST));
        Optional<List<Corner>> corners = fabric.read("outline", e -> corners(e, width));
        if (length.isPresent() && corners.isPresent()) {
            throw fabric.need("length", "")
                    .keyError("the outline says how long the remnant is already; keep length or outline, not both");
        }
        if (corners.isPresent()) {
            Length farthest = corners.get().stream().map(Corner::fromStart).reduce(Length.ZERO, Length::max);
            return Optional.of(new There(farthest, corners.get()));
        }
        return length.map(straight -> new There(straight, List.of()));
    }

    private List<Corner> corners(Entry entry, Length width) throws JobException {
        String example = "{from-start: 0 cm, from-selvedge: 0 cm}";
        List<Corner> corners = new ArrayList<>();
        List<Entry> items = entry.items("- " + example + " for each corner of the remnant, in turn");
        if (items.size() < 3 || items.size() > MOST_CORNERS) {
            throw entry.error("found %d corners; a remnant has from 3 to %d".formatted(items.size(), MOST_CORNERS));
        }
        for (Entry item : items) {
            Fields corner = item.fields(example, "from-start", "from-selvedge");
            Corner read = new Corner(
                    measuring.notNegative(corner.need("from-start", "0 cm"), LONGEST),
                    measuring.notNegative(corner.need("from-selvedge", "0 cm")));
            if (read.fromSelvedge().compareTo(width) > 0) {
                throw item.error("the corner lies %s from the selvedge and the fabric is %s wide"
                        .formatted(
                                LengthText.print(read.fromSelvedge(), LengthUnit.CM),
                                LengthText.print(width, LengthUnit.CM)));
            }
            corners.add(read);
        }
        Ring ring = Ring.of(corners.stream()
                .map(corner -> new Point(
                        corner.fromStart().micrometres(), corner.fromSelvedge().micrometres()))
                .toList());
        if (!PlacedArea.isRegion(Outline.of(ring))) {
            throw entry.error("the outline touches or crosses itself; give its corners in turn, each once");
        }
        return corners;
    }

    private List<Flaw> flaws(Entry entry, Length width, Optional<There> there) throws JobException {
        String example = "{from-start: 40 cm, length: 3 cm, from-selvedge: 20 cm, width: 2 cm}";
        List<Flaw> flaws = new ArrayList<>();
        for (Entry item : entry.items("- " + example)) {
            Fields flaw = item.fields(example, "from-start", "length", "from-selvedge", "width");
            boolean allAlong =
                    flaw.get("from-start").isEmpty() && flaw.get("length").isEmpty();
            boolean allAcross =
                    flaw.get("from-selvedge").isEmpty() && flaw.get("width").isEmpty();
            if (allAlong && (allAcross || there.isEmpty())) {
                throw item.error(
                        allAcross
                                ? "found a flaw without a place; write " + example
                                : "a flaw along the whole fabric needs the length of the fabric; write length: 2 m"
                                        + " beside its width, or from-start and length for the flaw");
            }
            Flaw read = new Flaw(
                    allAlong ? Length.ZERO : measuring.notNegative(flaw.need("from-start", "40 cm")),
                    allAlong ? there.get().length() : measuring.positive(flaw.need("length", "3 cm")),
                    allAcross ? Length.ZERO : measuring.notNegative(flaw.need("from-selvedge", "20 cm")),
                    allAcross ? width : measuring.positive(flaw.need("width", "2 cm")));
            Length reach = read.fromSelvedge().plus(read.width());
            if (reach.compareTo(width) > 0) {
                throw item.error("the flaw reaches %s from the selvedge and the fabric is %s wide"
                        .formatted(LengthText.print(reach, LengthUnit.CM), LengthText.print(width, LengthUnit.CM)));
            }
            flaws.add(read);
        }
        return flaws;
    }
}
