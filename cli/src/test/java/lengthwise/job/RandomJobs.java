package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Supplier;
import java.util.random.RandomGenerator;
import lengthwise.drawing.EdgePoint;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.ScaleStatement;
import lengthwise.drawing.ScaleStatement.ScaleBox;
import lengthwise.job.JobFabric.Across;
import lengthwise.job.JobFabric.Border;
import lengthwise.job.JobFabric.Corner;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.job.JobFabric.PrintMotif;
import lengthwise.job.JobFabric.PrintRepeat;
import lengthwise.job.JobFabric.RightSide;
import lengthwise.job.JobFabric.There;
import lengthwise.job.JobFabric.Zone;
import lengthwise.job.JobPiece.Grain;
import lengthwise.job.JobPiece.Lying;
import lengthwise.job.JobPiece.MatchMark;
import lengthwise.job.JobPiece.MotifMark;
import lengthwise.job.JobPiece.Up;
import lengthwise.job.JobStrip.PrintUse;
import lengthwise.job.JobStrip.Runs;
import lengthwise.job.LengthRule.Source;
import lengthwise.job.OrderLine.Measure;
import lengthwise.model.Axis;
import lengthwise.model.Cut;
import lengthwise.model.Direction;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.GrainTolerance;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.Lying.Selvedge;
import lengthwise.model.Lying.Tie;
import lengthwise.model.MarkRef;
import lengthwise.model.MatchPoint.Partner;
import lengthwise.model.Pile;
import lengthwise.model.Shade;
import lengthwise.model.Shrinkage;
import lengthwise.model.Size;
import lengthwise.model.Spread;
import lengthwise.workshop.SizeTable;

/** Makes jobs that a job file may hold, each part of them sometimes there and sometimes not. */
final class RandomJobs {
    private static final List<String> NAMES = List.of(
            "cup",
            "brief back",
            "on",
            "null",
            "Ärmel",
            "前身頃",
            "a: b",
            "it's",
            "\"quoted\"",
            "#1",
            "- dash",
            "7/8",
            "C:\\schnitt",
            "{x}",
            "a, b",
            "*star",
            "&and",
            "!bang",
            "%",
            "@home",
            "~",
            "yes",
            "1.5",
            "soft\u00adhyphen",
            "𝄞");
    private static final List<String> FABRIC_NAMES = List.of("reef-print", "Sand lining", "подкладка", "#7, blue");
    private static final List<String> SIZES = List.of("S", "38", "on", "3 XL", "a: b");
    private static final List<String> MEASURES = List.of("ribcage", "neck to waist", "hüfte: links");

    private final RandomGenerator random;

    RandomJobs(RandomGenerator random) {
        this.random = random;
    }

    Job next() {
        List<JobFabric> fabrics = new ArrayList<>();
        for (String name : some(FABRIC_NAMES, 1)) {
            fabrics.add(fabric(name));
        }
        List<JobPiece> pieces = new ArrayList<>();
        for (String name : some(NAMES, 0)) {
            pieces.add(piece(name, fabrics));
        }
        List<JobDrawing> drawings = new ArrayList<>();
        for (String name : some(NAMES, 1)) {
            drawings.add(drawing(name));
        }
        List<String> measures = pieces.stream()
                .flatMap(piece -> piece.strip().stream())
                .flatMap(strip -> strip.length().measures().stream())
                .distinct()
                .toList();
        boolean noneBySize = pieces.stream()
                .flatMap(piece -> piece.strip().stream())
                .flatMap(strip -> strip.length().parts().stream())
                .noneMatch(part -> part.source() instanceof Source.BySize);
        Optional<SizeTable> sizes = maybe(this::sizes);
        List<OrderLine> order = new ArrayList<>();
        boolean coloured = chance();
        for (int i = random.nextInt(1, 5); i > 0; i--) {
            order.add(new OrderLine(
                    sizes.isEmpty() && noneBySize && chance() ? Size.ONE : new Size(one(SIZES)),
                    random.nextInt(1, 50),
                    maybe(() -> one(NAMES)),
                    coloured ? Optional.of(one(NAMES)) : Optional.empty(),
                    maybe(() -> random.nextInt(1, 9)),
                    measures.stream()
                            .map(measure -> new Measure(measure, length(1_000_000)))
                            .toList()));
        }
        return new Job(
                one(NAMES),
                maybe(() -> one(LengthUnit.values())),
                drawings,
                fabrics,
                pieces,
                maybe(() -> length(20_000)),
                maybe(() -> one(CuttingTool.values())),
                sizes,
                order,
                maybe(() -> plan(fabrics, order)),
                chance() ? JobSewing.UNSAID : sewing(fabrics));
    }

