package lengthwise.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import lengthwise.model.Size;
import lengthwise.workshop.SizeTable;

/**
 * Writes a job as the text of a job file, tidy and with comments, for a maker to read and change. Reading it gives an
 * equal job.
 */
public final class JobWriter {
    private final Job job;
    private final JobText text;

    private JobWriter(Job job) {
        this.job = job;
        this.text = new JobText(job);
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
        JobText text = new JobText(job);
        notes.forEach(note -> text.line("# " + note));
        text.line("fabrics:");
        fabrics.forEach(new FabricWriting(text)::write);
        return text.toString();
    }

    private String file(List<String> notes) {
        text.line("# A job for Lengthwise. Every length takes a unit: mm, cm, m, in, ft or yd.");
        notes.forEach(note -> text.line("# " + note.replaceAll("\\s+", " ").trim()));
        text.line("version: " + Job.VERSION);
        text.line("job: " + JobText.quoted(job.title()));
        job.units().ifPresent(units -> text.line("units: " + units.symbol(), "of numbers without a unit"));
        if (!job.drawings().isEmpty()) {
            text.section("drawings");
            job.drawings().forEach(this::drawing);
        }
        text.section("fabrics");
        job.fabrics().forEach(new FabricWriting(text)::write);
        if (!job.pieces().isEmpty()) {
            text.section("pieces");
            PieceWriting pieces = new PieceWriting(text);
            job.pieces().forEach(piece -> text.line("  " + JobText.quoted(piece.name()) + ": " + pieces.piece(piece)));
        }
        job.gap().ifPresent(gap -> {
            text.line("");
            text.line("gap: " + text.length(gap), "least distance between pieces");
        });
        job.cuttingTool().ifPresent(tool -> {
            text.line("");
            text.line("cutting-tool: " + Entry.word(tool));
        });
        job.sizes().ifPresent(this::sizes);
        text.section("order");
        job.order().forEach(order -> text.line("  - " + order(order)));
        job.plan().ifPresent(this::plan);
        if (!job.sewing().equals(JobSewing.UNSAID)) {
            new SewingWriting(text).write(job.sewing());
        }
        return text.toString();
    }

    private void drawing(JobDrawing drawing) {
        text.line("  - file: " + JobText.quoted(drawing.file()));
        drawing.size().ifPresent(size -> text.line("    size: " + JobText.quoted(size)));
        drawing.scale()
                .millimetresPerUnit()
                .ifPresent(size -> text.line(
                        "    drawing-unit: " + JobText.plain(BigDecimal.valueOf(size)) + " mm",
                        "one unit of the drawing"));
        drawing.scale()
                .scaleBox()
                .ifPresent(box -> text.line("    scale-box: {id: %s, measures: %s}"
                        .formatted(JobText.quoted(box.id()), text.length(box.measures()))));
        drawing.tiles()
                .ifPresent(tiles -> text.line(
                        "    tiles: {columns: %s%s, overlap: %s%s}"
                                .formatted(
                                        tiles.columns(),
                                        tiles.rows().isPresent()
                                                ? ", rows: " + tiles.rows().getAsInt()
                                                : "",
                                        text.length(tiles.overlap()),
                                        tiles.firstPage() == 1 ? "" : ", first-page: " + tiles.firstPage()),
                        "its pages make one drawing"));
        drawing.seamAllowance()
                .ifPresent(allowance ->
                        text.line("    seam-allowance: " + seamAllowance(allowance), "included, or the length to add"));
        drawing.arrowMeans()
                .ifPresent(meaning -> text.line("    arrow-means: " + Entry.word(meaning), "grain or stretch"));
    }

    private String seamAllowance(SeamAllowance allowance) {
        return allowance.equals(SeamAllowance.INCLUDED) ? "included" : text.length(allowance.toAdd());
    }

    private void sizes(SizeTable table) {
        text.line("");
        if (table.equals(SizeTable.EN_13402_3)) {
            text.line("sizes: " + SizesReading.STANDARD, "chosen by the measure bust");
            return;
        }
        text.line("sizes:");
        for (SizeTable.Row row : table.rows()) {
            text.line("  " + JobText.quoted(row.size().name()) + ": "
                    + JobText.braces(row.ranges().stream()
                            .map(range -> JobText.quoted(range.measure()) + ": " + range(range))
                            .toList()));
        }
    }

    private String range(SizeTable.Range range) {
        return range.from().equals(range.to())
                ? text.length(range.from())
                : "{from: %s, to: %s}".formatted(text.length(range.from()), text.length(range.to()));
    }

    private void plan(JobPlan plan) {
        if (plan.equals(JobPlan.UNSAID)) {
            text.line("plan: {}");
            return;
        }
        text.section("plan");
        plan.maxPlies().ifPresent(plies -> text.line("  max-plies: " + plies));
        plan.maxGarments().ifPresent(garments -> text.line("  max-garments: " + garments));
        plan.tableLength().ifPresent(length -> text.line("  table-length: " + text.length(length)));
        if (plan.over() > 0) {
            text.line("  over: " + JobText.percent(plan.over()));
        }
        if (plan.under() > 0) {
            text.line("  under: " + JobText.percent(plan.under()));
        }
        plan.least().ifPresent(least -> text.line("  least: " + Entry.word(least)));
        if (!plan.oneColour().isEmpty()) {
            text.line("  one-colour: ["
                    + plan.oneColour().stream().map(JobText::quoted).collect(Collectors.joining(", ")) + "]");
        }
        if (plan.fromStash()) {
            text.line("  bolts: " + JobBuying.STASH);
        }
        if (!plan.bolts().isEmpty()) {
            text.line("  bolts:");
            plan.bolts().forEach(bolt -> text.line("    - " + bolt(bolt)));
        }
    }

    private String bolt(JobPlan.Bolt bolt) {
        List<String> parts = new ArrayList<>();
        bolt.name().ifPresent(name -> parts.add("name: " + JobText.quoted(name)));
        parts.add("of: " + JobText.quoted(bolt.of()));
        bolt.colour().ifPresent(colour -> parts.add("colour: " + JobText.quoted(colour)));
        parts.add("length: " + text.length(bolt.length()));
        bolt.width().ifPresent(width -> parts.add("width: " + text.length(width)));
        return JobText.braces(parts);
    }

    private String order(OrderLine line) {
        List<String> parts = new ArrayList<>();
        if (!line.size().equals(Size.ONE)) {
            parts.add("size: " + JobText.quoted(line.size().name()));
        }
        parts.add("make: " + line.make());
        line.customer().ifPresent(customer -> parts.add("customer: " + JobText.quoted(customer)));
        line.colour().ifPresent(colour -> parts.add("colour: " + JobText.quoted(colour)));
        line.priority().ifPresent(priority -> parts.add("priority: " + priority));
        line.measures()
                .forEach(measure -> parts.add(JobText.quoted(measure.name()) + ": " + text.length(measure.length())));
        return JobText.braces(parts);
    }
}
