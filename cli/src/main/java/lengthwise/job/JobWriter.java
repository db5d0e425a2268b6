package lengthwise.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.job.JobFabric.PrintMotif;
import lengthwise.job.JobFabric.PrintRepeat;
import lengthwise.job.JobPiece.MatchMark;
import lengthwise.job.LengthRule.Source;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.GrainTolerance;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.MarkRef;
import lengthwise.model.MatchPoint.Partner;
import lengthwise.model.Shade;
import lengthwise.model.Shrinkage;
import lengthwise.model.Size;
import lengthwise.workshop.SizeTable;

/**
 * Writes a job as the text of a job file, tidy and with comments, for a maker to read and change. Reading it gives an
 * equal job.
 */
public final class JobWriter {
    /** Text that means itself in YAML without quotes, also within braces. */
    private static final Pattern PLAIN = Pattern.compile("[\\p{L}\\p{N}](?:[\\p{L}\\p{N}._/ -]*[\\p{L}\\p{N}._/-])?");

    private static final int COMMENT_COLUMN = 44;

    private final Job job;
    private final LengthUnit unit;
    private final StringBuilder text = new StringBuilder();

    private JobWriter(Job job) {
        this.job = job;
        this.unit = job.units().orElse(LengthUnit.CM);
    }

    /**
     * Returns the text of a job file.
     *
     * @param notes sentences for the head of the file, written as comments: what was assumed
     */
    public static String text(Job job, List<String> notes) {
        return new JobWriter(job).file(notes);
    }

    /**
     * Returns the text of some fabrics as they stand in a job file.
     *
     * @param job whose units are used
     * @param notes sentences for the head, written as comments
     */
    static String fabrics(Job job, List<JobFabric> fabrics, List<String> notes) {
        JobWriter writer = new JobWriter(job);
        notes.forEach(note -> writer.line("# " + note));
        writer.line("fabrics:");
        fabrics.forEach(writer::fabric);
        return writer.text.toString();
    }

    private String file(List<String> notes) {
        line("# A job for Lengthwise. Every length takes a unit: mm, cm, m, in, ft or yd.");
        notes.forEach(note -> line("# " + note.replaceAll("\\s+", " ").trim()));
        line("version: " + Job.VERSION);
        line("job: " + quoted(job.title()));
        job.units().ifPresent(units -> line("units: " + units.symbol(), "of numbers without a unit"));
        if (!job.drawings().isEmpty()) {
            section("drawings");
            job.drawings().forEach(this::drawing);
        }
        section("fabrics");
        job.fabrics().forEach(this::fabric);
        if (!job.pieces().isEmpty()) {
            section("pieces");
            job.pieces().forEach(piece -> line("  " + quoted(piece.name()) + ": " + piece(piece)));
        }
        job.gap().ifPresent(gap -> {
            line("");
            line("gap: " + length(gap), "least distance between pieces");
        });
        job.cuttingTool().ifPresent(tool -> {
            line("");
            line("cutting-tool: " + Entry.word(tool));
        });
        job.sizes().ifPresent(this::sizes);
        section("order");
        job.order().forEach(order -> line("  - " + order(order)));
        job.plan().ifPresent(this::plan);
        if (!job.sewing().equals(JobSewing.UNSAID)) {
            sewing(job.sewing());
        }
        return text.toString();
    }

    private void section(String key) {
        line("");
        line(key + ":");
    }

    private void line(String line) {
        text.append(line).append('\n');
    }

    private void line(String line, String comment) {
        int blanks = Math.max(1, COMMENT_COLUMN - line.length());
        line(line + " ".repeat(blanks) + "# " + comment);
    }

