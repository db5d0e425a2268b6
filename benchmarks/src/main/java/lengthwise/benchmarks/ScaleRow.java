package lengthwise.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * The figures of an order of some size, a line of CSV.
 *
 * @param order its name
 * @param seed of the search
 * @param shapes distinct outlines as drawn
 * @param firstLegalSeconds from the start of the search to its first legal layout
 * @param microsecondsAMove processor time of the whole process after that layout, over the moves of single pieces: no-fit
 *     polygons, linear programs, compiler and garbage collector included
 * @param moves of single pieces, of all workers
 * @param heapAfterCollection most megabytes that were left after a collection during the run; NaN if there was none
 * @param heapUsed most megabytes seen in use
 * @param length in units of the instance
 * @param density in per cent
 */
record ScaleRow(
        String order,
        long seed,
        int pieces,
        int shapes,
        double firstLegalSeconds,
        double microsecondsAMove,
        long moves,
        double heapAfterCollection,
        double heapUsed,
        double length,
        double density,
        boolean legal) {
    static final String HEADER =
            "order,seed,pieces,shapes,first_legal_s,cpu_us_per_move,moves,heap_after_gc_mb,heap_used_mb,length,density,legal";

    String csv() {
        return String.format(
                Locale.ROOT,
                "%s,%d,%d,%d,%.3f,%.1f,%d,%.0f,%.0f,%.4f,%.3f,%b",
                order,
                seed,
                pieces,
                shapes,
                firstLegalSeconds,
                microsecondsAMove,
                moves,
                heapAfterCollection,
                heapUsed,
                length,
                density,
                legal);
    }

    /** Reads the rows of a file; its header and lines that begin with # are passed over. */
    static List<ScaleRow> read(Path file) throws IOException {
        return RunFile.read(file, HEADER, ScaleRow::of);
    }

    private static ScaleRow of(String[] cells) {
        return new ScaleRow(
                cells[0],
                Long.parseLong(cells[1]),
                Integer.parseInt(cells[2]),
                Integer.parseInt(cells[3]),
                Double.parseDouble(cells[4]),
                Double.parseDouble(cells[5]),
                Long.parseLong(cells[6]),
                Double.parseDouble(cells[7]),
                Double.parseDouble(cells[8]),
                Double.parseDouble(cells[9]),
                Double.parseDouble(cells[10]),
                Boolean.parseBoolean(cells[11]));
    }

    /** Returns the table for a page in Markdown. */
    static String table(List<ScaleRow> rows) {
        StringBuilder table = new StringBuilder("""
                | pieces | shapes | first legal s | µs a move | moves | MB after collection | MB in use | density % |
                |---|---|---|---|---|---|---|---|
                """);
        for (ScaleRow row : rows) {
            table.append(String.format(
                    Locale.ROOT,
                    "| %d | %d | %.2f | %.0f | %d | %.0f | %.0f | %.2f%s |%n",
                    row.pieces,
                    row.shapes,
                    row.firstLegalSeconds,
                    row.microsecondsAMove,
                    row.moves,
                    row.heapAfterCollection,
                    row.heapUsed,
                    row.density,
                    row.legal ? "" : " NOT LEGAL"));
        }
        return table.toString();
    }
}
