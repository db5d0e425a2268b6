package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lengthwise.cli.Main;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an estimate says over widths, against the table that makers have used for it for decades. */
class WidthTableTest {
    /** The upper width of each column (in). */
    private static final List<Integer> WIDTHS = List.of(36, 39, 41, 45, 50, 54, 60, 66);

    /**
     * Eighths of a yard for the same garment, by width: two neighbouring rows of the fabric conversion chart that is credited
     * to the New Jersey (Rutgers) Cooperative Extension Service, as sewwithsarah.com has it. The rows are those for 2 1/2 and
     * 2 7/8 yd at 36 in.
     */
    private static final List<Integer> LESS = List.of(20, 18, 18, 17, 14, 14, 13, 12);

    private static final List<Integer> MORE = List.of(23, 20, 20, 18, 16, 15, 14, 13);

    /** The same chart adds this for sleeves cut in one, one-way cloth or a large difference in width: 1/4 yd. */
    private static final int WITHIN = 2;

    @TempDir
    private Path out;

    /**
     * Three smocks, one of each height, from twill in a single layer, bought by 1/8 yd: at 36 in they take between what the
     * two rows begin with. So do they at the other widths, and a wider cloth never takes more.
     */
    @Test
    void threeSmocksTakeWhatTheTableSays() throws IOException {
        Path job = Path.of("smock", "three-for-widths.yaml");
        String text = Files.readString(Path.of("smock", "job.yaml"))
                .replaceAll("make: [34]", "make: 1")
                .replace("form: fold-lengthwise", "form: single-layer")
                .replace("price: 11.90 per m\n    sold-by: 10 cm", "price: 11.90 per m\n    sold-by: 1/8 yd");
        List<Double> eighths;
        try {
            Files.writeString(job, text);
            int code = Main.run(
                    "estimate",
                    job.toString(),
                    "--widths",
                    String.join(
                            ", ", WIDTHS.stream().map(width -> width + " in").toList()),
                    "--iterations",
                    "40",
                    "--workers",
                    "1",
                    "--out",
                    out.toString());
            assertThat(code).isZero();
            eighths = Files.readAllLines(out.resolve("estimate.csv")).stream()
                    .filter(line -> line.startsWith("moss-twill,"))
                    .map(line -> Double.parseDouble(line.split(",", -1)[13]) / (914.4 / 8))
                    .toList();
        } finally {
            Files.deleteIfExists(job);
        }
        assertThat(eighths).hasSameSizeAs(WIDTHS);
        for (int i = 0; i < WIDTHS.size(); i++) {
            assertThat(eighths.get(i))
                    .as("eighths of a yard at %d in", WIDTHS.get(i))
                    .isBetween((double) LESS.get(i) - WITHIN, (double) MORE.get(i) + WITHIN);
            assertThat(eighths.get(i)).isLessThanOrEqualTo(eighths.get(Math.max(0, i - 1)));
        }
    }
}