    private void drawing(JobDrawing drawing) {
        line("  - file: " + quoted(drawing.file()));
        drawing.size().ifPresent(size -> line("    size: " + quoted(size)));
        drawing.scale()
                .millimetresPerUnit()
                .ifPresent(size -> line(
                        "    drawing-unit: " + plain(BigDecimal.valueOf(size)) + " mm", "one unit of the drawing"));
        drawing.scale()
                .scaleBox()
                .ifPresent(box -> line(
                        "    scale-box: {id: %s, measures: %s}".formatted(quoted(box.id()), length(box.measures()))));
        drawing.tiles()
                .ifPresent(tiles -> line(
                        "    tiles: {columns: %s%s, overlap: %s%s}"
                                .formatted(
                                        tiles.columns(),
                                        tiles.rows().isPresent()
                                                ? ", rows: " + tiles.rows().getAsInt()
                                                : "",
                                        length(tiles.overlap()),
                                        tiles.firstPage() == 1 ? "" : ", first-page: " + tiles.firstPage()),
                        "its pages make one drawing"));
        drawing.seamAllowance()
                .ifPresent(allowance ->
                        line("    seam-allowance: " + seamAllowance(allowance), "included, or the length to add"));
        drawing.arrowMeans().ifPresent(meaning -> line("    arrow-means: " + Entry.word(meaning), "grain or stretch"));
    }

    private String seamAllowance(SeamAllowance allowance) {
        return allowance.equals(SeamAllowance.INCLUDED) ? "included" : length(allowance.toAdd());
    }

    private void fabric(JobFabric fabric) {
        line("  " + quoted(fabric.name()) + ":");
        line("    for: " + quoted(fabric.role()));
        line("    width: " + length(fabric.width()), "from selvedge to selvedge");
        fabric.unusableEdge().ifPresent(edge -> line("    unusable-edge: " + unusableEdge(edge)));
        fabric.direction()
                .ifPresent(direction ->
                        line("    direction: " + Entry.word(direction), "either-way, one-way or one-way-per-garment"));
        fabric.pile().ifPresent(pile -> line("    pile: " + Entry.word(pile), "up or down the body"));
        fabric.mostStretch()
                .ifPresent(axis -> line("    most-stretch: " + Entry.word(axis), "lengthwise or crosswise"));
        fabric.rightSide().ifPresent(side -> line("    right-side: " + Entry.word(side), "outside or body"));
        fabric.repeat().ifPresent(repeat -> line("    repeat: " + repeat(repeat)));
        fabric.shrinkage()
                .ifPresent(shrinkage ->
                        line("    shrinkage: " + shrinkage(shrinkage), "pre-wash, add-to-pieces or in-pattern"));
        List<String> spread = new ArrayList<>();
        JobSpread said = fabric.spread();
        said.form().ifPresent(form -> spread.add("form: " + Entry.word(form)));
        said.plies().ifPresent(plies -> spread.add("plies: " + plies));
        said.pliesRun().ifPresent(run -> spread.add("plies-run: " + Entry.word(run)));
        said.endAllowance().ifPresent(ends -> spread.add("end-allowance: {each-end: " + length(ends) + "}"));
        said.compare().ifPresent(form -> spread.add("compare: " + Entry.word(form)));
        if (!spread.isEmpty()) {
            line("    spread: " + braces(spread));
        }
        fabric.price().ifPresent(price -> line("    price: " + PriceText.print(price)));
        fabric.soldBy().ifPresent(step -> line("    sold-by: " + length(step), "the shop's step"));
        buying(fabric.buying());
        fabric.there()
                .ifPresent(there -> line(
                        there.corners().isEmpty()
                                ? "    length: " + length(there.length())
                                : "    outline: " + corners(there.corners()),
                        "what there is of it"));
        fabric.across()
                .border()
                .ifPresent(border -> line("    border: {from-selvedge: %s, selvedge: %s}"
                        .formatted(length(border.fromSelvedge()), Entry.word(border.selvedge()))));
        if (!fabric.across().zones().isEmpty()) {
            line("    zones: " + zones(fabric.across().zones()));
        }
        fabric.across().shade().ifPresent(shade -> line("    shade: " + shade(shade)));
        if (fabric.across().keepTogether()) {
            line("    keep-together: yes", "each garment from one piece of cloth");
        }
        if (!fabric.flaws().isEmpty()) {
            line("    flaws:");
            fabric.flaws().forEach(flaw -> line("      - " + flaw(flaw)));
        }
        fabric.cutAlready().ifPresent(cut -> line("    already-cut: " + cutAlready(cut)));
    }