    private JobPlan plan(List<JobFabric> fabrics, List<OrderLine> order) {
        List<String> oneColour =
                fabrics.stream().map(JobFabric::name).filter(name -> chance()).toList();
        List<JobPlan.Bolt> bolts = new ArrayList<>();
        for (JobFabric fabric : fabrics) {
            boolean inColours = order.get(0).colour().isPresent() && !oneColour.contains(fabric.name());
            if (chance()) {
                bolts.add(new JobPlan.Bolt(
                        maybe(() -> one(NAMES)),
                        fabric.name(),
                        inColours ? order.get(0).colour() : Optional.empty(),
                        length(9_000_000),
                        maybe(() -> fabric.width().plus(length(9_000)))));
            }
        }
        return new JobPlan(
                maybe(() -> random.nextInt(1, 90)),
                maybe(() -> random.nextInt(1, 90)),
                maybe(() -> length(9_000_000)),
                random.nextInt(0, 49) / 100.0,
                random.nextInt(0, 49) / 100.0,
                maybe(() -> one(JobPlan.Least.values())),
                oneColour,
                bolts,
                bolts.isEmpty() && chance());
    }

    private JobDrawing drawing(String file) {
        ScaleStatement scale = new ScaleStatement(
                chance() ? OptionalDouble.of(random.nextDouble(0.001, 1000)) : OptionalDouble.empty(),
                maybe(() -> new ScaleBox(one(NAMES), length(200_000))));
        // Sizes only now and then: where every drawing states one, the order may ask for no other.
        return new JobDrawing(
                file,
                scale,
                maybe(() -> new PageGrid(
                        random.nextInt(1, 200),
                        chance() ? OptionalInt.of(random.nextInt(1, 200)) : OptionalInt.empty(),
                        length(1_000_000),
                        random.nextInt(1, 2000))),
                Optional.empty(),
                maybe(() -> chance() ? SeamAllowance.INCLUDED : new SeamAllowance(length(20_000))),
                maybe(() -> one(ArrowMeaning.values())));
    }

