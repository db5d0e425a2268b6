package lengthwise.testing;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** The files of the tests, to be damaged. */
public final class WholeFiles {
    private WholeFiles() {}

    /** Returns the resources of some folders that end so and are no larger than this, by name. */
    public static List<byte[]> endingWith(String ending, int mostBytes, String... folders)
            throws IOException, URISyntaxException {
        List<byte[]> files = new ArrayList<>();
        for (String folder : folders) {
            Path path = Path.of(Objects.requireNonNull(WholeFiles.class.getResource(folder), folder)
                    .toURI());
            try (Stream<Path> all = Files.list(path)) {
                for (Path file :
                        all.filter(p -> p.toString().endsWith(ending)).sorted().toList()) {
                    if (Files.size(file) <= mostBytes) {
                        files.add(Files.readAllBytes(file));
                    }
                }
            }
        }
        return files;
    }
}
