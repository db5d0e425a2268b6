package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A bolt and two remnants for one purpose. Two flaps of 200 × 150 fill one remnant, a back of 400 × 300 the other, and the
 * front of 500 × 400 is as wide as the bolt. All of it on the bolt is front, back and flaps one behind the other: 500, 400 and
 * 200 mm, since beside the back 100 mm are left. With 20 mm at each end, by 100 mm: 600 mm are bought in place of 1200.
 */
class SharedClothTest {
    private static final int SWEEPS = 20;

    private static final int FEW = 24;

    private static int tried;
    private static int sharedOut;

    private static final String CLOTH =
            "unusable-edge: {each-side: 0}, direction: either-way, spread: {form: single-layer, end-allowance: {each-end: 20}}";

    private static final String JOB = """
            version: 1
            units: mm
            fabrics:
              bolt: {for: shell, width: 400, CLOTH, price: 10 per m, sold-by: 100}
              left-1: {for: shell, width: 300, length: 240, CLOTH}
              left-2: {for: shell, width: 300, length: 440, CLOTH}
            pieces:
              front: {strip: {cut-width: 400, length: 500}, cut: 1}
              back: {strip: {cut-width: 300, length: 400}, cut: 1}
              flap: {strip: {cut-width: 150, length: 200}, cut: 2}
            gap: 0
            order: [{make: 1}]
            """.replace("CLOTH", CLOTH);

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    static LongStream few() {
        return LongStream.range(0, FEW);
    }

    /** {@code -Dseeds.from=N} takes the 300 from there. */
    static LongStream many() {
        long from = Long.getLong("seeds.from", 1_000);
        return LongStream.range(from, from + 300);
    }

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    @Test
    void theRestIsBought() throws IOException {
        lay(JOB);
        assertThat(here.said())
                .contains(
                        "for which 1.200 m (1 3/8 yd) are to be bought: the cloth on hand saves 60 cm (23 5/8 in), 6.00.");
        String report = here.read("out/report.json");
        // 200 of 240 mm of the small remnant's length are pieces from edge to edge
        assertThat(report.substring(report.indexOf("\"shared\""), report.indexOf("\"warnings\""))
                        .replaceAll("\\s+", ""))
                .isEqualTo("""
                        "shared":[{"role":"shell","garments_kept_together":false,"cloths":[
                        {"name":"left-1","on_hand_mm":240.000,"contours":2,"laid_length_mm":240.000,"share_in_pieces":0.833333},
                        {"name":"left-2","on_hand_mm":440.000,"contours":1,"laid_length_mm":440.000,"share_in_pieces":0.909091},
                        {"name":"bolt","contours":1,"laid_length_mm":540.000,"share_in_pieces":0.833333}],
                        "buy_mm":600.000,"buy_without_cloth_on_hand_mm":1200.000,"saved_mm":600.000,"saved_cost":6.00}],
                        """.replace("\n", ""));
        // what is there costs nothing: all together costs what the bolt does
        assertThat(report.split("\"cost\" : 6.00", -1)).hasSize(3);
        assertThat(report.split("\"cost\" : 0.00", -1)).hasSize(3);
        assertThat(here.read("out/report.html"))
                .contains("The pieces of cloth for shell", "the cloth on hand saves 60 cm");
    }

    @Test
    void theCheckTakesAllOfThem() throws IOException {
        lay(JOB);
        assertThat(check("out/bolt.svg", "out/left-1.svg", "out/left-2.svg"))
                .as(here.said())
                .isZero();
        assertThat(check("out/left-1.svg", "out/bolt.svg")).isEqualTo(5);
        assertThat(here.said())
                .contains(
                        "All for shell together: do not cut; 1 things are wrong. It is cut from left-1, left-2, bolt: name every marker there is for them.",
                        "Garment 1 lacks 1 × back.")
                .contains("left-1.svg: nothing wrong; 2 contours.");
    }

    /** The marker of a run with the bolt alone holds everything; with it all that the remnants give is there twice. */
    @Test
    void theCheckFindsWhatIsThereTwice() throws IOException {
        lay(JOB);
        Path remnants = Files.move(folder.resolve("out"), folder.resolve("first"));
        lay(JOB.replaceAll("(?m)^ *left-[12].*\n", ""));
        here.write("job.yaml", JOB);
        assertThat(check("out/bolt.svg", "first/left-1.svg", "first/left-2.svg"))
                .as(remnants.toString())
                .isEqualTo(5);
        assertThat(here.said())
                .contains(
                        "There is one more of back of garment 1 than ordered.",
                        "There are 2 more of flap of garment 1 than ordered.")
                .doesNotContain("front");
        assertThat(check("out/bolt.svg")).as(here.said()).isZero();
        assertThat(check("out/bolt.svg", "first/bolt.svg")).isEqualTo(3);
        assertThat(here.said()).contains("are both markers for bolt, which can be cut once");
    }

