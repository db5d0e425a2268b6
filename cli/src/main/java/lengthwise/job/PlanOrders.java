package lengthwise.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import lengthwise.job.JobPlan.Bolt;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Size;
import lengthwise.model.Spread;
import lengthwise.plan.lays.Aim;
import lengthwise.plan.lays.CutOrder;
import lengthwise.plan.lays.Lay;
import lengthwise.plan.lays.LayLimits;
import lengthwise.rules.Ruling;

/**
 * A job as a plan sees it: for each fabric how many garments of which size and colour, within which limits, and the marker
 * order of any size ratio. Garments of a size that are cut by different measures are different sizes here.
 *
 * @param warnings sentences for the maker
 */
public record PlanOrders(List<Cloth> cloths, Aim aim, List<String> warnings) {
    /** Where nothing is said a marker takes no more: beyond that it hardly gets better. */
    private static final int MOST_GARMENTS = 24;

    private static final CuttingTool USUAL = CuttingTool.SCISSORS;

    public PlanOrders {
        cloths = List.copyOf(cloths);
        warnings = List.copyOf(warnings);
    }

    /**
     * Reads the drawings of a job file and works out what is to be planned.
     *
     * @throws JobException with one line for the maker
     */
    public static PlanOrders of(JobFile said) throws JobException {
        NarrowestBolts narrowest = NarrowestBolts.of(said);
        JobFile file = narrowest.file();
        Job job = file.job();
        JobPlan plan = job.plan().orElse(JobPlan.UNSAID);
        for (JobFabric fabric : job.fabrics()) {
            refuseWhatIsNotPlanned(file, fabric);
        }
        Sizes sizes = new Sizes(job);
        int ordered = job.order().stream().mapToInt(OrderLine::make).sum();
        int mostGarments = plan.maxGarments().orElse(Math.min(ordered, MOST_GARMENTS));
        List<OrderLine> lines = new ArrayList<>();
        for (int size = 0; size < sizes.kinds.size(); size++) {
            int most = (int) Math.floor(sizes.ordered(size) * (1 + plan.over()) + 1e-9);
            lines.add(sizes.kinds.get(size).withMake(Math.max(1, Math.min(mostGarments, most))));
        }
        Job single = job.cutFrom(
                job.fabrics().stream()
                        .map(fabric -> fabric.as(fabric.name(), oneLayer(fabric.spread())))
                        .toList(),
                lines);
        Orders orders = Orders.of(single, file.folder());
        orders.refuseShared("A plan");
        List<String> warnings = new ArrayList<>(file.warnings());
        warnings.addAll(narrowest.words());
        warnings.addAll(orders.warnings());
        warnings.addAll(Shopping.leftOut(job));
        List<Cloth> cloths = new ArrayList<>();
        for (FabricOrder order : orders.fabrics()) {
            cloths.add(new Cloth(file, plan, sizes, mostGarments, lines, order));
        }
        Aim aim = plan.least().orElse(JobPlan.Least.FABRIC) == JobPlan.Least.LAYS ? Aim.LAYS : Aim.FABRIC;
        return new PlanOrders(cloths, aim, warnings.stream().distinct().toList());
    }

    private static void refuseWhatIsNotPlanned(JobFile file, JobFabric fabric) throws JobException {
        String key = "fabrics." + fabric.name();
        if (fabric.there().isPresent() || fabric.cutAlready().isPresent()) {
            throw file.error(
                    key,
                    "a plan is made for cloth by the length, and this is a piece that is there; list bolts under plan, or lay it with marker");
        }
        if (fabric.buying().from().isPresent()) {
            throw file.error(key + ".from", "a plan takes several bolts; write bolts: stash under plan in its place");
        }
        if (!fabric.flaws().isEmpty()) {
            throw file.error(
                    key + ".flaws",
                    "a flaw lies in one ply, and a plan puts plies on each other; take it out, or lay this fabric with marker");
        }
        if (fabric.spread().form().equals(Optional.of(Spread.Form.PLIES_FACE_TO_FACE))) {
            throw file.error(
                    key + ".spread.form",
                    "a plan lays plies face up; write form: single-layer here and the plies under plan");
        }
    }

