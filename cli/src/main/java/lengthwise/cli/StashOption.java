package lengthwise.cli;

import java.nio.file.Path;
import lengthwise.stash.Stash;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the stash lies. */
final class StashOption {
    @Option(
            names = "--stash",
            paramLabel = "FILE",
            description = "where the stash lies (default: .lengthwise/stash.db in your home folder)")
    private @Nullable Path file;

    StashOption() {}

    Path file() {
        return file == null ? Stash.usual() : file;
    }
}