    private JobFabric fabric(String name) {
        Length width = new Length(random.nextLong(500_000, 2_000_000));
        JobSpread spread = spread();
        boolean tube = spread.form().equals(Optional.of(Spread.Form.TUBE));
        Optional<Pile> pile = maybe(() -> one(Pile.values()));
        Optional<Direction> direction =
                pile.isPresent() ? maybe(() -> Direction.ONE_WAY) : maybe(() -> one(Direction.values()));
        boolean simple = spread.form()
                .map(form -> form == Spread.Form.SINGLE_LAYER || form == Spread.Form.FOLD_LENGTHWISE)
                .orElse(true);
        return new JobFabric(
                        name,
                        chance() ? name : "for " + name,
                        width,
                        maybe(() -> chance() || tube
                                ? UnusableEdge.eachSide(tube ? Length.ZERO : length(99_000))
                                : new UnusableEdge(length(99_000), Length.ZERO)),
                        direction,
                        maybe(() -> one(Axis.values())),
                        maybe(() -> one(RightSide.values())),
                        maybe(() -> repeat(!direction.equals(Optional.of(Direction.EITHER_WAY)))),
                        maybe(() -> new Shrinkage(
                                random.nextDouble(0.5),
                                chance() ? 0 : random.nextInt(500) / 1000.0,
                                one(Shrinkage.Handling.values()))),
                        spread,
                        maybe(() -> new Price(
                                random.nextInt(10_000) / 100.0, chance() ? new Length(914_400) : length(1_000_000))),
                        maybe(() -> length(1_000_000)),
                        chance() || !simple
                                ? List.of()
                                : List.of(
                                        new Flaw(length(9_000_000), length(90_000), length(200_000), length(200_000))),
                        maybe(() -> there(spread.form()
                                .map(form -> form == Spread.Form.SINGLE_LAYER)
                                .orElse(true))),
                        pile,
                        Optional.empty(),
                        new Across(
                                maybe(() -> new Border(new Length(random.nextLong(400_000)), one(Selvedge.values()))),
                                chance() ? List.of() : List.of(new Zone(one(NAMES), Length.ZERO, length(400_000))),
                                maybe(() -> chance()
                                        ? new Shade(Optional.of(length(900_000)), maybe(() -> length(400_000)))
                                        : new Shade(Optional.empty(), Optional.of(length(400_000)))),
                                chance()),
                        new JobBuying(
                                List.of(),
                                chance() ? OptionalDouble.empty() : OptionalDouble.of(random.nextInt(1, 50_000) / 10.0),
                                chance() ? Length.ZERO : length(90_000),
                                chance() ? 0 : random.nextInt(500) / 1000.0,
                                Optional.empty()))
                .withCutAlready(
                        spread.compare().isPresent()
                                ? Optional.empty()
                                : maybe(() -> new JobCutAlready(
                                        name + ".svg",
                                        some(List.of(3, 1, 12), 1),
                                        Optional.empty(),
                                        some(List.of(1, 7), 0))));
    }

    private There there(boolean remnant) {
        if (chance() || !remnant) {
            return new There(length(9_000_000), List.of());
        }
        Length far = new Length(random.nextLong(1, 500_000));
        Length end = length(9_000_000);
        return new There(
                end, List.of(new Corner(Length.ZERO, Length.ZERO), new Corner(end, Length.ZERO), new Corner(end, far)));
    }

    private JobSpread spread() {
        Optional<Spread.Form> form = maybe(() -> one(Spread.Form.values()));
        boolean faceToFace = form.equals(Optional.of(Spread.Form.PLIES_FACE_TO_FACE));
        return new JobSpread(
                form,
                faceToFace || form.equals(Optional.of(Spread.Form.PLIES_FACE_UP))
                        ? maybe(() -> 2 * random.nextInt(1, 20))
                        : Optional.empty(),
                faceToFace ? maybe(() -> one(Spread.PlyRun.values())) : Optional.empty(),
                maybe(() -> length(50_000)),
                form.equals(Optional.of(Spread.Form.FOLD_LENGTHWISE))
                        ? maybe(() -> Spread.Form.SINGLE_LAYER)
                        : Optional.empty());
    }

    private PrintRepeat repeat(boolean oneWay) {
        boolean halfDrop = chance();
        Length crosswise = halfDrop || chance() ? new Length(random.nextLong(1_000, 600_000)) : Length.ZERO;
        Length origin = chance() ? Length.ZERO : length(300_000);
        Length lengthwise = new Length(random.nextLong(1_000, 600_000));
        return new PrintRepeat(
                lengthwise,
                crosswise,
                halfDrop,
                chance(),
                oneWay && chance(),
                origin,
                Length.ZERO,
                chance() ? List.of() : List.of(motif(lengthwise, crosswise)),
                crosswise.equals(Length.ZERO) ? Optional.empty() : maybe(() -> one(NAMES) + ".png"));
    }

    private PrintMotif motif(Length lengthwise, Length crosswise) {
        boolean stripes = crosswise.equals(Length.ZERO);
        boolean round = !stripes && chance();
        Length across = stripes ? Length.ZERO : new Length(random.nextLong(1, crosswise.micrometres()));
        Length along = new Length(random.nextLong(1, lengthwise.micrometres()));
        Length diameter = new Length(2
                * random.nextLong(1, Math.min(lengthwise.micrometres(), Math.max(1_000, crosswise.micrometres())) / 2));
        return new PrintMotif(one(NAMES), along, across, round ? diameter : along, round ? diameter : across, round);
    }

