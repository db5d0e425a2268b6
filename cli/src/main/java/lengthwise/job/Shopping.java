package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import lengthwise.model.Fabric;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.plan.Purchase;
import lengthwise.workshop.BindingCloth;
import lengthwise.workshop.ElasticWidth;
import lengthwise.workshop.MeasuredEdge;
import lengthwise.workshop.ShoppingList;
import lengthwise.workshop.ShoppingList.Amount;
import lengthwise.workshop.ShoppingList.Kind;
import lengthwise.workshop.ShoppingList.Line;
import lengthwise.workshop.ShoppingList.Packs;
import lengthwise.workshop.ShoppingList.SeamThread;
import lengthwise.workshop.Stitch;

/** Puts together what a job has to be bought for, once it is known how much cloth its markers take. */
public final class Shopping {
    /** Seamstresses allow from 10 to 20 % more thread than the seams take; 15 % is what is reckoned with in the examples read. */
    private static final double THREAD_WASTE = 0.15;

    private static final Length ELASTIC_STEP = Length.ofMillimetres(100);

    /** What a join of strips, and the seam of a square for bias, takes beyond the strip: 1/4 in, as sources have it. */
    private static final Length BIAS_SEAM = new Length(6_350);

    /** A fabric as it is bought, with what its marker takes. */
    public record Cloth(Fabric fabric, Purchase purchase) {}

    private final Job job;
    private final JobSewing sewing;
    private final SewnEdges edges;
    private final List<Line> lines = new ArrayList<>();
    private final List<SeamThread> seams = new ArrayList<>();
    private final List<ShoppingList.Binding> bindings = new ArrayList<>();
    private final Set<String> notes = new LinkedHashSet<>();

    private Shopping(Job job, SewnEdges edges) {
        this.job = job;
        this.edges = edges;
        this.sewing = job.sewing();
    }

    /**
     * Makes the shopping list of a job.
     *
     * @param edges that lengths go by
     * @param cloths its fabrics, each with its marker's purchase
     * @throws JobException in a sentence, without a place, if something comes to no length, or to no width of cloth
     */
    public static ShoppingList of(Job job, SewnEdges edges, List<Cloth> cloths, String version) throws JobException {
        return new Shopping(job, edges).list(cloths, version);
    }

    /** Returns what lengths of cloth that hold no more than markers leave out, a sentence, where there is something. */
    public static List<String> leftOut(Job job) {
        return job.sewing().bindings().isEmpty()
                ? List.of()
                : List.of("The cloth for bindings is not in these lengths: lengthwise shop lists what they take.");
    }

    private ShoppingList list(List<Cloth> cloths, String version) throws JobException {
        for (JobFabric said : job.fabrics()) {
            Optional<Cloth> laid = cloths.stream()
                    .filter(cloth -> cloth.fabric().name().equals(said.name()))
                    .findFirst();
            Fabric fabric = laid.map(Cloth::fabric).orElseGet(() -> FabricMaking.of(said, new Assumptions()));
            fabric(fabric, laid.map(Cloth::purchase).orElseGet(() -> Purchase.of(Length.ZERO, Length.ZERO, fabric)));
        }
        elastic();
        thread();
        labels();
        noteCutLines();
        return new ShoppingList(
                job.title(),
                version,
                job.units().filter(unit -> !unit.isMetric()).isPresent(),
                lines,
                seams,
                bindings,
                edges.measured(),
                List.copyOf(notes));
    }

    /** Round a curve, the cut line is longer or shorter than what is sewn. */
    private void noteCutLines() {
        String cut = edges.measured().stream()
                .filter(edge -> edge.along() == MeasuredEdge.Along.CUT_LINE
                        && edge.stated().isEmpty())
                .map(MeasuredEdge::edge)
                .distinct()
                .collect(Collectors.joining(", "));
        if (!cut.isEmpty()) {
            notes.add(
                    "On the cut line an edge is as long as where it is sewn (%s); with a sew line drawn it is measured there."
                            .formatted(cut));
        }
    }

