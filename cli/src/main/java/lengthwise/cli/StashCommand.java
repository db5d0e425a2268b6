package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.job.LengthUnit;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.report.Csv;
import lengthwise.report.StashTable;
import lengthwise.report.WholeFile;
import lengthwise.stash.ClothPicture;
import lengthwise.stash.ClothTable;
import lengthwise.stash.ClothText;
import lengthwise.stash.ClothText.Field;
import lengthwise.stash.Stash;
import lengthwise.stash.StashCloth;
import lengthwise.stash.StashException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Keeps the maker's bolts and remnants. */
@Command(
        name = "stash",
        mixinStandardHelpOptions = true,
        synopsisSubcommandLabel = "COMMAND",
        description = {
            "Keeps the cloth that you have: bolts and remnants, measured as they are.",
            "marker draws on it where a fabric of the job says from: stash, plan with bolts: stash."
        })
final class StashCommand implements Runnable {
    private static final Length LONGEST = Length.ofMillimetres(500_000);

    @Spec
    private CommandSpec spec;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    StashCommand() {}

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "Say what to do: list, add, take, give-back, show, export or import.");
    }

    @FunctionalInterface
    private interface Work {
        void run(PrintWriter out) throws StashException, IOException;
    }

    private int doing(Work work) throws IOException {
        try {
            work.run(spec.commandLine().getOut());
            spec.commandLine().getOut().flush();
            return ExitCode.DONE.number();
        } catch (StashException bad) {
            spec.commandLine().getErr().println("lengthwise: " + bad.getMessage() + ".");
            return ExitCode.BAD_INPUT.number();
        }
    }

    @Command(mixinStandardHelpOptions = true, description = "Lists what is there.")
    int list(
            @Mixin StashOption where,
            @Option(names = "--fabric", paramLabel = "NAME", description = "only this fabric") @Nullable String fabric)
            throws IOException {
        return doing(out -> {
            try (Stash stash = Stash.open(where.file())) {
                out.print(StashTable.of(stash.entries().stream()
                        .filter(entry ->
                                fabric == null || entry.cloth().fabric().equals(fabric))
                        .toList()));
            }
        });
    }

    @Command(
            mixinStandardHelpOptions = true,
            description = {"Puts a cloth in, measured as it is now; the first one makes the stash."})
    int add(
            @Mixin StashOption where,
            @Parameters(paramLabel = "NAME", description = "the label on it, as reef-1") String name,
            @Option(
                            names = "--fabric",
                            required = true,
                            paramLabel = "NAME",
                            description = "what it is: the name of the fabric in the job files")
                    String fabric,
            @Option(
                            names = "--width",
                            required = true,
                            paramLabel = "LENGTH",
                            description = "from selvedge to selvedge, as \"150 cm\" or \"58 in\"")
                    String width,
            @Option(names = "--length", paramLabel = "LENGTH", description = "from cut end to cut end, as \"3.2 m\"")
                    @Nullable
                    String length,
            @Option(
                            names = "--outline",
                            paramLabel = "CORNERS",
                            description =
                                    "of a remnant, in place of the length: its corners in turn, each from the cut end and from the near selvedge, as \"0 cm, 0 cm; 90 cm, 0 cm; 50 cm, 60 cm\"")
                    @Nullable
                    String outline,
            @Option(names = "--colour", paramLabel = "NAME", description = "its colour, as orders call it") @Nullable
                    String colour,
            @Option(
                            names = "--unusable-edge",
                            paramLabel = "LENGTH",
                            description = "the strip along each selvedge, as \"2 cm\"; near and far as \"1 cm, 3 cm\"")
                    @Nullable
                    String edge,
            @Option(
                            names = "--direction",
                            paramLabel = "WAY",
                            description = "either-way, one-way or one-way-per-garment")
                    @Nullable
                    String direction,
            @Option(
                            names = "--shrinkage",
                            paramLabel = "HOW",
                            description =
                                    "lengthwise, crosswise, and pre-wash, add-to-pieces or in-pattern, as \"3 %%, 2 %%, pre-wash\"")
                    @Nullable
                    String shrinkage,
            @Option(names = "--price", paramLabel = "PRICE", description = "as \"14.50 per m\"") @Nullable String price,
            @Option(
                            names = "--print",
                            paramLabel = "PLACE",
                            description =
                                    "a point of the print that comes again: from the cut end, from the near selvedge, as \"5 cm, 3 cm\"")
                    @Nullable
                    String print,
            @Option(
                            names = "--flaws",
                            paramLabel = "FLAWS",
                            description =
                                    "bad rectangles: from the cut end, length, from the near selvedge, width, as \"40 cm, 3 cm, 20 cm, 2 cm\"; more behind a semicolon")
                    @Nullable
                    String flaws)
            throws IOException {
        return doing(out -> {
            Map<Field, String> words = new EnumMap<>(Field.class);
            words.put(Field.NAME, name);
            words.put(Field.FABRIC, fabric);
            words.put(Field.WIDTH, width);
            said(words, Field.LENGTH, length);
            said(words, Field.OUTLINE, outline);
            said(words, Field.COLOUR, colour);
            said(words, Field.UNUSABLE_EDGE, edge);
            said(words, Field.DIRECTION, direction);
            said(words, Field.SHRINKAGE, shrinkage);
            said(words, Field.PRICE, price);
            said(words, Field.PRINT, print);
            said(words, Field.FLAWS, flaws);
            StashCloth cloth = ClothText.parse(
                    words,
                    (field, what) ->
                            new StashException((field == Field.NAME ? "the name" : "--" + field.word()) + ": " + what));
            try (Stash stash = Stash.openOrMake(where.file())) {
                stash.add(List.of(cloth));
            }
            out.println("%s is in the stash: %s.".formatted(cloth.name(), measures(cloth)));
        });
    }

    private static void said(Map<Field, String> words, Field field, @Nullable String text) {
        if (text != null) {
            words.put(field, text);
        }
    }

    private static String measures(StashCloth cloth) {
        return "%s long, %s wide".formatted(LengthWords.both(cloth.there().length()), LengthWords.both(cloth.width()));
    }

    @Command(
            mixinStandardHelpOptions = true,
            description = {"Takes a cloth out, or cuts a length off a straight one."})
    int take(
            @Mixin StashOption where,
            @Parameters(paramLabel = "NAME", description = "the label on it") String name,
            @Option(names = "--length", paramLabel = "LENGTH", description = "how much is cut off its cut end")
                    @Nullable
                    String length)
            throws IOException {
        return doing(out -> {
            try (Stash stash = Stash.open(where.file())) {
                if (length == null) {
                    StashCloth cloth = stash.take(name);
                    out.println("%s is taken out: it was %s.".formatted(cloth.name(), measures(cloth)));
                    return;
                }
                Length cut = LengthOption.parse(spec, "--length", length, new Length(1), LONGEST);
                Optional<StashCloth> rest = stash.take(name, cut);
                out.println(
                        rest.isPresent()
                                ? "%s is %s now.".formatted(rest.get().name(), measures(rest.get()))
                                : "%s is taken out: what is left of it is not worth keeping.".formatted(name));
            }
        });
    }

    @Command(
            name = "give-back",
            mixinStandardHelpOptions = true,
            description = {"Puts back what was taken and not cut after all; what was left over of it goes out again."})
    int giveBack(
            @Mixin StashOption where, @Parameters(paramLabel = "NAME", description = "the label on it") String name)
            throws IOException {
        return doing(out -> {
            try (Stash stash = Stash.open(where.file())) {
                StashCloth cloth = stash.giveBack(name);
                out.println("%s is in the stash again: %s.".formatted(cloth.name(), measures(cloth)));
            }
        });
    }

    @Command(mixinStandardHelpOptions = true, description = "Draws a picture of a cloth.")
    int show(
            @Mixin StashOption where,
            @Parameters(paramLabel = "NAME", description = "the label on it") String name,
            @Option(names = "--out", required = true, paramLabel = "FILE", description = "the picture to write (.svg)")
                    Path file)
            throws IOException {
        return doing(out -> {
            try (Stash stash = Stash.open(where.file())) {
                StashCloth cloth = stash.entries().stream()
                        .map(Stash.Entry::cloth)
                        .filter(each -> each.name().equalsIgnoreCase(name))
                        .findFirst()
                        .orElseThrow(
                                () -> new StashException("there is no cloth named %s in the stash".formatted(name)));
                WholeFile.write(file, ClothPicture.of(cloth));
                out.println("%s: %s, %s.".formatted(file, cloth.name(), measures(cloth)));
            }
        });
    }

    @Command(
            mixinStandardHelpOptions = true,
            description = {"Writes all that is there as a table of comma-separated values."})
    int export(
            @Mixin StashOption where,
            @Option(names = "--out", paramLabel = "FILE", description = "the table to write (default: to the terminal)")
                    @Nullable
                    Path file,
            @Option(names = "--units", paramLabel = "UNIT", description = "mm, cm, m, in or yd (default: cm)") @Nullable
                    String units)
            throws IOException {
        LengthUnit unit = unit(units);
        return doing(out -> {
            try (Stash stash = Stash.open(where.file())) {
                String table = Csv.of(ClothTable.rows(
                        stash.entries().stream().map(Stash.Entry::cloth).toList(), unit));
                if (file == null) {
                    out.print(table);
                } else {
                    WholeFile.write(file, table);
                }
            }
        });
    }

    private LengthUnit unit(@Nullable String word) {
        if (word == null) {
            return LengthUnit.CM;
        }
        for (LengthUnit unit : LengthUnit.values()) {
            if (unit.symbol().equals(word)) {
                return unit;
            }
        }
        throw new ParameterException(spec.commandLine(), "--units takes mm, cm, m, in, ft or yd, not " + word + ".");
    }

    @Command(
            name = "import",
            mixinStandardHelpOptions = true,
            description = {"Puts all cloths of a table in, or none; the first one makes the stash."})
    int importTable(
            @Mixin StashOption where,
            @Parameters(paramLabel = "TABLE", description = "comma-separated values as export writes them") Path table)
            throws IOException {
        return doing(out -> {
            List<StashCloth> cloths = ClothTable.read(table);
            try (Stash stash = Stash.openOrMake(where.file())) {
                stash.add(cloths);
            }
            out.println(cloths.size() == 1 ? "1 cloth came in." : cloths.size() + " cloths came in.");
        });
    }
}