    /** Returns the spread of one ply: how many lie on each other is for the plan to say. */
    private static JobSpread oneLayer(JobSpread said) {
        Spread.Form form =
                said.form().filter(one -> one != Spread.Form.PLIES_FACE_UP).orElse(Spread.Form.SINGLE_LAYER);
        return new JobSpread(
                Optional.of(form), Optional.empty(), Optional.empty(), said.endAllowance(), Optional.empty());
    }

    /** The sizes of an order, those with measures of their own apart, and its colours. */
    private static final class Sizes {
        final List<OrderLine> kinds = new ArrayList<>();
        final List<String> names = new ArrayList<>();
        final List<String> colours;
        /** By colour, then by size. */
        final List<List<Integer>> garments = new ArrayList<>();

        Sizes(Job job) {
            Set<String> said = new LinkedHashSet<>();
            job.order().forEach(line -> said.add(line.colour().orElse("")));
            colours = List.copyOf(said);
            Map<OrderLine, int[]> byKind = new LinkedHashMap<>();
            for (OrderLine line : job.order()) {
                byKind.computeIfAbsent(line.plain().withMake(1), kind -> new int[colours.size()])[
                                colours.indexOf(line.colour().orElse(""))] +=
                        line.make();
            }
            for (int colour = 0; colour < colours.size(); colour++) {
                int of = colour;
                garments.add(byKind.values().stream().map(counts -> counts[of]).toList());
            }
            byKind.keySet().forEach(kind -> {
                kinds.add(kind);
                names.add(name(kind, byKind.keySet()));
            });
        }

        int ordered(int size) {
            return garments.stream().mapToInt(colour -> colour.get(size)).sum();
        }

        private static String name(OrderLine kind, Set<OrderLine> all) {
            String size =
                    kind.size().equals(Size.ONE) ? "one size" : kind.size().name();
            boolean alone = all.stream()
                            .filter(other -> other.size().equals(kind.size()))
                            .count()
                    == 1;
            if (kind.customer().isPresent()) {
                return size + " " + kind.customer().get();
            }
            if (alone) {
                return size;
            }
            return size
                    + kind.measures().stream()
                            .map(measure -> " %s %s"
                                    .formatted(measure.name(), LengthText.print(measure.length(), LengthUnit.CM)))
                            .reduce("", String::concat);
        }
    }

    /** A lay as a job of its own. */
    public record LayJob(Job job, Path folder, FabricOrder order) {
        /**
         * Returns the text of its job file.
         *
         * @param out the folder that it is to lie in
         */
        public String text(Path out) {
            return JobWriter.text(
                    job.seenFrom(out, folder), List.of("One lay of a plan: its marker is checked by this."));
        }
    }

    /** One fabric of the plan. */
    public static final class Cloth {
        private final JobFile file;
        private final JobPlan plan;
        private final List<OrderLine> lines;
        private final FabricOrder base;
        private final CutOrder order;
        private final LayLimits limits;

        private Cloth(
                JobFile file, JobPlan plan, Sizes sizes, int mostGarments, List<OrderLine> lines, FabricOrder base) {
            this.file = file;
            this.plan = plan;
            this.lines = lines;
            this.base = base;
            this.order = plan.oneColour().contains(fabric().name())
                    ? CutOrder.of(
                            sizes.names,
                            IntStream.range(0, sizes.kinds.size())
                                    .map(sizes::ordered)
                                    .boxed()
                                    .toList())
                    : new CutOrder(sizes.names, sizes.colours, sizes.garments);
            int plies = isStacked()
                    ? plan.maxPlies()
                            .orElse(file.job().cuttingTool().orElse(USUAL).plies())
                    : 1;
            this.limits = new LayLimits(
                    plies, 1, mostGarments, plan.tableLength(), plan.over(), plan.under(), OptionalInt.empty());
        }

        public Fabric fabric() {
            return base.order().fabric();
        }

        /** Returns what is wanted, size by size in each colour; a single colour without a name where nothing is said. */
        public CutOrder order() {
            return order;
        }

        public LayLimits limits() {
            return limits;
        }

        /** Returns what was assumed about it, sentences. */
        public List<String> assumptions() {
            List<String> sentences = new ArrayList<>();
            base.assumptions().forEach(one -> sentences.add(one.text()));
            if (!isStacked()) {
                sentences.add("Cloth that is folded or round is laid once: plies are not put on each other.");
            } else if (plan.maxPlies().isEmpty()) {
                CuttingTool tool = file.job().cuttingTool().orElse(USUAL);
                sentences.add("%d %s at most: what %s %s cut at once."
                        .formatted(
                                tool.plies(),
                                tool.plies() == 1 ? "ply" : "plies",
                                tool.called(),
                                tool == USUAL ? "will" : "does"));
            }
            return sentences;
        }

