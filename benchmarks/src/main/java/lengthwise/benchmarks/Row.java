package lengthwise.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * The figures of one run, a line of CSV.
 *
 * @param seconds how long the search took
 * @param length in units of the instance
 * @param density total piece area / (length × strip height), in per cent
 * @param legal what the judge said
 * @param firstLegalSeconds from the start of the search to its first legal layout; NaN if there was none
 * @param moves iterations of each worker
 */
record Row(
        String instance,
        long seed,
        double seconds,
        int workers,
        double length,
        double density,
        boolean legal,
        double firstLegalSeconds,
        long moves) {
    static final String HEADER = "instance,seed,seconds,workers,length,density,legal,first_legal_s,moves";

    String csv() {
        return String.format(
                Locale.ROOT,
                "%s,%d,%.1f,%d,%.4f,%.3f,%b,%.3f,%d",
                instance,
                seed,
                seconds,
                workers,
                length,
                density,
                legal,
                firstLegalSeconds,
                moves);
    }

    /** Reads the rows of a file; its header and lines that begin with # are passed over. */
    static List<Row> read(Path file) throws IOException {
        return RunFile.read(file, HEADER, Row::of);
    }

    private static Row of(String[] cells) {
        return new Row(
                cells[0],
                Long.parseLong(cells[1]),
                Double.parseDouble(cells[2]),
                Integer.parseInt(cells[3]),
                Double.parseDouble(cells[4]),
                Double.parseDouble(cells[5]),
                Boolean.parseBoolean(cells[6]),
                Double.parseDouble(cells[7]),
                Long.parseLong(cells[8]));
    }
}
