package lengthwise.job;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.ScaleStatement;
import lengthwise.model.Length;
import lengthwise.workshop.SizeTable;

/**
 * Reads job files.
 *
 * <p>Every complaint is one line: {@code file:line:column: key …: what was found; what is allowed; did you mean …?}
 * The first one found is reported.
 */
public final class JobReader {
    private static final int MOST_FABRICS = 100;

    private static final Length LARGEST_BOX = Length.ofMillimetres(10_000);
    private static final Length LARGEST_OVERLAP = Length.ofMillimetres(1000);
    private static final int MOST_TILES = 200;
    private static final int MOST_PAGES = 2000;

    private final Entry root;
    private final Measuring measuring;
    private final Fields keys;

    private JobReader(Entry root) throws JobException {
        this.root = root;
        refuseOtherVersions();
        this.keys = root.fields(
                "version: 1, then job, drawings, fabrics, pieces and order",
                "version",
                "job",
                "units",
                "drawings",
                "fabrics",
                "pieces",
                "gap",
                "cutting-tool",
                "sizes",
                "order",
                "plan",
                "sewing");
        this.measuring = new Measuring(keys.read("units", e -> e.word(LengthUnit.class, Set.of())));
    }

    /**
     * Reads a job file.
     *
     * @throws JobException if it cannot be read or says something that no job may say
     */
    public static JobFile read(Path file) throws JobException {
        return read(file, YamlText.of(file));
    }

    /** Reads the text of a job file; the path names it in complaints and gives the folder of its drawings. */
    public static JobFile read(Path file, String text) throws JobException {
        return read(file, new YamlText(file.toString(), text));
    }

    private static JobFile read(Path file, YamlText text) throws JobException {
        Entry root = text.root();
        Job job = new JobReader(root).job(titleFrom(file));
        Places places = new Places(root);
        return new JobFile(file, job, new JobChecks(job, places).warnings(), places);
    }

    private static String titleFrom(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.replaceFirst("\\.[^.]+$", "");
    }

    /** The version comes first: the keys of another version would only be misunderstood. */
    private void refuseOtherVersions() throws JobException {
        Map<String, Entry> entries = root.named("version: 1, then job, drawings, fabrics, pieces and order");
        Entry version = entries.get("version");
        if (version == null) {
            throw root.missing("version", "version: 1 as the first line" + Entry.mistaken("version", entries.keySet()));
        }
        String text = version.text("1");
        if (!text.equals(Integer.toString(Job.VERSION))) {
            throw version.error(
                    "this file says version %s and this Lengthwise reads version %d; use the Lengthwise that wrote it, or write version: %d and check every key"
                            .formatted(Quote.of(text), Job.VERSION, Job.VERSION));
        }
    }

    private Job job(String defaultTitle) throws JobException {
        List<JobFabric> fabrics = fabrics(keys.need("fabrics", "and under it each fabric by its name, with its width"));
        List<String> roles = fabrics.stream().map(JobFabric::role).distinct().toList();
        PieceReading pieceReading = new PieceReading(measuring, roles);
        List<JobPiece> pieces = new ArrayList<>();
        if (keys.get("pieces").isPresent()) {
            for (Entry piece : keys.get("pieces")
                    .get()
                    .named("cup: {cut: {shell: 1 pair}}")
                    .values()) {
                pieces.add(pieceReading.read(piece));
            }
        }
        List<JobDrawing> drawings = keys.read("drawings", this::drawings).orElse(List.of());
        if (drawings.isEmpty()
                && pieces.stream().allMatch(piece -> piece.strip().isEmpty())) {
            throw root.keyError("there is nothing to cut: no drawing and no strip; write drawings: [pattern.svg]");
        }
        Optional<SizeTable> sizes = keys.read("sizes", e -> new SizesReading(measuring).read(e));
        FabricReading fabricReading = new FabricReading(measuring);
        JobSewing sewing = keys.read("sewing", e -> new SewingReading(measuring, fabricReading::price, roles).read(e))
                .orElse(JobSewing.UNSAID);
        List<String> measures = Stream.of(
                        sizes.stream().flatMap(table -> table.measures().stream()),
                        pieces.stream()
                                .flatMap(piece -> piece.strip().stream())
                                .flatMap(strip -> strip.length().measures().stream()),
                        sewing.rules().stream().flatMap(keyed -> keyed.rule().measures().stream()))
                .flatMap(names -> names)
                .distinct()
                .toList();
        List<OrderLine> order =
                new OrderReading(measuring, sizes, measures).read(keys.need("order", "[{size: M, make: 1}]"));
        return new Job(
                keys.read("job", e -> e.text("a title")).orElse(defaultTitle),
                measuring.units(),
                drawings,
                fabrics,
                pieces,
                keys.read("gap", pieceReading::gap),
                keys.read("cutting-tool", e -> e.word(CuttingTool.class, Set.of())),
                sizes,
                order,
                keys.read("plan", e -> new PlanReading(measuring, fabrics, order).read(e)),
                sewing);
    }

