package lengthwise.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import lengthwise.job.WiderFabric;
import lengthwise.model.Direction;
import lengthwise.model.Length;
import lengthwise.report.Chart.Cell;
import lengthwise.report.Chart.Cloth;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

@Tag("written")
class ChartTest {
    /**
     * Cloth is sold in 10 cm or 1/8 yd steps, rounded up: common practice, no source. By hand, with 1 yd = 914.4 mm exactly
     * (1959): 1.21 m is 1.3233 yd, so 1 3/8; from the 1.3 m it would be 1 1/2. 1.50 m is 1.6404 yd, and 1 3/8 yd is 1257.3 mm.
     */
    @ParameterizedTest
    @CsvSource({
        "1_210_000, 1.3 m, 1 3/8 yd",
        "1_500_000, 1.5 m, 1 3/4 yd",
        "1_500_001, 1.6 m, 1 3/4 yd",
        "1_257_300, 1.3 m, 1 3/8 yd",
        "1_257_301, 1.3 m, 1 1/2 yd",
        "100_000, 0.1 m, 1/8 yd",
        "914_400, 1.0 m, 1 yd",
    })
    void whatAShopSellsIsRoundedUpFromTheExactLength(String micrometres, String metres, String yards) {
        Cell cell = cell(Long.parseLong(micrometres.replace("_", "")), 0);
        assertThat(ChartFiles.metres(cell)).isEqualTo(metres);
        assertThat(ChartFiles.yards(cell)).isEqualTo(yards);
    }

    static LongStream seeds() {
        return LongStream.range(0, 50);
    }

    /** Whatever the searches find: wider is never longer, freer is never longer, and nothing gets longer than it was. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void widerAndFreerAreNeverLonger(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        Cloth found =
                cloth(() -> random.nextInt(5) == 0 ? Cell.none("too wide") : cell(random.nextLong(1, 1_000_000), 900));
        Cloth settled = found.settled(WiderFabric.TAKES_THE_SAME);
        for (int width = 0; width < 4; width++) {
            for (int direction = 0; direction < 3; direction++) {
                Cell cell = settled.cell(0, width, direction);
                assertThat(cell.isLaid())
                        .isEqualTo(found.cell(0, width, direction).isLaid());
                if (cell.isLaid()) {
                    assertThat(cell.needed())
                            .isLessThanOrEqualTo(found.cell(0, width, direction).needed());
                    for (int w = 0; w <= width; w++) {
                        for (int d = direction; d < 3; d++) {
                            if (settled.cell(0, w, d).isLaid()) {
                                assertThat(cell.marker())
                                        .isLessThanOrEqualTo(
                                                settled.cell(0, w, d).marker());
                                assertThat(cell.needed())
                                        .isLessThanOrEqualTo(
                                                settled.cell(0, w, d).needed());
                            }
                        }
                    }
                }
            }
        }
    }

    /** By hand: what fills three quarters of 1 m × 0.5 m fills three eighths of 1 m × 1 m. */
    @Test
    void onWiderClothTheSameMarkerUsesLessOfIt() {
        Cell narrow = new Cell(
                new Length(1_000),
                Length.ZERO,
                new Length(1_000),
                0.75,
                new Length(500_000),
                new Length(1_000),
                new Length(540_000),
                true,
                Optional.empty(),
                List.of(),
                "");
        long[] next = {0};
        Cloth settled = cloth(() -> next[0]++ < 3 ? narrow : cell(5_000, 900)).settled(WiderFabric.TAKES_THE_SAME);
        assertThat(settled.cell(0, 3, 0).marker()).isEqualTo(narrow.marker());
        assertThat(settled.cell(0, 3, 0).efficiency()).isEqualTo(0.375);
        assertThat(settled.cell(0, 3, 0).laidWidth()).isEqualTo(Length.ofMillimetres(900));
    }

    @Test
    void whereFoldsMoveWithTheWidthOnlyFreerIsNeverLonger() {
        long[] next = {0};
        Cloth settled = cloth(() -> cell(++next[0] * 1000, 900)).settled(WiderFabric.ANOTHER_CLOTH);
        assertThat(settled.cell(0, 3, 0).marker()).isEqualTo(new Length(10_000));
    }

