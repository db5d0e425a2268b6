package lengthwise.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

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
            append(settings + "\n" + header);
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

    void append(String lines) throws IOException {
        Files.writeString(path, lines + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    /**
     * Reads the rows of a file, without its header and lines that begin with #.
     *
     * @param parser makes a row of its cells
     * @throws IOException if a line is none of these
     */
    static <T> List<T> read(Path path, String header, Function<String[], T> parser) throws IOException {
        List<T> rows = new ArrayList<>();
        for (String line : Files.readAllLines(path)) {
            if (!line.isBlank() && !line.startsWith("#") && !line.equals(header)) {
                try {
                    rows.add(parser.apply(line.split(",", -1)));
                } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
                    throw new IOException("%s: this is no row of %s: %s".formatted(path, header, line), e);
                }
            }
        }
        return rows;
    }
}