    private List<JobDrawing> drawings(Entry entry) throws JobException {
        List<JobDrawing> drawings = new ArrayList<>();
        Set<String> files = new TreeSet<>();
        for (Entry item : entry.items("- pattern.svg, or - {file: pattern.svg, seam-allowance: included}")) {
            JobDrawing drawing = drawing(item);
            if (!files.add(drawing.file())) {
                throw item.error(drawing.file() + " is listed a second time; its pieces would be cut twice");
            }
            drawings.add(drawing);
        }
        return drawings;
    }

    private JobDrawing drawing(Entry entry) throws JobException {
        if (entry.isText()) {
            return new JobDrawing(file(entry), ScaleStatement.NONE, Optional.empty());
        }
        Fields drawing = entry.fields(
                "pattern.svg, or {file: pattern.svg, seam-allowance: included}",
                "file",
                "drawing-unit",
                "scale-box",
                "tiles",
                "size",
                "seam-allowance",
                "arrow-means");
        Optional<Double> unit = drawing.read("drawing-unit", measuring::millimetresPerUnit);
        ScaleStatement scale = new ScaleStatement(
                unit.map(OptionalDouble::of).orElse(OptionalDouble.empty()), drawing.read("scale-box", this::scaleBox));
        Optional<PageGrid> tiles = drawing.read("tiles", this::tiles);
        return new JobDrawing(
                file(drawing.need("file", "pattern.svg")),
                scale,
                tiles,
                drawing.read("size", e -> e.text("the size that the file is drawn in, such as M")),
                drawing.read("seam-allowance", this::seamAllowance),
                drawing.read("arrow-means", e -> e.word(ArrowMeaning.class, Set.of())));
    }

    private static String file(Entry entry) throws JobException {
        return path(entry, "the path of a drawing, seen from the folder of the job file");
    }

    /** Reads the path of a file. */
    static String path(Entry entry, String example) throws JobException {
        String file = entry.text(example);
        if (file.matches("(?i)[a-z]{2,}://.*")) {
            throw entry.error("found " + Quote.of(file)
                    + "; nothing is fetched from the network, save the drawing beside the job file");
        }
        try {
            return Path.of(file).toString().isEmpty() ? "" : file;
        } catch (InvalidPathException e) {
            throw entry.error("found " + Quote.of(file) + ", which is no path on this computer");
        }
    }

    private PageGrid tiles(Entry entry) throws JobException {
        Fields tiles = entry.fields("{columns: 3, overlap: 20 mm}", "columns", "rows", "overlap", "first-page");
        Optional<Integer> rows =
                tiles.read("rows", e -> Measuring.count(e, MOST_TILES, "how many rows of pages, such as 4"));
        return new PageGrid(
                Measuring.count(tiles.need("columns", "3"), MOST_TILES, "how many pages lie side by side, such as 3"),
                rows.map(OptionalInt::of).orElse(OptionalInt.empty()),
                tiles.read("overlap", e -> measuring.notNegative(e, LARGEST_OVERLAP))
                        .orElse(Length.ZERO),
                tiles.read("first-page", e -> Measuring.count(e, MOST_PAGES, "the number of a page, such as 2"))
                        .orElse(1));
    }