    /** Cloth can be cut down to less: what is said of it is then what holds of the narrower cloth. */
    @Test
    void whereFoldsMoveWiderClothIsCutDown() {
        long[] next = {0};
        Cloth settled = cloth(() -> cell(++next[0] * 1000, 900)).settled(WiderFabric.CAN_BE_CUT_DOWN);
        Cell widest = settled.cell(0, 3, 0);
        assertThat(widest.marker()).isEqualTo(new Length(1_000));
        assertThat(widest.cutDownTo()).contains(new Length(1));
        assertThat(widest.efficiency()).isEqualTo(0.75);
        assertThat(settled.cell(0, 0, 0).cutDownTo()).isEmpty();
        Chart chart = new Chart("tunic", "1", List.of(settled));
        assertThat(ChartFiles.text(chart)).contains("cut it down to");
        assertThat(ChartFiles.csv(chart)).contains("cut down to 0.001 mm before it is laid");
    }

    /** Half of a line lies on each side of a strip: what is black of it is at most an eighth. A large piece has the usual line. */
    @Test
    void thinStripsDoNotRunTogether() {
        List<String> strips = new ArrayList<>();
        for (int x = 0; x < 40 * 35; x += 35) {
            strips.add(String.format(Locale.ROOT, "M%d 0L%d 0L%d 460L%d 460Z", x, x + 32, x + 32, x));
        }
        strips.add("M2000 0L2600 0L2600 900L2000 900Z");
        assertThat(ChartDrawing.thickness(strips.get(0))).isCloseTo(2 * 32 * 460 / (2.0 * (32 + 460)), within(1e-9));
        Cloth cloth = cloth(() -> onNoOtherWidth(cell(6_000_000, 1500), strips));
        // 6 m are drawn 40 mm long: 1 to 150, and 0.12 mm of line are 18 mm of cloth
        List<Double> lines = Pattern.compile("<path stroke-width=\"([0-9.]+)\" d=\"M([0-9]+) ")
                .matcher(ChartDrawing.file(new Chart("tunic", "1", List.of(cloth))))
                .results()
                .limit(strips.size())
                .map(line -> Double.valueOf(line.group(1)))
                .toList();
        assertThat(lines).hasSameSizeAs(strips);
        assertThat(lines.subList(0, 40)).allSatisfy(line -> assertThat(line).isBetween(1.0, 32 / 8.0));
        assertThat(lines.get(40)).isEqualTo(18);
    }

    @Test
    void whatHangsBetweenTwoEdgesIsNotCarriedOn() {
        long[] next = {0};
        Cloth settled = cloth(() -> {
                    Cell found = cell(++next[0] * 1000, 900);
                    return onNoOtherWidth(found, found.outlines());
                })
                .settled(WiderFabric.TAKES_THE_SAME);
        assertThat(settled.cell(0, 3, 0).marker()).isEqualTo(new Length(10_000));
        assertThat(settled.isLongerSomewhere()).isTrue();
        assertThat(ChartFiles.text(new Chart("tunic", "1", List.of(settled)))).contains("A wider one came out longer");
    }

    @Test
    void aCellReadsBackFromItsTextAndFromNoPartOfIt() {
        Cell cell = cell(1_210_000, 900);
        assertThat(Cell.parse(cell.text())).contains(cell);
        Cell none = Cell.none("It is too wide.");
        assertThat(Cell.parse(none.text())).contains(none);
        for (int end = 0; end < cell.text().length() - 1; end++) {
            assertThat(Cell.parse(cell.text().substring(0, end))).isEmpty();
        }
        assertThat(Cell.parse(cell.text().replace("M0 0", "<script>"))).isEmpty();
    }

    private static Cloth cloth(Supplier<Cell> cells) {
        List<List<Cell>> row = new ArrayList<>();
        for (int width = 0; width < 4; width++) {
            row.add(List.of(cells.get(), cells.get(), cells.get()));
        }
        return new Cloth(
                "cloth",
                "shell",
                false,
                List.of(new Length(1), new Length(2), new Length(3), new Length(4)),
                List.of(Direction.EITHER_WAY, Direction.ONE_WAY_PER_GARMENT, Direction.ONE_WAY),
                List.of("M"),
                List.of(row));
    }

    /** Returns the cell with other outlines, of a marker that lies on no wider cloth. */
    private static Cell onNoOtherWidth(Cell found, List<String> outlines) {
        return new Cell(
                found.marker(),
                found.lowerBound(),
                found.needed(),
                found.efficiency(),
                found.cuttable(),
                found.laid(),
                found.laidWidth(),
                false,
                Optional.empty(),
                outlines,
                "");
    }

    private static Cell cell(long micrometres, double width) {
        Length length = new Length(micrometres);
        return new Cell(
                length,
                Length.ZERO,
                length,
                0.75,
                new Length(1_000_000),
                length,
                Length.ofMillimetres(Math.max(1, width)),
                true,
                Optional.empty(),
                List.of("M0 0L10 0L10 10Z", "M20 0L30 0L30 10Z"),
                "");
    }
}
