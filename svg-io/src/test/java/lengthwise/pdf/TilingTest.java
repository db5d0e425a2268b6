package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import lengthwise.model.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked examples of the tiling arithmetic (geometry: a cell is the paper less its margins, a step a cell less the overlap). */
class TilingTest {
    private static Length inches(double inches) {
        return Length.ofMillimetres(inches * 25.4);
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }

    @Test
    void sixtyByHundredInchesOnLetterTakeEightyPages() {
        Tiling tiling = Tiling.of(inches(60), inches(100), inches(8), inches(10.5), inches(0.5));
        assertThat(tiling.columns()).isEqualTo(8);
        assertThat(tiling.rows()).isEqualTo(10);
        assertThat(tiling.pages()).isEqualTo(80);
    }

    @ParameterizedTest(name = "overlap {0} mm: {1} × {2}")
    @CsvSource({"10, 9, 12", "0, 8, 11"})
    void threeMetresOfCloth150WideOnA4(double overlap, int columns, int rows) {
        Tiling tiling = Tiling.of(mm(1500), mm(3000), mm(190), mm(277), mm(overlap));
        assertThat(tiling.columns()).isEqualTo(columns);
        assertThat(tiling.rows()).isEqualTo(rows);
    }

    @ParameterizedTest(name = "overlap {0} mm")
    @CsvSource({"0", "5", "10", "40"})
    void whatFillsTheCellTakesOnePage(double overlap) {
        assertThat(Tiling.of(mm(190), mm(277), mm(190), mm(277), mm(overlap)).pages())
                .isEqualTo(1);
        assertThat(Tiling.of(mm(190.001), mm(277), mm(190), mm(277), mm(overlap))
                        .pages())
                .isEqualTo(2);
    }

    @Test
    void everyPlaceIsOnAPageAndNeighboursShareTheOverlap() {
        for (int along = 100; along < 2000; along += 37) {
            Tiling tiling = Tiling.of(mm(along), mm(100), mm(190), mm(277), mm(10));
            int last = tiling.columns() - 1;
            assertThat(tiling.x(last) + 190).isGreaterThanOrEqualTo(along);
            assertThat(last == 0 ? 0 : tiling.x(last - 1) + 190).isLessThan(Math.max(along, 1));
            assertThat(tiling.x(1)).isEqualTo(180);
        }
    }

    @Test
    void rowsAreLettersAndColumnsNumbers() {
        assertThat(Tiling.name(0, 0)).isEqualTo("A1");
        assertThat(Tiling.name(11, 1)).isEqualTo("B12");
        assertThat(Tiling.rowName(25)).isEqualTo("Z");
        assertThat(Tiling.rowName(26)).isEqualTo("AA");
        assertThat(Tiling.rowName(27)).isEqualTo("AB");
        assertThat(Tiling.rowName(52)).isEqualTo("BA");
        assertThat(Tiling.rowName(701)).isEqualTo("ZZ");
        assertThat(Tiling.rowName(702)).isEqualTo("AAA");
    }

    @Test
    void aCellThatIsAllOverlapIsRefused() {
        assertThatThrownBy(() -> Tiling.of(mm(100), mm(100), mm(10), mm(50), mm(10)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("overlap");
    }
}