    private void buying(JobBuying buying) {
        buying.from().ifPresent(from -> line("    from: " + quoted(from), "stash, or a cloth there by its name"));
        if (!buying.widths().isEmpty()) {
            line("    widths: "
                    + buying.widths().stream().map(this::offer).collect(Collectors.joining(", ", "[", "]")));
        }
        buying.weight().ifPresent(grams -> line("    weight: " + plain(BigDecimal.valueOf(grams)) + " g/m²"));
        if (!buying.squaring().equals(Length.ZERO)) {
            line("    squaring: {each-end: " + length(buying.squaring()) + "}");
        }
        if (buying.flaws() > 0) {
            line("    flaws-allowance: " + percent(buying.flaws()), "bought more for flaws");
        }
    }

    private String offer(JobBuying.Offer offer) {
        return offer.price()
                .map(price -> "{width: %s, price: %s}".formatted(length(offer.width()), PriceText.print(price)))
                .orElseGet(() -> length(offer.width()));
    }

    private String cutAlready(JobCutAlready cut) {
        List<String> parts = new ArrayList<>(List.of("marker: " + quoted(cut.marker())));
        cut.upTo().ifPresent(length -> parts.add("up-to: " + length(length)));
        if (!cut.numbers().isEmpty()) {
            parts.add("numbers: " + cut.numbers());
        }
        if (!cut.spoilt().isEmpty()) {
            parts.add("spoilt: " + cut.spoilt());
        }
        return braces(parts);
    }

    private String unusableEdge(UnusableEdge edge) {
        return edge.near().equals(edge.far())
                ? "{each-side: " + length(edge.near()) + "}"
                : "{near: " + length(edge.near()) + ", far: " + length(edge.far()) + "}";
    }

    private String repeat(PrintRepeat repeat) {
        List<String> parts = new ArrayList<>();
        if (!repeat.lengthwise().equals(Length.ZERO)) {
            parts.add("lengthwise: " + length(repeat.lengthwise()));
        }
        if (!repeat.crosswise().equals(Length.ZERO)) {
            parts.add("crosswise: " + length(repeat.crosswise()));
        }
        if (repeat.halfDrop()) {
            parts.add("half-drop: yes");
        }
        if (repeat.mirrored()) {
            parts.add("mirrored: yes");
        }
        if (repeat.uneven()) {
            parts.add("uneven: yes");
        }
        if (!repeat.fromStart().equals(Length.ZERO) || !repeat.fromSelvedge().equals(Length.ZERO)) {
            parts.add("origin: {from-start: %s, from-selvedge: %s}"
                    .formatted(length(repeat.fromStart()), length(repeat.fromSelvedge())));
        }
        if (!repeat.motifs().isEmpty()) {
            parts.add("motifs: "
                    + braces(repeat.motifs().stream()
                            .map(motif -> quoted(motif.name()) + ": " + motif(motif, repeat))
                            .toList()));
        }
        repeat.image().ifPresent(image -> parts.add("image: " + quoted(image)));
        return braces(parts);
    }

    private String motif(PrintMotif motif, PrintRepeat repeat) {
        List<String> parts = new ArrayList<>();
        if (!repeat.lengthwise().equals(Length.ZERO)) {
            parts.add("lengthwise: " + length(motif.lengthwise()));
        }
        if (!repeat.crosswise().equals(Length.ZERO)) {
            parts.add("crosswise: " + length(motif.crosswise()));
        }
        if (motif.round()) {
            parts.add("radius: " + length(new Length(motif.length().micrometres() / 2)));
            return braces(parts);
        }
        if (!repeat.lengthwise().equals(Length.ZERO)) {
            parts.add("length: " + length(motif.length()));
        }
        if (!repeat.crosswise().equals(Length.ZERO)) {
            parts.add("width: " + length(motif.width()));
        }
        return braces(parts);
    }