    private ScaleStatement.ScaleBox scaleBox(Entry entry) throws JobException {
        Fields box = entry.fields("{id: box, measures: 10 cm}", "id", "measures");
        return new ScaleStatement.ScaleBox(
                box.need("id", "box").text("the id or label of the square in the drawing"),
                measuring.positive(box.need("measures", "10 cm"), LARGEST_BOX));
    }

    private SeamAllowance seamAllowance(Entry entry) throws JobException {
        String text = entry.text("included, or the length to add, such as 6 mm");
        if (text.equals("included")) {
            return SeamAllowance.INCLUDED;
        }
        if (Character.isLetter(text.charAt(0))) {
            throw entry.error("found %s; write included, or the length to add, such as 6 mm%s"
                    .formatted(Quote.of(text), Entry.meant(text, List.of("included"))));
        }
        Length toAdd = measuring.notNegative(entry, Length.ofMillimetres(1_000));
        if (toAdd.micrometres() == 0) {
            throw entry.error("found %s; where nothing is to be added write included".formatted(Quote.of(text)));
        }
        return new SeamAllowance(toAdd);
    }

    private List<JobFabric> fabrics(Entry entry) throws JobException {
        FabricReading reading = new FabricReading(measuring);
        List<JobFabric> fabrics = new ArrayList<>();
        Map<String, String> byFileName = new LinkedHashMap<>();
        Map<String, Entry> items = entry.named("reef-print: {width: 150 cm}");
        if (items.size() > MOST_FABRICS) {
            throw entry.error("found %d fabrics; a job takes at most %d".formatted(items.size(), MOST_FABRICS));
        }
        for (Entry item : items.values()) {
            JobFabric fabric = reading.read(item);
            refuseUnshared(item, fabric, fabrics);
            fabrics.add(fabric);
            String alike = byFileName.putIfAbsent(fabric.name().toLowerCase(Locale.ROOT), fabric.name());
            if (alike != null) {
                throw item.keyError("%s and %s differ in capitals only and would share a file; give one another name"
                        .formatted(alike, fabric.name()));
            }
        }
        if (fabrics.isEmpty()) {
            throw entry.error("found no fabric; write reef-print: {width: 150 cm}");
        }
        return fabrics;
    }

    /** Of several pieces of cloth for one purpose all are there but one, of which as much is bought as need be. */
    private static void refuseUnshared(Entry item, JobFabric fabric, List<JobFabric> before) throws JobException {
        List<JobFabric> others = before.stream()
                .filter(other -> other.role().equals(fabric.role()))
                .toList();
        if (others.isEmpty()) {
            return;
        }
        String both = "%s and %s are both for %s".formatted(others.get(0).name(), fabric.name(), fabric.role());
        Optional<JobFabric> bought =
                others.stream().filter(other -> !other.isOnHand()).findFirst();
        if (!fabric.isOnHand() && bought.isPresent()) {
            throw item.keyError(
                    "%s and %s are both for %s, and only one piece of cloth for it can be bought: say how much there is of the other (length or outline), or give it a role of its own (for:)"
                            .formatted(bought.get().name(), fabric.name(), fabric.role()));
        }
        List<JobFabric> all = Stream.concat(others.stream(), Stream.of(fabric)).toList();
        if (all.stream().anyMatch(each -> each.cutAlready().isPresent())) {
            throw item.keyError(
                    both
                            + ", and one of them is cut already; go on with that in a job of its own, for the pieces that are cut from it");
        }
        if (all.stream().anyMatch(each -> each.buying().from().equals(Optional.of(JobBuying.STASH)))) {
            throw item.keyError(
                    both + ", and from: stash chooses one cloth for all of it; name each of them, as from: reef-1");
        }
    }
}
