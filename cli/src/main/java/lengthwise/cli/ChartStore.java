package lengthwise.cli;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lengthwise.report.Chart.Cell;
import lengthwise.report.WholeFile;

/**
 * The finished cells of a chart, a file each, named by the key of its task: each is there as a whole or not at all, whenever
 * the program is ended.
 */
record ChartStore(Path folder) {
    private static final Pattern CELL = Pattern.compile("[0-9a-f]{64}\\.cell");
    private static final Pattern PART = Pattern.compile("\\.[0-9a-f]{64}\\.cell\\.[0-9]+\\.part");

    void keep(ChartTask task, Cell cell) throws IOException {
        WholeFile.write(file(task.key()), cell.text());
    }

    /** Returns the cell of a task; empty if it was not finished. */
    Optional<Cell> find(ChartTask task) throws IOException {
        Path file = file(task.key());
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try {
            return Cell.parse(Files.readString(file));
        } catch (MalformedInputException notText) {
            return Optional.empty();
        }
    }

    /** Returns how many cells there are that none of some tasks asks for: those of a job that has changed. */
    long others(Set<String> keys) throws IOException {
        return files(CELL).stream().filter(file -> !isAsked(file, keys)).count();
    }

    /** Deletes those, and what was begun to be written when the program was ended. */
    void tidy(Set<String> keys) throws IOException {
        for (Path file : files(CELL)) {
            if (!isAsked(file, keys)) {
                Files.deleteIfExists(file);
            }
        }
        for (Path file : files(PART)) {
            Files.deleteIfExists(file);
        }
    }

    private static boolean isAsked(Path file, Set<String> keys) {
        return keys.contains(String.valueOf(file.getFileName()).replace(".cell", ""));
    }

    private List<Path> files(Pattern names) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(file ->
                            names.matcher(String.valueOf(file.getFileName())).matches())
                    .toList();
        }
    }

    private Path file(String key) {
        return folder.resolve(key + ".cell");
    }
}
