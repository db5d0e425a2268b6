package lengthwise.benchmarks;

import java.util.List;
import java.util.Locale;

/**
 * The figures of an order of some size, a line of CSV.
 *
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
            "pieces,shapes,first_legal_s,cpu_us_per_move,moves,heap_after_gc_mb,heap_used_mb,length,density,legal";

    String csv() {
        return String.format(
                Locale.ROOT,
                "%d,%d,%.3f,%.1f,%d,%.0f,%.0f,%.4f,%.3f,%b",
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