    private JobPiece piece(String name, List<JobFabric> fabrics) {
        boolean strip = chance();
        Optional<Integer> filler = maybe(() -> random.nextInt(1, 30));
        List<CutRequest> cut = new ArrayList<>();
        for (JobFabric fabric : some(fabrics, strip ? 1 : 0)) {
            cut.add(new CutRequest(fabric.role(), random.nextInt(1, 9), maybe(() -> one(Cut.Manner.values()))));
        }
        if (strip) {
            return new JobPiece(
                    name,
                    cut,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    maybe(() -> length(20_000)),
                    filler,
                    Lying.UNSAID,
                    Optional.of(new JobStrip(
                            length(90_000),
                            filler.isPresent() ? LengthRule.of(length(2_000_000)) : lengthRule(),
                            maybe(() -> one(Runs.values())),
                            maybe(() -> one(PrintUse.values())))));
        }
        return new JobPiece(
                name,
                cut,
                maybe(() -> one(Up.values())),
                maybe(() -> one(ArrowMeaning.values())),
                maybe(() -> chance() ? Hand.LEFT : Hand.RIGHT),
                maybe(() -> new MatchMark(
                        mark(),
                        maybe(() -> length(5_000)),
                        maybe(() -> one(Axis.values())),
                        maybe(() -> chance() || filler.isPresent()
                                ? new Partner.OtherHand()
                                : new Partner.Mate("mate", mark())))),
                maybe(() -> length(20_000)),
                filler,
                new Lying(
                        maybe(() -> one(Grain.values())),
                        chance(),
                        maybe(() -> chance() ? Tie.LOWEST_POINT : new Tie(Tie.Kind.NOTCH, random.nextInt(1, 9))),
                        maybe(() -> one(NAMES)),
                        maybe(() -> chance()
                                ? new GrainTolerance.Deviation(length(50_000))
                                : new GrainTolerance.Degrees(random.nextInt(1, 1_000) / 100.0)),
                        chance()
                                ? List.of()
                                : List.of(
                                        new MotifMark(one(NAMES), false, maybe(this::mark)),
                                        new MotifMark(one(NAMES), true, Optional.of(mark())))),
                Optional.empty());
    }

    private MarkRef mark() {
        return new MarkRef(one(MarkRef.Kind.values()), random.nextInt(1, 20));
    }

    private LengthRule lengthRule() {
        List<LengthRule.Part> parts = new ArrayList<>();
        for (int i = random.nextInt(1, 4); i > 0; i--) {
            parts.add(new LengthRule.Part(
                    chance() ? new Source.OfMeasure(one(MEASURES)) : chance() ? bySize() : fixed(),
                    chance() ? 1 : random.nextInt(1, 2_000) / 1_000.0,
                    chance() ? Length.ZERO : length(300_000)));
        }
        return new LengthRule(parts);
    }

    /** Goes by no measure and no size, which the order would have to have. */
    private LengthRule sewn(List<String> edges) {
        List<LengthRule.Part> parts = new ArrayList<>();
        for (int i = random.nextInt(1, 3); i > 0; i--) {
            parts.add(new LengthRule.Part(
                    edges.isEmpty() || chance() ? fixed() : new Source.OfEdge(one(edges)),
                    chance() ? 1 : random.nextInt(1, 2_000) / 1_000.0,
                    chance() ? Length.ZERO : length(300_000)));
        }
        return new LengthRule(parts);
    }