    private static String shrinkage(Shrinkage shrinkage) {
        return "{lengthwise: %s, crosswise: %s, handled: %s}"
                .formatted(
                        percent(shrinkage.lengthwise()),
                        percent(shrinkage.crosswise()),
                        Entry.word(shrinkage.handled()));
    }

    private static String percent(double share) {
        return plain(BigDecimal.valueOf(share).movePointRight(2)) + " %";
    }

    private static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }

    private String corners(List<JobFabric.Corner> corners) {
        return corners.stream()
                .map(corner -> "{from-start: %s, from-selvedge: %s}"
                        .formatted(length(corner.fromStart()), length(corner.fromSelvedge())))
                .collect(Collectors.joining(", ", "[", "]"));
    }

    private String flaw(Flaw flaw) {
        return "{from-start: %s, length: %s, from-selvedge: %s, width: %s}"
                .formatted(
                        length(flaw.fromStart()),
                        length(flaw.length()),
                        length(flaw.fromSelvedge()),
                        length(flaw.width()));
    }

    private String piece(JobPiece piece) {
        List<String> parts = new ArrayList<>();
        piece.strip().ifPresent(strip -> {
            parts.add("strip: {cut-width: %s, length: %s}"
                    .formatted(length(strip.cutWidth()), lengthRule(strip.length())));
            strip.runs().ifPresent(runs -> parts.add("runs: " + Entry.word(runs)));
            strip.print().ifPresent(print -> parts.add("print: " + Entry.word(print)));
        });
        if (!piece.cut().isEmpty()) {
            parts.add("cut: "
                    + braces(piece.cut().stream()
                            .map(cut -> quoted(cut.role()) + ": " + cut(cut))
                            .toList()));
        }
        piece.up().ifPresent(up -> parts.add("up: " + Entry.word(up)));
        piece.arrowMeans().ifPresent(meaning -> parts.add("arrow-means: " + Entry.word(meaning)));
        piece.drawn().ifPresent(hand -> parts.add("drawn: " + Entry.word(hand)));
        piece.matchPoint().ifPresent(match -> parts.add("match-point: " + matchPoint(match)));
        piece.gap().ifPresent(gap -> parts.add("gap: " + length(gap)));
        piece.filler().ifPresent(most -> parts.add("filler: {at-most: " + most + "}"));
        piece.lying().grain().ifPresent(grain -> parts.add("grain: " + Entry.word(grain)));
        piece.lying().tolerance().ifPresent(tolerance -> parts.add("grain-tolerance: " + tolerance(tolerance)));
        if (piece.lying().edgeOnSelvedge()) {
            parts.add("edge-on-selvedge: yes");
        }
        piece.lying().border().ifPresent(tie -> parts.add("border: " + tie(tie)));
        piece.lying().zone().ifPresent(zone -> parts.add("zone: " + quoted(zone)));
        motifs(piece, /* on= */ false).ifPresent(off -> parts.add("keep-off: " + off));
        motifs(piece, /* on= */ true).ifPresent(on -> parts.add("keep-on: " + on));
        return braces(parts);
    }

    private String tolerance(GrainTolerance tolerance) {
        return tolerance instanceof GrainTolerance.Deviation deviation
                ? length(deviation.over())
                : BigDecimal.valueOf(((GrainTolerance.Degrees) tolerance).degrees())
                                .toPlainString() + " deg";
    }

    private static String tie(Lying.Tie tie) {
        return switch (tie.kind()) {
            case LOWEST_POINT -> "hem";
            case NOTCH, DRILL_HOLE -> Entry.word(tie.kind()) + " " + tie.number();
        };
    }

    private String shade(Shade shade) {
        List<String> parts = new ArrayList<>();
        shade.lengthwise().ifPresent(length -> parts.add("lengthwise: " + length(length)));
        shade.crosswise().ifPresent(length -> parts.add("crosswise: " + length(length)));
        return braces(parts);
    }

    private String zones(List<JobFabric.Zone> zones) {
        return zones.stream()
                .map(zone -> "%s: {from-selvedge: %s, to: %s}"
                        .formatted(quoted(zone.name()), length(zone.from()), length(zone.to())))
                .collect(Collectors.joining(", ", "{", "}"));
    }

    private String matchPoint(MatchMark match) {
        List<String> parts = new ArrayList<>(List.of("at: " + mark(match.at())));
        match.tolerance().ifPresent(most -> parts.add("tolerance: " + length(most)));
        match.along().ifPresent(axis -> parts.add("along: " + Entry.word(axis)));
        match.to()
                .ifPresent(to -> parts.add(
                        to instanceof Partner.Mate mate
                                ? "to: {piece: %s, at: %s}".formatted(quoted(mate.piece()), mark(mate.at()))
                                : "to: other-hand"));
        return braces(parts);
    }

    private Optional<String> motifs(JobPiece piece, boolean on) {
        List<String> motifs = piece.lying().motifs().stream()
                .filter(motif -> motif.on() == on)
                .map(motif -> "{motif: " + quoted(motif.motif())
                        + motif.at().map(at -> ", at: " + mark(at)).orElse("") + "}")
                .toList();
        return motifs.isEmpty() ? Optional.empty() : Optional.of("[" + String.join(", ", motifs) + "]");
    }

    private static String mark(MarkRef mark) {
        return Entry.word(mark.kind()) + " " + mark.number();
    }

    private String lengthRule(LengthRule rule) {
        return rule.parts().size() == 1
                ? part(rule.parts().get(0))
                : rule.parts().stream().map(this::part).collect(Collectors.joining(", ", "[", "]"));
    }

    private String part(LengthRule.Part part) {
        List<String> said = new ArrayList<>();
        if (part.source() instanceof Source.Fixed fixed) {
            if (part.times() == 1 && part.plus().equals(Length.ZERO)) {
                return length(fixed.length());
            }
            said.add("length: " + length(fixed.length()));
        } else if (part.source() instanceof Source.OfMeasure of) {
            said.add("measure: " + quoted(of.measure()));
        } else if (part.source() instanceof Source.OfEdge of) {
            said.add("edge: " + quoted(of.edge()));
        } else if (part.source() instanceof Source.BySize by) {
            said.add("by-size: "
                    + braces(by.lengths().entrySet().stream()
                            .map(size -> quoted(size.getKey()) + ": " + length(size.getValue()))
                            .toList()));
        }
        if (part.times() != 1) {
            said.add("times: " + plain(BigDecimal.valueOf(part.times())));
        }
        if (!part.plus().equals(Length.ZERO)) {
            said.add("plus: " + length(part.plus()));
        }
        return braces(said);
    }

    private void sewing(JobSewing sewing) {
        section("sewing");
        named(
                "edges",
                sewing.edges().entrySet().stream().map(edge -> quoted(edge.getKey()) + ": " + edge(edge.getValue())));
        named("elastic", sewing.elastic().stream().map(one -> quoted(one.name()) + ": " + elastic(one)));
        named("seams", sewing.seams().stream().map(one -> quoted(one.name()) + ": " + seam(one)));
        sewing.thread().ifPresent(thread -> line("  thread: " + thread(thread)));
        named("bindings", sewing.bindings().stream().map(one -> quoted(one.name()) + ": " + binding(one)));
        named("labels", sewing.labels().stream().map(one -> quoted(one.name()) + ": " + label(one)));
    }

    private void named(String key, Stream<String> items) {
        List<String> all = items.toList();
        if (!all.isEmpty()) {
            line("  " + key + ":");
            all.forEach(item -> line("    " + item));
        }
    }

    private String edge(JobSewing.Edge edge) {
        if (edge.drawn().isEmpty()) {
            return lengthRule(edge.length().orElseThrow());
        }
        List<String> drawn = edge.drawn().stream().map(JobWriter::drawn).toList();
        List<String> parts = new ArrayList<>();
        parts.add("drawn: " + (drawn.size() == 1 ? drawn.get(0) : "[" + String.join(", ", drawn) + "]"));
        edge.length().ifPresent(stated -> parts.add("stated: " + lengthRule(stated)));
        return braces(parts);
    }

    private static String drawn(DrawnEdge edge) {
        List<String> parts = new ArrayList<>(List.of("piece: " + quoted(edge.piece())));
        if (edge.between().isPresent()) {
            DrawnEdge.Between ends = edge.between().get();
            parts.add("from: " + ends.from().called());
            parts.add("to: " + ends.to().called());
            ends.past().ifPresent(past -> parts.add("past: " + past.called()));
        } else {
            parts.add("edge: " + Entry.word(DrawnEdge.Edge.WHOLE_OUTLINE));
        }
        edge.counts().ifPresent(counts -> parts.add("counts: " + Entry.word(counts)));
        return braces(parts);
    }

    private String elastic(JobSewing.Elastic elastic) {
        List<String> parts = new ArrayList<>();
        elastic.width().ifPresent(width -> parts.add("width: " + lengthRule(width)));
        parts.add("length: " + lengthRule(elastic.length()));
        each(elastic.each(), parts);
        if (!elastic.join().equals(Length.ZERO)) {
            parts.add("join: " + length(elastic.join()));
        }
        elastic.price().ifPresent(price -> parts.add("price: " + PriceText.print(price)));
        elastic.soldBy().ifPresent(step -> parts.add("sold-by: " + length(step)));
        return braces(parts);
    }

    private String seam(JobSewing.Seam seam) {
        List<String> parts = new ArrayList<>(List.of("stitch: " + seam.stitch()));
        if (seam.ratio().isPresent()) {
            parts.add("ratio: " + plain(BigDecimal.valueOf(seam.ratio().getAsDouble())));
        }
        parts.add("length: " + lengthRule(seam.length()));
        each(seam.each(), parts);
        return braces(parts);
    }

    private String thread(JobSewing.Spools thread) {
        List<String> parts = new ArrayList<>();
        thread.spool().ifPresent(spool -> parts.add("spool: " + length(spool)));
        if (thread.price().isPresent()) {
            parts.add("price: " + amount(thread.price().getAsDouble()) + " per spool");
        }
        if (thread.waste().isPresent()) {
            parts.add("waste: " + percent(thread.waste().getAsDouble()));
        }
        return braces(parts);
    }

    private String binding(JobSewing.Binding binding) {
        List<String> parts = new ArrayList<>(List.of(
                "from: " + quoted(binding.role()),
                "cut-width: " + length(binding.cutWidth()),
                "length: " + lengthRule(binding.length())));
        each(binding.each(), parts);
        parts.add("cut: " + Entry.word(binding.cut()));
        return braces(parts);
    }

    private static String label(JobSewing.Label label) {
        List<String> parts = new ArrayList<>();
        each(label.each(), parts);
        label.price()
                .ifPresent(price -> parts.add("price: " + amount(price.amount())
                        + (price.pieces() == 1 ? " each" : " per " + price.pieces())));
        label.soldBy().ifPresent(step -> parts.add("sold-by: " + step));
        return braces(parts);
    }

    private static void each(int each, List<String> parts) {
        if (each != 1) {
            parts.add("each: " + each);
        }
    }

    private static String amount(double amount) {
        BigDecimal exact = BigDecimal.valueOf(amount);
        return exact.setScale(Math.max(2, exact.stripTrailingZeros().scale())).toPlainString();
    }

    private void sizes(SizeTable table) {
        line("");
        if (table.equals(SizeTable.EN_13402_3)) {
            line("sizes: " + SizesReading.STANDARD, "chosen by the measure bust");
            return;
        }
        line("sizes:");
        for (SizeTable.Row row : table.rows()) {
            line("  " + quoted(row.size().name()) + ": "
                    + braces(row.ranges().stream()
                            .map(range -> quoted(range.measure()) + ": " + range(range))
                            .toList()));
        }
    }

    private String range(SizeTable.Range range) {
        return range.from().equals(range.to())
                ? length(range.from())
                : "{from: %s, to: %s}".formatted(length(range.from()), length(range.to()));
    }

    private static String cut(CutRequest cut) {
        Optional<String> counted = cut.manner().map(manner -> switch (manner) {
            case PAIR -> cut.count() == 1 ? " pair" : " pairs";
            case ALIKE -> " alike";
            case ON_FOLD -> " on fold";
        });
        return cut.count() + counted.orElse("");
    }

    private void plan(JobPlan plan) {
        if (plan.equals(JobPlan.UNSAID)) {
            line("plan: {}");
            return;
        }
        section("plan");
        plan.maxPlies().ifPresent(plies -> line("  max-plies: " + plies));
        plan.maxGarments().ifPresent(garments -> line("  max-garments: " + garments));
        plan.tableLength().ifPresent(length -> line("  table-length: " + length(length)));
        if (plan.over() > 0) {
            line("  over: " + percent(plan.over()));
        }
        if (plan.under() > 0) {
            line("  under: " + percent(plan.under()));
        }
        plan.least().ifPresent(least -> line("  least: " + Entry.word(least)));
        if (!plan.oneColour().isEmpty()) {
            line("  one-colour: ["
                    + plan.oneColour().stream().map(JobWriter::quoted).collect(Collectors.joining(", ")) + "]");
        }
        if (plan.fromStash()) {
            line("  bolts: " + JobBuying.STASH);
        }
        if (!plan.bolts().isEmpty()) {
            line("  bolts:");
            plan.bolts().forEach(bolt -> line("    - " + bolt(bolt)));
        }
    }

    private String bolt(JobPlan.Bolt bolt) {
        List<String> parts = new ArrayList<>();
        bolt.name().ifPresent(name -> parts.add("name: " + quoted(name)));
        parts.add("of: " + quoted(bolt.of()));
        bolt.colour().ifPresent(colour -> parts.add("colour: " + quoted(colour)));
        parts.add("length: " + length(bolt.length()));
        bolt.width().ifPresent(width -> parts.add("width: " + length(width)));
        return braces(parts);
    }

    private String order(OrderLine line) {
        List<String> parts = new ArrayList<>();
        if (!line.size().equals(Size.ONE)) {
            parts.add("size: " + quoted(line.size().name()));
        }
        parts.add("make: " + line.make());
        line.customer().ifPresent(customer -> parts.add("customer: " + quoted(customer)));
        line.colour().ifPresent(colour -> parts.add("colour: " + quoted(colour)));
        line.priority().ifPresent(priority -> parts.add("priority: " + priority));
        line.measures().forEach(measure -> parts.add(quoted(measure.name()) + ": " + length(measure.length())));
        return braces(parts);
    }

    private static String braces(List<String> parts) {
        return "{" + String.join(", ", parts) + "}";
    }

    /** In the file's units, unless another unit is clearly shorter: 58 in, not 147.32 cm; 3 mm, not 0.3 cm. */
    private String length(Length length) {
        String shortest = LengthText.print(length, unit);
        int limit = shortest.length() - 1;
        for (LengthUnit other : List.of(LengthUnit.MM, LengthUnit.CM, LengthUnit.M, LengthUnit.IN, LengthUnit.YD)) {
            String text = LengthText.print(length, other);
            if (text.length() < limit) {
                shortest = text;
                limit = text.length();
            }
        }
        return shortest;
    }

    private static String quoted(String text) {
        boolean meansNothing = text.toLowerCase(Locale.ROOT).equals("null");
        if (PLAIN.matcher(text).matches() && !meansNothing) {
            return text;
        }
        StringBuilder quoted = new StringBuilder("\"");
        text.codePoints().forEach(point -> {
            if (point == '"' || point == '\\') {
                quoted.append('\\').appendCodePoint(point);
            } else if (Quote.isInvisible(point)) {
                quoted.append("\\U%08X".formatted(point));
            } else {
                quoted.appendCodePoint(point);
            }
        });
        return quoted.append('"').toString();
    }
}
