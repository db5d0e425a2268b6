package lengthwise.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.model.Length;
import lengthwise.model.Size;
import lengthwise.workshop.SizeTable.Range;
import lengthwise.workshop.SizeTable.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SizeTableTest {
    /** EN 13402-3:2005, women's bust, as quoted in bustSizesStandard of the R package Anthropometry. */
    private static final int[] CLASS_LIMITS = {74, 78, 82, 86, 90, 94, 98, 102, 107, 113, 119, 125, 131};

    /** ASTM D5585-11e1, misses, public preview on astm.org: bust of the sizes 00 to 20, in eighths of an inch. */
    private static final Map<String, Integer> ASTM_BUST = Map.ofEntries(
            Map.entry("00", 249),
            Map.entry("0", 254),
            Map.entry("2", 264),
            Map.entry("4", 273),
            Map.entry("6", 282),
            Map.entry("8", 290),
            Map.entry("10", 298),
            Map.entry("12", 310),
            Map.entry("14", 323),
            Map.entry("16", 337),
            Map.entry("18", 352),
            Map.entry("20", 368));

    @Test
    void lettersAreWholeClassesOfTheStandard() {
        List<Integer> limits = new ArrayList<>();
        for (int limit : CLASS_LIMITS) {
            limits.add(limit);
        }
        List<Row> letters = SizeTable.EN_13402_3.rows();
        for (int i = 0; i < letters.size(); i++) {
            Range bust = letters.get(i).ranges().get(0);
            int from = (int) (bust.from().micrometres() / 10_000);
            int to = (int) (bust.to().micrometres() / 10_000);
            if (from >= 74 && to <= 131) {
                assertThat(limits).contains(from, to);
                assertThat(limits.indexOf(to) - limits.indexOf(from))
                        .as("classes of " + letters.get(i).size())
                        .isEqualTo(2);
            }
            if (i > 0) {
                assertThat(bust.from())
                        .isEqualTo(letters.get(i - 1).ranges().get(0).to());
            }
        }
    }

    /** Centres of the classes, from memory: 84, 88, 92, 104 and 116 cm. */
    @ParameterizedTest
    @CsvSource({"84,S", "88,S", "92,M", "104,L", "116,XL", "128,XXL"})
    void theCentreOfAClassHasOneSize(int bust, String size) {
        assertThat(standard(bust).size()).contains(new Size(size));
    }

    @ParameterizedTest
    @CsvSource({"82,XS,S", "90,S,M", "98,M,L", "107,L,XL", "119,XL,XXL"})
    void aBustBetweenTwoSizesOffersBoth(int bust, String smaller, String larger) {
        SizeChoice choice = standard(bust);
        assertThat(choice.size()).isEmpty();
        assertThat(choice.isOutside()).isFalse();
        assertThat(choice.offered()).containsExactly(new Size(smaller), new Size(larger));
        assertThat(choice.words()).contains("bust " + bust, smaller + " as well as " + larger);
    }

    @Test
    void beyondTheTableThereIsNoSize() {
        assertThat(standard(65).isOutside()).isTrue();
        assertThat(standard(65).words()).contains("less than XXS");
        assertThat(standard(144).isOutside()).isTrue();
        assertThat(standard(144).size()).isEmpty();
    }

    @Test
    void everyBustOfAnotherStandardFindsItsRow() {
        SizeTable table = astm();
        ASTM_BUST.forEach((size, eighths) ->
                assertThat(choose(table, "bust", eighths).size()).as(size).contains(new Size(size)));
    }

    /** Half way between 36 1/4 in (size 8) and 37 1/4 in (size 10). */
    @Test
    void halfWayBetweenTwoRowsBothAreOffered() {
        SizeChoice choice = choose(astm(), "bust", 294);
        assertThat(choice.offered()).containsExactly(new Size("8"), new Size("10"));
        assertThat(choice.words()).isEqualTo("bust 93.3 cm (36 3/4 in) is between 8 and 10");
    }

    /** A tape read in centimetres still finds the size: 92 cm against 36 1/4 in, which are 92.075 cm. */
    @Test
    void aSingleValueMayBeReadHalfACentimetreOff() {
        assertThat(astm().choose(Map.of("bust", Length.ofMillimetres(920))).size())
                .contains(new Size("8"));
        assertThat(astm().choose(Map.of("bust", Length.ofMillimetres(926))).size())
                .isEmpty();
    }

    @Test
    void measuresThatDisagreeOfferBothSizes() {
        SizeTable table = new SizeTable(List.of(
                new Row(new Size("S"), List.of(range("bust", 82, 90), range("waist", 66, 74))),
                new Row(new Size("M"), List.of(range("bust", 90, 98), range("waist", 74, 82)))));
        SizeChoice choice = table.choose(Map.of("bust", Length.ofMillimetres(860), "waist", Length.ofMillimetres(780)));
        assertThat(choice.size()).isEmpty();
        assertThat(choice.offered()).containsExactly(new Size("S"), new Size("M"));
        assertThat(table.choose(Map.of("bust", Length.ofMillimetres(860), "hat", Length.ofMillimetres(580)))
                        .size())
                .isEqualTo(Optional.of(new Size("S")));
        assertThat(table.choose(Map.of("hat", Length.ofMillimetres(580))).isOutside())
                .isTrue();
    }

    private static SizeChoice standard(int bust) {
        return SizeTable.EN_13402_3.choose(Map.of("bust", Length.ofMillimetres(10 * bust)));
    }

    private static SizeChoice choose(SizeTable table, String measure, int eighths) {
        return table.choose(Map.of(measure, new Length(eighths * 3_175L)));
    }

    private static SizeTable astm() {
        return new SizeTable(ASTM_BUST.entrySet().stream()
                .map(row -> new Row(
                        new Size(row.getKey()),
                        List.of(new Range(
                                "bust", new Length(row.getValue() * 3_175L), new Length(row.getValue() * 3_175L)))))
                .toList());
    }

    private static Range range(String measure, int from, int to) {
        return new Range(measure, Length.ofMillimetres(10 * from), Length.ofMillimetres(10 * to));
    }
}