    /** Before one of them is printed, those beside it are looked at. */
    @Test
    void oneIsPrintedWhereTheOthersLieBesideIt() throws IOException {
        lay(JOB);
        String[] print = {"print", here.path("out/left-1.svg"), "--paper", "A4", "--job", here.path("job.yaml")};
        assertThat(here.run(print)).as(here.said()).isZero();
        Files.delete(folder.resolve("out/left-2.svg"));
        assertThat(here.run(print)).isEqualTo(5);
        assertThat(here.said()).contains("do not cut, and so not printed", "Garment 1 lacks 1 × back.");
    }

    /** No remnant has room for a whole garment. */
    @Test
    void garmentsAreKeptTogether() throws IOException {
        lay(JOB.replace("length: 440,", "length: 440, keep-together: yes,"));
        assertThat(here.said())
                .contains(
                        "Nothing is cut from left-1: it stays as it is.",
                        "Nothing is cut from left-2: it stays as it is.",
                        "All that a garment needs for shell comes from one piece of cloth.",
                        "the cloth on hand saves nothing that the shop's step shows.");
        assertThat(folder.resolve("out/left-1.svg")).doesNotExist();
    }

    /** What an earlier run cut from a cloth must not be cut as well. */
    @Test
    void aMarkerOfAnEarlierRunIsWarnedOf() throws IOException {
        lay(JOB);
        lay(JOB.replace("length: 440,", "length: 440, keep-together: yes,"));
        assertThat(here.said())
                .contains(
                        "left-1.svg is from an earlier run, and this one cuts nothing from that cloth: do not cut by it.");
    }

    @Test
    void whereAllIsOnHandNothingIsBought() throws IOException {
        lay(JOB.replace("shell, width: 400,", "shell, width: 400, length: 540,"));
        assertThat(here.said()).doesNotContain("to be bought");
        assertThat(check("out/bolt.svg", "out/left-1.svg", "out/left-2.svg"))
                .as(here.said())
                .isZero();
    }

    /** Where nothing can be bought it says what stays out and how much is short: a front of 500 and its ends, of 530 mm. */
    @Test
    void whatStaysOutIsSaid() throws IOException {
        here.write("job.yaml", JOB.replace("shell, width: 400,", "shell, width: 400, length: 530,"));
        assertThat(here.marker(SWEEPS, "out")).isEqualTo(4);
        assertThat(here.said())
                .contains(
                        "lengthwise: it does not fit on bolt: 10 mm short.",
                        "That is what is left over for it beside left-1 and left-2. A longer search may share it out better.",
                        "What stays out: front.");
        assertThat(folder.resolve("out")).doesNotExist();
    }

    /**
     * Beside one flap of 150 mm in 300 there is room for two patches of 100, and beside a back of 200 mm for four: of three that
     * are allowed each is laid once.
     */
    @Test
    void aFillerIsLaidOnce() throws IOException {
        lay(JOB.replace("cut: 2", "cut: 1")
                .replace("cut-width: 300", "cut-width: 200")
                .replace(
                        "gap: 0",
                        "  patch: {strip: {cut-width: 100, length: 100}, filler: {at-most: 3}, cut: 1}\ngap: 0"));
        assertThat(check("out/bolt.svg", "out/left-1.svg", "out/left-2.svg"))
                .as(here.said())
                .isZero();
        assertThat(patches("left-1") + patches("left-2")).isEqualTo(3);
        assertThat(patches("left-1")).isEqualTo(2);
    }

    private int patches(String cloth) throws IOException {
        return here.read("out/" + cloth + ".svg").split("data-piece=\"patch\"", -1).length - 1;
    }

    @ParameterizedTest
    @ValueSource(strings = {"shop", "estimate", "chart", "plan"})
    void whatTakesOneFabricForEachPurposeSaysSo(String command) throws IOException {
        here.write("job.yaml", JOB.replaceAll(", length: [0-9]+, CLOTH", ""));
        assertThat(here.run(command, here.path("job.yaml"), "--iterations", "1"))
                .isEqualTo(3);
        assertThat(here.said())
                .contains("lengthwise: ")
                .containsAnyOf("one fabric for each purpose", "a piece that is there");
    }

