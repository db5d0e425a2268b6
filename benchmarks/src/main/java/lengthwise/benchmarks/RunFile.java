package lengthwise.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/**
 * A file that grows by a row of CSV as each run ends, so that runs broken off go on where they were.
 *
 * @param settings what the runs have to agree on to stand in one file, its first line
 */
record RunFile(Path path, String settings, String header) {
    /**
     * Begins the file if there is none.
     *
     * @throws IllegalArgumentException if there is one with other runs
     */
    void begin() throws IOException {
        if (!Files.exists(path)) {
            append(settings);
            append(header);
        }
        List<String> lines = Files.readAllLines(path);
        String before = lines.isEmpty() ? "" : lines.get(0);
        if (!before.equals(settings)) {
            throw new IllegalArgumentException("%s holds runs of other settings (%s, now %s). Save to another file."
                    .formatted(path, before, settings));
        }
        if (!lines.contains(header)) {
            throw new IllegalArgumentException(
                    "%s holds other columns than %s. Save to another file.".formatted(path, header));
        }
    }

    void append(String row) throws IOException {
        Files.writeString(path, row + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    /** Returns the rows of a file, without its header and lines that begin with #. */
    static List<String> rows(Path path, String header) throws IOException {
        return Files.readAllLines(path).stream()
                .filter(line -> !line.isBlank() && !line.startsWith("#") && !line.equals(header))
                .toList();
    }
}
