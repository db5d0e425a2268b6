package lengthwise.cli;

import java.util.Optional;
import java.util.OptionalInt;
import lengthwise.drawing.PageGrid;
import lengthwise.model.Length;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How the pages of a PDF drawing are laid to make one. */
final class TileOptions {
    private static final Length WIDEST_OVERLAP = Length.ofMillimetres(1000);
    private static final int MOST = 2000;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--tiles",
            paramLabel = "COLUMNS",
            description = "for a PDF whose pages are taped together: how many lie side by side, in reading order")
    private @Nullable Integer columns;

    @Option(
            names = "--tile-overlap",
            paramLabel = "LENGTH",
            description = "how far these pages lie on each other, from paper edge to paper edge (default: 0)")
    private @Nullable String overlap;

    @Option(names = "--first-tile", paramLabel = "PAGE", description = "the page at the upper left (default: 1)")
    private @Nullable Integer firstPage;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    TileOptions() {}

    boolean areSaid() {
        return columns != null || overlap != null || firstPage != null;
    }

    Optional<PageGrid> grid() {
        if (!areSaid()) {
            return Optional.empty();
        }
        if (columns == null) {
            throw wrong("--tile-overlap and --first-tile go with --tiles, which says how many pages lie side by side.");
        }
        if (columns < 1 || columns > MOST) {
            throw wrong("--tiles takes 1 to %d columns, not %d.".formatted(MOST, columns));
        }
        if (firstPage != null && (firstPage < 1 || firstPage > MOST)) {
            throw wrong("--first-tile takes the number of a page, not " + firstPage + ".");
        }
        Length lap = overlap == null
                ? Length.ZERO
                : LengthOption.parse(spec, "--tile-overlap", overlap, Length.ZERO, WIDEST_OVERLAP);
        return Optional.of(new PageGrid(columns, OptionalInt.empty(), lap, firstPage == null ? 1 : firstPage));
    }

    private ParameterException wrong(String why) {
        return new ParameterException(spec.commandLine(), why);
    }
}
