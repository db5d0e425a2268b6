package lengthwise.stash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import lengthwise.job.JobFabric;
import lengthwise.job.JobReader;
import lengthwise.job.LengthUnit;
import lengthwise.model.Length;
import lengthwise.report.Csv;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StashTest {
    @TempDir
    Path folder;

    @Test
    void readingMakesNoFile() {
        Path file = folder.resolve("sub/stash.db");
        assertThatThrownBy(() -> Stash.open(file))
                .isInstanceOf(StashException.class)
                .hasMessageContaining("there is no stash at");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void whatGoesInComesOut() throws Exception {
        RandomGenerator random = random(7);
        List<StashCloth> cloths = new ArrayList<>();
        for (int i = 100; i < 200; i++) {
            cloths.add(Bolts.any("cloth-" + i, random));
        }
        try (Stash stash = Stash.openOrMake(file())) {
            stash.add(cloths);
        }
        try (Stash stash = Stash.open(file())) {
            assertThat(cloths(stash)).isEqualTo(cloths);
        }
    }

    @Test
    void allComeInOrNone() throws Exception {
        try (Stash stash = Stash.openOrMake(file())) {
            stash.add(List.of(Bolts.bolt("reef", 1000)));
            assertThatThrownBy(() -> stash.add(List.of(Bolts.bolt("new", 1000), Bolts.bolt("REEF", 500))))
                    .hasMessageContaining("named REEF in the stash already");
            assertThat(cloths(stash)).containsExactly(Bolts.bolt("reef", 1000));
        }
    }

    @Test
    void aLengthIsCutOffAndGivenBack() throws Exception {
        try (Stash stash = Stash.openOrMake(file())) {
            stash.add(List.of(Bolts.bolt("reef", 1000)));
            assertThat(stash.take("reef", Length.ofMillimetres(300))).contains(Bolts.bolt("reef", 700));
            assertThat(cloths(stash)).containsExactly(Bolts.bolt("reef", 700));
            assertThatThrownBy(() -> stash.take("reef", Length.ofMillimetres(701)))
                    .hasMessageContaining("is 70 cm long");
            stash.giveBack("reef");
            assertThat(cloths(stash)).containsExactly(Bolts.bolt("reef", 1000));
            stash.take("reef", Length.ofMillimetres(980));
            assertThat(cloths(stash)).isEmpty();
            assertThatThrownBy(() -> stash.take("reef")).hasMessageContaining("not in the stash any more (cut off)");
        }
    }

    @Test
    void whatWasCutFurtherIsNotGivenBack() throws Exception {
        try (Stash stash = Stash.openOrMake(file())) {
            stash.add(List.of(Bolts.bolt("reef", 1000)));
            try (Draw draw = stash.draw()) {
                draw.reserve("reef");
                draw.spend(
                        List.of(new Draw.Spent("reef", List.of(Bolts.bolt("reef-left", 400)))), List.of(), "a marker");
            }
            stash.take("reef-left", Length.ofMillimetres(100));
            assertThatThrownBy(() -> stash.giveBack("reef"))
                    .hasMessageContaining("its part reef-left is in use, or was");
            stash.giveBack("reef-left");
            stash.giveBack("reef");
            assertThat(cloths(stash)).containsExactly(Bolts.bolt("reef", 1000));
        }
    }

    @Test
    void aClosedDrawHasTakenNothing() throws Exception {
        try (Stash stash = Stash.openOrMake(file())) {
            stash.add(List.of(Bolts.bolt("reef", 1000)));
            try (Draw draw = stash.draw();
                    Draw other = stash.draw()) {
                draw.reserve("reef");
                assertThat(stash.entries().get(0).state()).isEqualTo(Stash.State.IN_USE);
                assertThat(other.free("canvas")).isEmpty();
                assertThatThrownBy(() -> other.reserve("reef")).hasMessageContaining("another run that is still going");
                assertThatThrownBy(() -> draw.reserve("reef")).hasMessageContaining("no cloth is cut twice");
                assertThatThrownBy(() -> stash.take("reef")).hasMessageContaining("reserved by a run");
            }
            assertThat(stash.entries().get(0).state()).isEqualTo(Stash.State.FREE);
            assertThatThrownBy(() -> stash.giveBack("reef")).hasMessageContaining("nothing was taken of it");
        }
    }

    /** A run that fails while it writes may have written a marker: nobody else gets its cloth. */
    @Test
    void whatFailedWritingIsUnclear() throws Exception {
        try (Stash stash = Stash.openOrMake(file())) {
            stash.add(List.of(Bolts.bolt("reef", 1000)));
            try (Draw draw = stash.draw()) {
                draw.reserve("reef");
                draw.writesTo(folder);
            }
            assertThat(stash.entries().get(0).state()).isEqualTo(Stash.State.UNCLEAR);
            try (Draw draw = stash.draw()) {
                assertThat(draw.free("canvas")).isEmpty();
                assertThatThrownBy(() -> draw.reserve("reef"))
                        .hasMessageContaining(folder.toString())
                        .hasMessageContaining("give-back reef");
            }
            stash.giveBack("reef");
            assertThat(stash.entries().get(0).state()).isEqualTo(Stash.State.FREE);
        }
    }

    @Test
    void otherFilesAreRefusedAndNotTouched() throws Exception {
        Path other = folder.resolve("other.db");
        sql(other, "CREATE TABLE recipe (name TEXT)", "PRAGMA user_version = 1");
        refused(other, "is an SQLite database and no stash");

        Path wal = folder.resolve("wal.db");
        sql(wal, "PRAGMA journal_mode = WAL", "CREATE TABLE recipe (name TEXT)");
        refused(wal, "is an SQLite database and no stash");

        Path text = folder.resolve("text.db");
        Files.writeString(text, "name,fabric\r\n".repeat(500));
        refused(text, "is damaged, or no stash at all");

        Path newer = folder.resolve("newer.db");
        Stash.openOrMake(newer).close();
        sql(newer, "PRAGMA user_version = 2");
        refused(newer, "was written by a newer Lengthwise (its store has version 2, this one knows 1)");

        Path changed = folder.resolve("changed.db");
        Stash.openOrMake(changed).close();
        sql(changed, "CREATE TRIGGER t AFTER INSERT ON cloth BEGIN DELETE FROM cloth; END");
        refused(changed, "its tables are not those of a stash");
    }

    /** Whatever is overwritten in the file, it opens with the same cloths, or is refused in one line and left alone. */
    @Test
    void damageIsRefusedAndNotTouched() throws Exception {
        Path whole = folder.resolve("whole.db");
        List<StashCloth> cloths = new ArrayList<>();
        RandomGenerator random = random(3);
        for (int i = 100; i < 160; i++) {
            cloths.add(Bolts.any("cloth-" + i, random));
        }
        try (Stash stash = Stash.openOrMake(whole)) {
            stash.add(cloths);
        }
        byte[] bytes = Files.readAllBytes(whole);
        int refused = 0;
        for (int i = 0; i < 60; i++) {
            byte[] damaged = bytes.clone();
            int from = i < 10 ? i * 10 : random.nextInt(damaged.length - 600);
            for (int at = from; at < from + 512; at++) {
                damaged[at] = (byte) random.nextInt(256);
            }
            if (i % 10 == 9) {
                damaged = Arrays.copyOf(damaged, random.nextInt(100, damaged.length));
            }
            Path file = folder.resolve("damaged-" + i + ".db");
            Files.write(file, damaged);
            try (Stash stash = Stash.open(file)) {
                stash.entries();
            } catch (StashException said) {
                refused++;
                assertThat(said.getMessage()).contains(file.toString()).doesNotContain("\n");
            }
            assertThat(Files.readAllBytes(file)).isEqualTo(damaged);
        }
        assertThat(refused).isGreaterThan(30);
    }

    private void refused(Path file, String words) throws Exception {
        byte[] before = Files.readAllBytes(file);
        List<Path> beside = files();
        assertThatThrownBy(() -> Stash.open(file).close())
                .isInstanceOf(StashException.class)
                .hasMessageContaining(file.toString())
                .hasMessageContaining(words);
        assertThatThrownBy(() -> Stash.openOrMake(file).close()).hasMessageContaining(words);
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
        assertThat(files()).isEqualTo(beside);
    }

    private List<Path> files() throws Exception {
        try (var files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }

    private static void sql(Path file, String... statements) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String each : statements) {
                statement.execute(each);
            }
        }
    }

    static List<StashCloth> cloths(Stash stash) throws StashException {
        return stash.entries().stream().map(Stash.Entry::cloth).toList();
    }

    private Path file() {
        // what SQLite and its driver take for something else in a path
        return folder.resolve("a stash #1 50% né.db");
    }

    private static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    /** 10 % of the length and 20 % of the width go in the wash; then 540 mm are cut off. Worked out by hand. */
    @Test
    void flawsAndPrintMoveWithTheCloth() throws Exception {
        StashCloth bolt = ClothTable.read("t.csv", """
                name,fabric,width,length,shrinkage,print,flaws,unusable-edge
                a,canvas,1 m,2 m,"10 %, 20 %, pre-wash","20 cm, 10 cm","1.5 m, 10 cm, 50 cm, 10 cm; 55 cm, 10 cm, 0 cm, 10 cm; 10 cm, 9 cm, 0 cm, 1 m",2 cm
                """).get(0);
        StashCloth rest = bolt.asCut().withoutStart(Length.ofMillimetres(540)).orElseThrow();
        assertThat(ClothTable.rows(List.of(rest), LengthUnit.MM).get(1))
                .containsExactly(
                        "a",
                        "canvas",
                        "",
                        "800 mm",
                        "1260 mm",
                        "",
                        "16 mm",
                        "",
                        "0 %, 0 %, in-pattern",
                        "",
                        "-360 mm, 80 mm",
                        "810 mm, 90 mm, 400 mm, 80 mm; 0 mm, 45 mm, 0 mm, 80 mm");
    }

    /** The print lies 5 mm before the cut end; it comes again after 32 mm: at 27 mm. */
    @Test
    void theStashSaysWhereThePrintLies() throws Exception {
        JobFabric said =
                JobReader.read(Path.of("job.yaml"), """
                version: 1
                fabrics: {canvas: {width: 1 m, from: stash, repeat: {lengthwise: 32 mm, crosswise: 16 mm}, direction: one-way}}
                pieces: {tie: {strip: {cut-width: 3 cm, length: 20 cm}, cut: 1}}
                order: [{make: 1}]
                """).job().fabrics().get(0);
        StashCloth bolt = ClothTable.read(
                        "t.csv", "name,fabric,width,length,print\na,canvas,90 cm,2 m,\"-5 mm, 3 mm\"\n")
                .get(0);
        JobFabric drawn = bolt.as(said, true);
        assertThat(drawn.repeat().orElseThrow().fromStart()).isEqualTo(Length.ofMillimetres(27));
        assertThat(drawn.repeat().orElseThrow().fromSelvedge()).isEqualTo(Length.ofMillimetres(3));
        assertThat(drawn.width()).isEqualTo(Length.ofMillimetres(900));
        assertThat(drawn.buying().from()).isEmpty();
        assertThatThrownBy(() -> Bolts.bolt("b", 1000).as(said, true)).hasMessageContaining("where it lies on b");
        assertThat(Bolts.bolt("b", 1000).as(said, false).there()).isPresent();
    }

    @Test
    void aTableReadsBackAsTheSameStash() throws Exception {
        RandomGenerator random = random(11);
        List<StashCloth> cloths = new ArrayList<>();
        for (int i = 100; i < 200; i++) {
            cloths.add(Bolts.any("cloth-" + i, random));
        }
        for (LengthUnit unit : LengthUnit.values()) {
            String table = Csv.of(ClothTable.rows(cloths, unit));
            assertThat(ClothTable.read("t.csv", table)).isEqualTo(cloths);
            Path csv = folder.resolve("t.csv");
            Files.writeString(csv, "\uFEFF" + table.replace("\r\n", "\n"), StandardCharsets.UTF_8);
            assertThat(ClothTable.read(csv)).isEqualTo(cloths);
        }
    }
}