        /** Says whether several plies lie on each other: folded and round cloth is laid once. */
        private boolean isStacked() {
            return fabric().spread().form() == Spread.Form.SINGLE_LAYER;
        }

        /** Returns the order of the marker of one ply for a size ratio. */
        public MarkerOrder marker(List<Integer> ratio) {
            Set<Integer> numbers = new LinkedHashSet<>();
            int next = 1;
            for (int size = 0; size < lines.size(); size++) {
                for (int i = 0; i < ratio.get(size); i++) {
                    numbers.add(next + i);
                }
                next += lines.get(size).make();
            }
            return base.order().forGarments(numbers);
        }

        /**
         * Returns the net length of a garment of each size: the area of its contours over the cuttable width. On cloth in two
         * layers a contour may serve two garments, so that two are looked at together.
         */
        public List<Length> net() {
            int together = isStacked() ? 1 : 2;
            List<Length> net = new ArrayList<>();
            for (int size = 0; size < lines.size(); size++) {
                int count = Math.min(together, lines.get(size).make());
                List<Integer> ratio = new ArrayList<>();
                for (int other = 0; other < lines.size(); other++) {
                    ratio.add(other == size ? count : 0);
                }
                double area = Ruling.of(marker(ratio)) instanceof Ruling.Task task
                        ? task.items().stream()
                                .mapToDouble(item -> item.piece().outline().squareMillimetres())
                                .sum()
                        : 0;
                net.add(new Length(
                        (long) (area / count / fabric().cuttableWidth().millimetres() * 1000)));
            }
            return net;
        }

        /** Returns what a ply has beyond its marker. */
        public Length ends() {
            return fabric().spread().onTable(Length.ZERO);
        }

        /**
         * Returns the order of a whole lay, with its plies on each other.
         *
         * @param number of the lay, from 1
         * @throws JobException where the drawings cannot be read any more
         */
        public LayJob lay(int number, Lay lay) throws JobException {
            int plies = isStacked() ? lay.allPlies() : 1;
            List<OrderLine> garments = new ArrayList<>();
            for (int size = 0; size < lines.size(); size++) {
                if (lay.ratio().get(size) > 0) {
                    garments.add(lines.get(size).withMake(lay.ratio().get(size) * plies));
                }
            }
            String name = fabric().name() + "-lay-" + number;
            List<JobFabric> fabrics = new ArrayList<>();
            for (JobFabric said : file.job().fabrics()) {
                JobSpread spread = oneLayer(said.spread());
                fabrics.add(said.name().equals(fabric().name()) ? said.as(name, inPlies(plies, spread)) : said);
            }
            Job job = file.job().cutFrom(fabrics, garments);
            FabricOrder order = Orders.of(job, file.folder()).fabrics().stream()
                    .filter(fabric -> fabric.order().fabric().name().equals(name))
                    .findFirst()
                    .orElseThrow();
            return new LayJob(job, file.folder(), order);
        }

        private static JobSpread inPlies(int plies, JobSpread one) {
            return plies == 1
                    ? one
                    : new JobSpread(
                            Optional.of(Spread.Form.PLIES_FACE_UP),
                            Optional.of(plies),
                            Optional.empty(),
                            one.endAllowance(),
                            Optional.empty());
        }

        /** Returns how much wider each bolt of a colour is than the fabric that the markers are made for. */
        public List<Length> unusedWidths(int colour) {
            Length width = file.job().fabrics().stream()
                    .filter(said -> said.name().equals(fabric().name()))
                    .findFirst()
                    .orElseThrow()
                    .width();
            return bolts(colour).stream()
                    .map(bolt -> bolt.width().orElse(width).minus(width))
                    .toList();
        }

        /** Returns the bolts of a colour of this fabric. */
        public List<Bolt> bolts(int colour) {
            String name = order.colours().get(colour);
            return plan.bolts().stream()
                    .filter(bolt -> bolt.of().equals(fabric().name()))
                    .filter(bolt -> bolt.colour().orElse("").equals(name))
                    .toList();
        }
    }
}