    private void fabric(Fabric fabric, Purchase marker) throws JobException {
        Length forBindings = Length.ZERO;
        List<String> names = new ArrayList<>();
        for (JobSewing.Binding said : sewing.bindings()) {
            if (bindsFrom(fabric).test(said)) {
                ShoppingList.Binding binding = binding(said, fabric);
                bindings.add(binding);
                forBindings = forBindings.plus(binding.cloth().length());
                names.add(said.name());
            }
        }
        boolean there = fabric.onHand().isPresent();
        if (there && names.isEmpty()) {
            notes.add("%s is there already and is not bought.".formatted(fabric.name()));
            return;
        }
        Length laid = marker.marker().plus(marker.ends());
        if (laid.equals(Length.ZERO) && names.isEmpty()) {
            return;
        }
        Purchase all = there
                ? Purchase.of(forBindings, Length.ZERO, fabric)
                : Purchase.of(marker.marker().plus(forBindings), marker.ends(), fabric);
        List<String> why = new ArrayList<>();
        if (!there && !laid.equals(Length.ZERO)) {
            why.add("marker with its ends " + LengthWords.metricUp(laid));
        }
        if (!names.isEmpty()) {
            why.add("bindings %s (%s)".formatted(LengthWords.metricUp(forBindings), String.join(", ", names)));
        }
        lines.add(new Line(
                Kind.FABRIC,
                fabric.name(),
                "%s wide".formatted(LengthWords.both(fabric.width())),
                new Amount.ByLength(all.needed()),
                new Amount.ByLength(all.buy()),
                Optional.empty(),
                all.cost().isPresent()
                        ? OptionalDouble.of(
                                ShoppingList.toTheHundredth(all.cost().getAsDouble()))
                        : OptionalDouble.empty(),
                String.join(", ", why)));
    }

    /** Of several pieces of cloth for one purpose it is that which is bought, or where all are there the first. */
    private Predicate<JobSewing.Binding> bindsFrom(Fabric fabric) {
        List<JobFabric> cloths = job.fabrics().stream()
                .filter(said -> said.role().equals(fabric.role()))
                .toList();
        JobFabric from =
                cloths.stream().filter(said -> !said.isOnHand()).findFirst().orElse(cloths.get(0));
        return binding -> binding.role().equals(fabric.role()) && from.name().equals(fabric.name());
    }

    private ShoppingList.Binding binding(JobSewing.Binding said, Fabric fabric) throws JobException {
        Length length = all(said.length(), said.each());
        boolean onBias = said.cut() == JobSewing.Run.BIAS;
        if (fabric.cuttableWidth().compareTo(said.cutWidth().times(2)) < 0) {
            throw new JobException("The binding %s is cut %s wide, and %s is too narrow for it."
                    .formatted(said.name(), LengthText.print(said.cutWidth(), LengthUnit.CM), fabric.name()));
        }
        BindingCloth cloth = onBias
                ? BindingCloth.bias(length, said.cutWidth(), fabric.cuttableWidth(), BIAS_SEAM)
                : BindingCloth.straight(length, said.cutWidth(), fabric.cuttableWidth(), said.cutWidth());
        notes.add(
                onBias
                        ? "Bias strips come from a square of cloth; its seam takes 6.35 mm (1/4 in) of each side."
                        : "Each join of straight strips takes their width, as a mitred one does.");
        return new ShoppingList.Binding(said.name(), fabric.name(), length, said.cutWidth(), onBias, cloth);
    }

    /** What is sold alike is bought together. */
    private record Ware(Length width, Optional<Price> price, Length step) {}

    private void elastic() throws JobException {
        Map<Ware, Map<String, Length>> wares = new LinkedHashMap<>();
        for (JobSewing.Elastic said : sewing.elastic()) {
            for (OrderLine line : job.order()) {
                Length width = said.width().isPresent()
                        ? said.width().get().lengthFor(line, edges.lengths())
                        : usualWidth(said, line);
                Length one = said.length().lengthFor(line, edges.lengths()).plus(said.join());
                wares.computeIfAbsent(
                                new Ware(width, said.price(), said.soldBy().orElse(ELASTIC_STEP)),
                                ware -> new LinkedHashMap<>())
                        .merge(said.name(), one.times((long) said.each() * line.make()), Length::plus);
            }
            if (said.soldBy().isEmpty()) {
                notes.add("Elastic is sold by 10 cm.");
            }
        }
        wares.forEach((ware, byName) -> {
            Length need = byName.values().stream().reduce(Length.ZERO, Length::plus);
            Length buy = need.upTo(ware.step);
            lines.add(new Line(
                    Kind.ELASTIC,
                    "elastic",
                    "%s wide".formatted(LengthWords.both(ware.width)),
                    new Amount.ByLength(need),
                    new Amount.ByLength(buy),
                    Optional.empty(),
                    ware.price
                            .map(price -> OptionalDouble.of(ShoppingList.toTheHundredth(price.amount()
                                    * buy.micrometres()
                                    / price.per().micrometres())))
                            .orElse(OptionalDouble.empty()),
                    byName.entrySet().stream()
                            .map(part -> part.getKey() + " " + LengthWords.metric(part.getValue()))
                            .collect(Collectors.joining(", "))));
        });
    }