    private JobSewing sewing(List<JobFabric> fabrics) {
        Map<String, JobSewing.Edge> edges = new LinkedHashMap<>();
        some(NAMES, 0).forEach(name -> edges.put(name, edge()));
        List<String> known = List.copyOf(edges.keySet());
        List<JobSewing.Seam> seams = some(NAMES, 0).stream()
                .map(name -> new JobSewing.Seam(
                        name,
                        chance() ? 607 : 514,
                        OptionalDouble.of(random.nextInt(1, 300) / 10.0),
                        sewn(known),
                        random.nextInt(1, 9)))
                .toList();
        return new JobSewing(
                edges,
                some(NAMES, 0).stream()
                        .map(name -> new JobSewing.Elastic(
                                name,
                                maybe(() -> sewn(List.of())),
                                sewn(known),
                                random.nextInt(1, 9),
                                chance() ? Length.ZERO : length(50_000),
                                maybe(() -> new Price(random.nextInt(0, 9_999) / 100.0, new Length(1_000_000))),
                                maybe(() -> length(1_000_000))))
                        .toList(),
                seams,
                seams.isEmpty()
                        ? Optional.empty()
                        : maybe(() -> new JobSewing.Spools(
                                Optional.of(length(900_000_000)),
                                chance() ? OptionalDouble.empty() : OptionalDouble.of(random.nextInt(0, 999) / 100.0),
                                chance()
                                        ? OptionalDouble.empty()
                                        : OptionalDouble.of(random.nextInt(0, 499) / 1_000.0))),
                some(NAMES, 0).stream()
                        .map(name -> new JobSewing.Binding(
                                name,
                                fabrics.get(random.nextInt(fabrics.size())).role(),
                                length(90_000),
                                sewn(known),
                                random.nextInt(1, 9),
                                one(JobSewing.Run.values())))
                        .toList(),
                some(NAMES, 0).stream()
                        .map(name -> new JobSewing.Label(
                                name,
                                random.nextInt(1, 9),
                                maybe(() ->
                                        new JobSewing.PriceOf(random.nextInt(0, 9_999) / 100.0, random.nextInt(1, 99))),
                                maybe(() -> random.nextInt(1, 99))))
                        .toList());
    }

    private JobSewing.Edge edge() {
        List<DrawnEdge> drawn = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            drawn.add(new DrawnEdge(
                    one(NAMES),
                    maybe(() -> new DrawnEdge.Between(edgePoint(), edgePoint(), maybe(this::edgePoint))),
                    maybe(() -> one(DrawnEdge.Counts.values()))));
        }
        return new JobSewing.Edge(drawn.isEmpty() || chance() ? Optional.of(sewn(List.of())) : Optional.empty(), drawn);
    }

    private EdgePoint edgePoint() {
        return new EdgePoint(one(EdgePoint.Kind.values()), random.nextInt(1, 20));
    }

    private Source fixed() {
        return new Source.Fixed(length(2_000_000));
    }

    private Source bySize() {
        Map<String, Length> lengths = new LinkedHashMap<>();
        SIZES.forEach(size -> lengths.put(size, length(2_000_000)));
        return new Source.BySize(lengths);
    }

    private SizeTable sizes() {
        if (chance()) {
            return SizeTable.EN_13402_3;
        }
        List<SizeTable.Row> rows = new ArrayList<>();
        for (String size : some(SIZES, 1)) {
            Length from = length(1_000_000);
            rows.add(new SizeTable.Row(
                    new Size(size),
                    List.of(new SizeTable.Range("brust", from, chance() ? from : from.plus(length(100_000))))));
        }
        return new SizeTable(rows);
    }

    /** Sometimes round, as makers write, and sometimes any number of micrometres. */
    private Length length(long most) {
        return chance()
                ? new Length(random.nextLong(1, most + 1))
                : new Length(Math.max(1, random.nextLong(1, most / 1_000) * 1_000));
    }

    private boolean chance() {
        return random.nextBoolean();
    }

    private <T> Optional<T> maybe(Supplier<T> value) {
        return chance() ? Optional.of(value.get()) : Optional.empty();
    }

    private String one(List<String> of) {
        return of.get(random.nextInt(of.size()));
    }

    private <T> T one(T[] of) {
        return of[random.nextInt(of.length)];
    }

    private <T> List<T> some(List<T> of, int least) {
        List<T> some = new ArrayList<>(of);
        while (some.size() > least && random.nextInt(4) > 0) {
            some.remove(random.nextInt(some.size()));
        }
        return some;
    }
}