    /** A remnant whose print nobody has told of would take what is matched without matching it. */
    @Test
    void whatIsMatchedIsCutFromClothWithAPrint() throws IOException {
        here.write("job.yaml", """
                version: 1
                units: mm
                drawings: [front.svg]
                fabrics:
                  bolt: {for: shell, width: 400, repeat: {lengthwise: 50, crosswise: 50}}
                  left: {for: shell, width: 300, length: 240}
                pieces:
                  front: {cut: 1, match-point: {at: notch 1}}
                order: [{make: 1}]
                """);
        here.write("front.svg", """
                <svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100">
                <g id="front"><path class="cut" d="M0 0 H200 V100 H0 Z"/></g></svg>
                """);
        assertThat(here.marker(1, "out")).isEqualTo(3);
        assertThat(here.said())
                .contains(
                        "job.yaml:6:3: key fabrics.left: front has a match-point, and may be cut from this as from the other cloth for shell; say its repeat too, or leave this cloth out");
    }

    @Test
    void whatIsNotSaidAlikeIsWarnedOf() throws IOException {
        lay(JOB.replaceFirst("direction: either-way", "direction: one-way"));
        assertThat(here.said())
                .contains(
                        "bolt, left-1, left-2 are all for shell, and not the same is said of them: direction. If it is the same cloth, say it of each.");
    }

    /** Any cloth rules, and two more pieces of the same cloth: what is laid is all there once, read back from the drawings. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("few")
    void randomJobsAreAllThereOnce(long seed) throws IOException {
        isAllThereOnce(seed);
    }

    @Tag("long")
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("many")
    void threeHundredRandomJobsAreAllThereOnce(long seed) throws IOException {
        isAllThereOnce(seed);
    }

    /** Jobs that are all refused, or laid on one cloth, would prove nothing. */
    @AfterAll
    static void manyOfThemAreSharedOut() {
        if (tried >= FEW) {
            assertThat(sharedOut).isGreaterThan(tried / 8);
        }
    }

    private void isAllThereOnce(long seed) throws IOException {
        RandomClothJob job = new RandomClothJob(seed);
        SplittableRandom random = new SplittableRandom(seed);
        String one = seed % 4 == 0 ? job.text() : job.onEndlessCloth();
        String cloth = job.onEndlessCloth()
                .lines()
                .filter(line -> line.startsWith("  cloth: {"))
                .findFirst()
                .orElseThrow();
        StringBuilder more = new StringBuilder();
        for (String name : List.of("left-1", "left-2")) {
            more.append(cloth.replace(
                            "  cloth: {",
                            "  %s: {for: cloth, length: %d mm, ".formatted(name, random.nextInt(100, 500))))
                    .append("\n");
        }
        String keep = seed % 3 == 0 ? "keep-together: yes, " : "";
        here.write("job.yaml", one.replace("pieces:\n", more + "pieces:\n").replace("  cloth: {", "  cloth: {" + keep));
        here.write("patches.svg", job.drawing());
        int ended = here.marker(3, "out");
        String about = here.said() + "\n" + here.read("job.yaml");
        assertThat(ended)
                .as(about)
                .isIn(ExitCode.DONE.number(), ExitCode.BAD_INPUT.number(), ExitCode.NO_MARKER.number());
        tried++;
        if (ended == ExitCode.DONE.number()) {
            String[] markers = Stream.of("out/cloth.svg", "out/left-1.svg", "out/left-2.svg")
                    .filter(marker -> Files.exists(folder.resolve(marker)))
                    .toArray(String[]::new);
            sharedOut += markers.length > 1 ? 1 : 0;
            assertThat(check(markers)).as("%s%n%s", here.said(), about).isZero();
        }
    }

    private void lay(String job) throws IOException {
        here.write("job.yaml", job);
        assertThat(here.marker(SWEEPS, "out")).as(here.said()).isZero();
    }

    private int check(String... markers) {
        String[] words = new String[markers.length + 3];
        words[0] = "check";
        for (int i = 0; i < markers.length; i++) {
            words[i + 1] = here.path(markers[i]);
        }
        words[markers.length + 1] = "--job";
        words[markers.length + 2] = here.path("job.yaml");
        return here.run(words);
    }
}
