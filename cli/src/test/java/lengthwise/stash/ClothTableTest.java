package lengthwise.stash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.job.LengthUnit;
import lengthwise.model.Length;
import lengthwise.report.Csv;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ClothTableTest {
    private static final String HEAD = "name,fabric,width,length,outline,shrinkage,price,flaws\n";
    private static final List<String> DIRT = List.of(
            "\"",
            ",",
            "\n",
            "\r",
            ";",
            "'",
            "=1+1",
            "-",
            "0",
            "1e9 m",
            "99999999999999999999 m",
            "½",
            "\0",
            "\ud83d",
            "\u202e",
            "\uFEFF",
            "%",
            " per ",
            "pre-wash",
            "\"\"");

    /** An inch is 25.4 mm and a yard 914.4 mm exactly (International Yard and Pound Agreement, 1959). */
    @Test
    void inchesAndYardsAreExact() throws Exception {
        StashCloth cloth = ClothTable.read(
                        "t.csv",
                        HEAD + "a,canvas,58 in,2 yd,,\"3 %, 2.5 %, pre-wash\",6 per yd,\"4 in, 1 in, 0 in, 1 in\"\n")
                .get(0);
        assertThat(cloth.width()).isEqualTo(new Length(1_473_200));
        assertThat(cloth.there().length()).isEqualTo(new Length(1_828_800));
        assertThat(cloth.flaws())
                .containsExactly(new Flaw(new Length(101_600), new Length(25_400), Length.ZERO, new Length(25_400)));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "a,canvas,58,2 m,,,,|row 2, column 3 (width): found the bare number 58",
                "a,canvas,58 in,,,,,|row 2, column 4 (length): nothing is said; write for example 3.2 m",
                "a,canvas,58 in,2 m,\"0 cm, 0 cm; 9 cm, 0 cm\",,,|row 2, column 5 (outline): found",
                "a,canvas,58 in,,\"0 cm, 0 cm; 9 cm, 9 cm; 9 cm, 0 cm; 0 cm, 9 cm\",,,|row 2, column 5 (outline): found",
                "a,canvas,58 in,,\"0 cm, 0 cm; 9 cm, 0 cm; 5 cm, 2 m\",,,|row 2, column 5 (outline): found 200 cm",
                "a,canvas,58 in,2 m,,3 %,,|row 2, column 6 (shrinkage): found \"3 %\"; write lengthwise, crosswise",
                "a,canvas,58 in,2 m,,\"3 %, 50 %, pre-wash\",,|row 2, column 6 (shrinkage): found \"50 %\"",
                "a,canvas,58 in,2 m,,,14.50,|row 2, column 7 (price): found \"14.50\"",
                "a,canvas,58 in,2 m,,,,\"1 cm, 1 cm, 1 m, 1 m\"|row 2, column 8 (flaws): found",
                "a,canvas,58 in,501 m,,,,|row 2, column 4 (length): found 50100 cm",
                "=a,canvas,58 in,2 m,,,,|row 2, column 1 (name): found \"=a\"",
                "a,canvas,58 in,2 m,,,|row 2 has 7 cells and the heading has 8",
                "a,canvas,\"58 in,2 m,,,,|row 2, column 3: a quote begins the cell and none ends it",
                "\"a\"b,canvas,58 in,2 m,,,,|row 2, column 1: a quote begins the cell",
            })
    void whatIsWrongIsSaidWithItsPlace(String row, String words) {
        assertThatThrownBy(() -> ClothTable.read("t.csv", HEAD + row + "\n"))
                .isInstanceOf(StashException.class)
                .hasMessageStartingWith("t.csv: " + words);
    }

    @Test
    void theHeadingIsRead() {
        refused("name,colour,size\n", "row 1, column 3: found the heading \"size\"; the headings are name,fabric,");
        refused("name,name\n", "row 1, column 2: the heading name stands here a second time");
        refused("name,width\na,1 m\n", "row 2: the table has no column fabric");
        refused(HEAD + "a,c,1 m,1 m,,,,\nA,c,1 m,1 m,,,,\n", "row 3, column 1 (name): \"A\" stands in row 2 already");
        refused("", "the table is empty");
    }

    private static void refused(String table, String words) {
        assertThatThrownBy(() -> ClothTable.read("t.csv", table)).hasMessageStartingWith("t.csv: " + words);
    }

    @Test
    void otherLettersThanUtf8AreRefused(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("t.csv");
        Files.write(file, new byte[] {'n', (byte) 0xe9, '\n'});
        assertThatThrownBy(() -> ClothTable.read(file)).hasMessageContaining("no text in UTF-8");
        assertThatThrownBy(() -> ClothTable.read(folder.resolve("none.csv"))).hasMessageContaining("cannot be read");
    }

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    /** Whatever happens to a table, it reads or gets one line; what it reads is written and read the same. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void damagedItReadsOrSaysWhyNot(long seed) throws Exception {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        StringBuilder table = new StringBuilder(
                Csv.of(ClothTable.rows(List.of(Bolts.any("a", random), Bolts.any("b", random)), LengthUnit.CM)));
        for (int times = random.nextInt(1, 4); times > 0; times--) {
            int from = random.nextInt(table.length());
            int to = Math.min(table.length(), from + random.nextInt(9));
            table.replace(from, to, random.nextBoolean() ? "" : DIRT.get(random.nextInt(DIRT.size())));
        }
        try {
            List<StashCloth> read = ClothTable.read("t.csv", table.toString());
            assertThat(ClothTable.read("t.csv", Csv.of(ClothTable.rows(read, LengthUnit.MM))))
                    .isEqualTo(read);
        } catch (StashException refused) {
            assertThat(refused.getMessage()).startsWith("t.csv: ").doesNotContain("\n");
        }
    }
}