    private Length usualWidth(JobSewing.Elastic said, OrderLine line) throws JobException {
        Length usual = ElasticWidth.usual(line.size())
                .orElseThrow(() -> new JobException(
                        "sewing.elastic.%s: how wide is it for %s? Only sizes by letters have a usual width; add width: 1/4 in, or width: {by-size: {…}}."
                                .formatted(
                                        said.name(),
                                        line.size().name().isEmpty()
                                                ? "a garment without a size"
                                                : "size " + line.size().name())));
        notes.add(
                "Where no width is said, elastic is 6.35 mm (1/4 in) wide up to size 2X, and 9.525 mm (3/8 in) from 3X.");
        return usual;
    }

    private void thread() throws JobException {
        Map<Integer, Length> seamByStitch = new TreeMap<>();
        Map<Integer, Length> threadByStitch = new TreeMap<>();
        Map<Integer, Boolean> usual = new TreeMap<>();
        Length sum = Length.ZERO;
        for (JobSewing.Seam said : sewing.seams()) {
            Length seam = all(said.length(), said.each());
            Length thread = said.ratio().isPresent()
                    ? seam.scaled(said.ratio().getAsDouble())
                    : Stitch.of(said.stitch()).orElseThrow().thread(seam);
            seamByStitch.merge(said.stitch(), seam, Length::plus);
            threadByStitch.merge(said.stitch(), thread, Length::plus);
            usual.merge(said.stitch(), said.ratio().isEmpty(), Boolean::logicalAnd);
            sum = sum.plus(thread);
        }
        if (sum.equals(Length.ZERO)) {
            return;
        }
        seamByStitch.forEach((number, seam) -> seams.add(new SeamThread(
                number,
                seam,
                threadByStitch.getOrDefault(number, Length.ZERO),
                usual.getOrDefault(number, false)
                        ? Stitch.of(number).flatMap(stitch -> stitch.needleThread(seam))
                        : Optional.empty())));
        Optional<JobSewing.Spools> said = sewing.thread();
        OptionalDouble saidWaste = said.map(JobSewing.Spools::waste).orElse(OptionalDouble.empty());
        if (saidWaste.isEmpty()) {
            notes.add("15 % more thread than the seams take.");
        }
        Length need = sum.scaled(1 + saidWaste.orElse(THREAD_WASTE));
        Optional<Length> spool = said.flatMap(JobSewing.Spools::spool);
        long spools = spool.map(length -> need.upTo(length).micrometres() / length.micrometres())
                .orElse(0L);
        OptionalDouble price = said.map(JobSewing.Spools::price).orElse(OptionalDouble.empty());
        if (spool.isEmpty()) {
            notes.add("How much is on a spool of thread is not said: write spool: 500 m under sewing.thread.");
        }
        lines.add(new Line(
                Kind.THREAD,
                "thread",
                spool.map(length -> "spools of " + LengthText.print(length, LengthUnit.M))
                        .orElse(""),
                new Amount.ByLength(need),
                new Amount.ByLength(
                        spool.map(length -> length.times(spools)).orElse(need.upTo(Length.ofMillimetres(1_000)))),
                spool.map(length -> new Packs(spools, "spool", "spools")),
                price.isPresent()
                        ? OptionalDouble.of(ShoppingList.toTheHundredth(spools * price.getAsDouble()))
                        : OptionalDouble.empty(),
                seams.stream()
                        .map(seam -> "stitch %d %s".formatted(seam.stitch(), LengthWords.metric(seam.thread())))
                        .collect(Collectors.joining(", "))));
    }

    private void labels() {
        long garments = job.order().stream().mapToLong(OrderLine::make).sum();
        for (JobSewing.Label said : sewing.labels()) {
            long need = garments * said.each();
            int step = said.soldBy().orElse(1);
            long packs = -Math.floorDiv(-need, (long) step);
            long buy = packs * step;
            lines.add(new Line(
                    Kind.LABEL,
                    said.name(),
                    step == 1 ? "" : "packs of " + step,
                    new Amount.ByPiece(need),
                    new Amount.ByPiece(buy),
                    step == 1 ? Optional.empty() : Optional.of(new Packs(packs, "pack", "packs")),
                    said.price()
                            .map(price -> OptionalDouble.of(
                                    ShoppingList.toTheHundredth(price.amount() * buy / price.pieces())))
                            .orElse(OptionalDouble.empty()),
                    said.each() + " for each of " + garments + (garments == 1 ? " garment" : " garments")));
        }
    }

    /** Returns how long something is for the whole order. */
    private Length all(LengthRule rule, int each) throws JobException {
        Length sum = Length.ZERO;
        for (OrderLine line : job.order()) {
            sum = sum.plus(rule.lengthFor(line, edges.lengths()).times((long) each * line.make()));
        }
        return sum;
    }
}
