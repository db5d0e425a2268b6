package lengthwise.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Finds an instance by its name: {@code jigsaw:PIECES:SEED}, {@code graded:PIECES:SEED}, or a file of a folder. */
final class Instances {
    private Instances() {}

    static Instance named(String name, Optional<Path> folder) throws IOException {
        if (name.startsWith("jigsaw:") || name.startsWith("graded:")) {
            String[] parts = name.split(":", -1);
            if (parts.length != 3) {
                throw new IllegalArgumentException(
                        "A generated order is named %s:PIECES:SEED, not %s.".formatted(parts[0], name));
            }
            int pieces = Integer.parseInt(parts[1]);
            long seed = Long.parseLong(parts[2]);
            return parts[0].equals("jigsaw") ? Jigsaw.of(pieces, seed) : Graded.of(pieces, seed);
        }
        return InstanceFile.read(
                folder.orElseThrow(() ->
                        new IllegalArgumentException("Say with --instances in which folder " + name + ".json lies.")),
                name);
    }
}
