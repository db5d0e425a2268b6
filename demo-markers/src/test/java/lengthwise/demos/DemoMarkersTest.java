package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lengthwise.cli.Main;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Each demo makes its markers by the command a maker would type, and they hold what she ordered. The numbers of contours
 * are worked by hand; the floors under the efficiency lie a few points below what the first layout reached, so that only
 * a broken search falls through.
 */
class DemoMarkersTest {
    private static final Pattern PIECE = Pattern.compile(
            "<g [^>]*data-piece=\"([^\"]*)\" data-size=\"([^\"]*)\"[^>]*data-hand=\"([^\"]*)\"[^>]*>\\s*<path [^>]*\\bd=\"([^\"]*)\"");
    private static final Pattern VERTEX = Pattern.compile("(-?\\d+(?:\\.\\d+)?) (-?\\d+(?:\\.\\d+)?)");

    @TempDir
    private Path out;

    @Test
    void swimSet() throws IOException {
        make("wrap-swim-set/job.yaml", out);

        // garments XS 1, S 2, M 3, L 2, XL 2
        Sheet print = Sheet.read(out, "lagoon-print");
        assertThat(print.contours())
                .containsOnly(
                        Map.entry("cup L", 10),
                        Map.entry("cup R", 10),
                        Map.entry("front-band", 10),
                        Map.entry("back-wing L", 10),
                        Map.entry("back-wing R", 10),
                        Map.entry("brief-front", 10),
                        Map.entry("brief-back", 10),
                        Map.entry("gusset", 10),
                        Map.entry("neck-tie", 20),
                        Map.entry("rib-tie", 10));
        assertThat(print.sizes())
                .containsOnly(
                        Map.entry("XS", 11),
                        Map.entry("S", 22),
                        Map.entry("M", 33),
                        Map.entry("L", 22),
                        Map.entry("XL", 22));
        assertThat(print.efficiency()).isBetween(0.58, 1.0);
        Sheet lining = Sheet.read(out, "oat-lining");
        assertThat(lining.sizes())
                .containsOnly(
                        Map.entry("XS", 8),
                        Map.entry("S", 16),
                        Map.entry("M", 24),
                        Map.entry("L", 16),
                        Map.entry("XL", 16));
        assertThat(lining.efficiency()).isBetween(0.60, 1.0);
        assertThat(check("wrap-swim-set/job.yaml", "lagoon-print", "oat-lining"))
                .isZero();
    }

    /** The check says whether the herons of left and right meet, and those of the brief-fronts lie on the print. */
    @Test
    void swimSetOfAHalfDropPrintWithMatchedCups() throws IOException {
        make("wrap-swim-set/matched.yaml", out);

        Map<String, Integer> print = Sheet.read(out, "heron-print").contours();
        assertThat(print).contains(Map.entry("cup L", 3), Map.entry("cup R", 3), Map.entry("brief-front", 3));
        assertThat(print.values().stream().mapToInt(Integer::intValue).sum()).isEqualTo(33);
        assertThat(check("wrap-swim-set/matched.yaml", "heron-print", "oat-lining"))
                .isZero();
    }

    /**
     * Wren's bust of 86 cm is S and Teal's of 94 cm M (EN 13402-3); Lark's of 90 cm lies between and she has said M. By hand:
     * Wren's neck tie is 86 / 4 + 26 = 47.5 cm. The sew lines, summed up from their control points in 20 000 chords by a program of
     * its own, are 552.25 mm round a leg of S and 586.82 of M, 757.31 and 826.08 round the waist: leg elastic 0.9 · 552.25 + 12 and
     * twice 0.9 · 586.82 + 12, all twice, waist 0.85 · 757.31 + 12 and twice 0.85 · 826.08 + 12, together 3178.6 + 2084.1 mm, sold by half
     * a metre.
     */
    @Test
    void swimSetsMadeToMeasure() throws IOException {
        make("wrap-swim-set/made-to-measure.yaml", out);

        Sheet print = Sheet.read(out, "lagoon-print");
        assertThat(print.sizes()).containsOnly(Map.entry("S", 11), Map.entry("M", 22));
        assertThat(Files.readString(out.resolve("lagoon-print.svg")))
                .contains("data-customer=\"Wren\"", "data-customer=\"Teal\"", "data-customer=\"Lark\"");
        assertThat(Files.readString(out.resolve("report.html")))
                .contains("neck-tie 47.5 cm", "as ordered; bust 90 cm (35 3/8 in) is S as well as M")
                .contains("leg 3.179 m, waist 2.084 m", "5.500 m (6 1/8 yd)", "All together, without care-label");
        assertThat(check("wrap-swim-set/made-to-measure.yaml", "lagoon-print", "oat-lining"))
                .isZero();
    }

    /** Four sets of eleven contours each, wherever each is cut from; what the two remnants give is not bought. */
    @Test
    void swimSetsFromABoltAndTwoRemnants() throws IOException {
        make("wrap-swim-set/bolt-and-remnants.yaml", out);

        Map<String, Integer> all = new TreeMap<>();
        List<String> check = new ArrayList<>(List.of("check", "--job", "wrap-swim-set/bolt-and-remnants.yaml"));
        for (String cloth : List.of("lagoon-print", "lagoon-end", "lagoon-corner")) {
            Sheet.read(out, cloth).contours().forEach((piece, count) -> all.merge(piece, count, Integer::sum));
            check.add(out.resolve(cloth + ".svg").toString());
        }
        assertThat(all)
                .containsOnly(
                        Map.entry("cup L", 4),
                        Map.entry("cup R", 4),
                        Map.entry("front-band", 4),
                        Map.entry("back-wing L", 4),
                        Map.entry("back-wing R", 4),
                        Map.entry("brief-front", 4),
                        Map.entry("brief-back", 4),
                        Map.entry("gusset", 4),
                        Map.entry("neck-tie", 8),
                        Map.entry("rib-tie", 4));
        assertThat(Main.run(check.toArray(new String[0]))).isZero();
        assertThat(Files.readString(out.resolve("report.html"))).containsPattern("the cloth on hand saves [0-9]");
    }

    /** Every size of both colourways is cut as ordered, and every lay's marker passes the check. */
    @Test
    void swimSetInTwoColourwaysOverLays() throws IOException {
        assertThat(Main.run(
                        "plan",
                        "wrap-swim-set/lays.yaml",
                        "--iterations",
                        "60",
                        "--workers",
                        "2",
                        "--out",
                        out.toString()))
                .isZero();

        String ticket = Files.readString(out.resolve("plan.html"));
        assertThat(ticket)
                .contains("lagoon: S 2, M 3, L 2", "dusk: S 1, M 3, L 1", ">S 3, M 6, L 3<")
                .doesNotContain("too little");
        try (Stream<Path> files = Files.list(out)) {
            List<Path> markers =
                    files.filter(file -> file.toString().endsWith(".svg")).toList();
            assertThat(markers).hasSizeGreaterThan(2);
            for (Path marker : markers) {
                String job = marker.toString().replace(".svg", ".yaml");
                assertThat(Main.run("check", marker.toString(), "--job", job)).isZero();
            }
        }
    }

    /** On the fold a front is half a piece, and one cut gives both backs, both pockets, both ties. */
    @Test
    void smockTheSameEveryTimeAlsoOnTheFold(@TempDir Path again) throws IOException {
        make("smock/job.yaml", out);
        make("smock/job.yaml", again);

        Sheet twill = Sheet.read(out, "moss-twill");
        assertThat(twill.contours())
                .containsOnly(
                        Map.entry("front", 10), Map.entry("back", 10), Map.entry("pocket", 10), Map.entry("tie", 10));
        assertThat(twill.sizes()).containsOnly(Map.entry("98", 12), Map.entry("104", 16), Map.entry("110", 12));
        assertThat(twill.efficiency()).isBetween(0.55, 1.0);
        Sheet calico = Sheet.read(out, "calico");
        assertThat(calico.contours())
                .containsOnly(
                        Map.entry("front-facing", 10), Map.entry("back-facing L", 10), Map.entry("back-facing R", 10));
        assertThat(calico.efficiency()).isBetween(0.50, 1.0);
        assertThat(check("smock/job.yaml", "moss-twill", "calico")).isZero();
        assertSameFiles(out, again);
    }

    @Test
    void bucketHatsTheSameEveryTime(@TempDir Path again) throws IOException {
        make("bucket-hats/job.yaml", out);
        make("bucket-hats/job.yaml", again);

        Sheet sailcloth = Sheet.read(out, "sailcloth");
        assertThat(sailcloth.contours())
                .containsOnly(Map.entry("crown", 12), Map.entry("side", 24), Map.entry("brim", 48));
        assertThat(sailcloth.efficiency()).isBetween(0.53, 1.0);
        Sheet lawn = Sheet.read(out, "lawn");
        assertThat(lawn.contours())
                .containsOnly(Map.entry("crown", 12), Map.entry("side", 24), Map.entry("sweat-band", 12));
        assertThat(lawn.efficiency()).isBetween(0.60, 1.0);
        assertThat(check("bucket-hats/job.yaml", "sailcloth", "lawn")).isZero();
        assertSameFiles(out, again);
    }

    /** In two plies face to face one cut gives a pair, or two fronts; in plies face up two facings of one hand. */
    @Test
    void corduroySmockInPlies() throws IOException {
        make("smock/corduroy.yaml", out);

        assertThat(Sheet.read(out, "moss-corduroy").contours())
                .containsOnly(Map.entry("front", 4), Map.entry("back", 8), Map.entry("pocket", 8), Map.entry("tie", 8));
        assertThat(Sheet.read(out, "calico").contours())
                .containsOnly(
                        Map.entry("front-facing", 4), Map.entry("back-facing L", 4), Map.entry("back-facing R", 4));
        assertThat(check("smock/corduroy.yaml", "moss-corduroy", "calico")).isZero();
        assertThat(Files.readString(out.resolve("report.html"))).contains("pile", "folded lengthwise");
    }

    /** Hems lie on the border, so there is one row of fronts and backs, and pockets keep away from it. */
    @Test
    void borderSmock() throws IOException {
        make("smock/border.yaml", out);

        assertThat(Sheet.read(out, "duck-border").contours())
                .containsOnly(
                        Map.entry("front", 3),
                        Map.entry("back L", 3),
                        Map.entry("back R", 3),
                        Map.entry("pocket", 6),
                        Map.entry("tie", 6));
        assertThat(check("smock/border.yaml", "duck-border", "calico")).isZero();
    }

    /** Four sets on hand-dyed cloth: 11 pieces of shell and 8 of lining each, which is worn right side to the body. */
    @Test
    void swimSetOfOneShadeWithALiningWornInsideOut() throws IOException {
        make("wrap-swim-set/hand-dyed.yaml", out);

        Map<String, Integer> dyed = Sheet.read(out, "ripple-dye").contours();
        assertThat(dyed).contains(Map.entry("cup L", 4), Map.entry("cup R", 4), Map.entry("neck-tie", 8));
        assertThat(dyed.values().stream().mapToInt(Integer::intValue).sum()).isEqualTo(44);
        assertThat(Sheet.read(out, "oat-lining").sizes())
                .containsOnly(Map.entry("S", 8), Map.entry("M", 16), Map.entry("L", 8));
        assertThat(check("wrap-swim-set/hand-dyed.yaml", "ripple-dye", "oat-lining"))
                .isZero();
        assertThat(Files.readString(out.resolve("report.html")))
                .contains(
                        "Cut for one shade: each garment within 75 cm", "One-way per garment", "Keeping to one shade");
    }

    /** The check says whether herons keep off the cups' points and come on the brief-fronts; the marker shows them all. */
    @Test
    void swimSetWithHeronsWhereTheyBelong() throws IOException {
        make("wrap-swim-set/herons.yaml", out);

        Map<String, Integer> print = Sheet.read(out, "tall-herons").contours();
        assertThat(print).contains(Map.entry("cup L", 3), Map.entry("cup R", 3), Map.entry("brief-front", 3));
        assertThat(print.values().stream().mapToInt(Integer::intValue).sum()).isEqualTo(33);
        assertThat(check("wrap-swim-set/herons.yaml", "tall-herons", "oat-lining"))
                .isZero();
        assertThat(Files.readString(out.resolve("tall-herons.svg")))
                .contains("data:image/png;base64,", "class=\"motif\"", ">body<", ">head<");
        assertThat(Files.readString(out.resolve("report.html"))).contains("Minding the motifs");
    }

    /**
     * Two plies face up give two of a hand. Washed, the check comes again every 6 · 0.97 = 5.82 cm (3 % shrinkage), and from
     * the start of one ply to the start of the next it does so a whole number of times.
     */
    @Test
    void checkedSmockInPliesThatBeginAlike() throws IOException {
        make("smock/checked.yaml", out);

        assertThat(Sheet.read(out, "harbour-check").contours())
                .containsOnly(
                        Map.entry("front", 2),
                        Map.entry("back L", 2),
                        Map.entry("back R", 2),
                        Map.entry("pocket", 4),
                        Map.entry("tie", 4));
        String svg = Files.readString(out.resolve("harbour-check.svg"));
        double onward = Sheet.number(svg, "data-length") + 2 * 10;
        assertThat(onward / 58.2).isCloseTo(Math.rint(onward / 58.2), within(1e-4));
        assertThat(check("smock/checked.yaml", "harbour-check", "calico")).isZero();
        assertThat(Files.readString(out.resolve("report.html")))
                .contains("to a whole repeat of the print", "Matching the print", "Each ply begins");
    }

    /** Both selvedges lie in the middle, and a front lies on either fold. */
    @Test
    void smockOnTwoFolds() throws IOException {
        make("smock/two-folds.yaml", out);

        assertThat(Sheet.read(out, "sail-linen").contours())
                .containsOnly(Map.entry("front", 4), Map.entry("back", 4), Map.entry("pocket", 4), Map.entry("tie", 4));
        assertThat(check("smock/two-folds.yaml", "sail-linen", "calico")).isZero();
        assertThat(Files.readString(out.resolve("sail-linen.svg"))).contains("data-area=\"join\"");
        assertThat(Files.readString(out.resolve("report.html"))).contains("Laid folded lengthwise the marker is");
    }

    /** With no gap straight edges lie on each other and are cut once. */
    @Test
    void toolRollsEdgeToEdge() throws IOException {
        make("tool-roll/edge-to-edge.yaml", out);

        Sheet canvas = Sheet.read(out, "deck-canvas");
        assertThat(canvas.contours())
                .containsOnly(Map.entry("body", 6), Map.entry("pocket", 6), Map.entry("flap", 6), Map.entry("tie", 12));
        assertThat(check("tool-roll/edge-to-edge.yaml", "deck-canvas")).isZero();
        assertThat(Files.readString(out.resolve("deck-canvas.svg"))).contains("data-mark=\"cut-once\"");
        assertThat(Files.readString(out.resolve("report.html"))).contains("Straight edges of two pieces coincide on");
    }

    /** Four hats of a remnant with a crease and of one with a corner off, bindings on the bias, loops where there is room. */
    @Test
    void bucketHatsFromWhatIsLeft() throws IOException {
        make("bucket-hats/remnants.yaml", out);

        Map<String, Integer> sailcloth = Sheet.read(out, "sailcloth").contours();
        assertThat(sailcloth).contains(Map.entry("crown", 4), Map.entry("side", 8), Map.entry("brim", 16));
        assertThat(sailcloth.get("toggle-loop")).isBetween(1, 16);
        assertThat(Sheet.read(out, "lawn").contours())
                .containsOnly(
                        Map.entry("crown", 4),
                        Map.entry("side", 8),
                        Map.entry("sweat-band", 4),
                        Map.entry("edge-binding", 4));
        assertThat(check("bucket-hats/remnants.yaml", "sailcloth", "lawn")).isZero();
    }

    /** Two layers a cut: 8 crowns, 16 sides, 32 brims are half as many contours; sweat bands lie on the folds of the tube. */
    @Test
    void bucketHatsFoldedCrosswiseAndInATube() throws IOException {
        make("bucket-hats/folded-and-round.yaml", out);

        assertThat(Sheet.read(out, "canvas").contours())
                .containsOnly(Map.entry("crown", 4), Map.entry("side", 8), Map.entry("brim", 16));
        assertThat(Sheet.read(out, "rib-knit").contours())
                .containsOnly(Map.entry("crown", 4), Map.entry("side", 8), Map.entry("sweat-band", 8));
        assertThat(check("bucket-hats/folded-and-round.yaml", "canvas", "rib-knit"))
                .isZero();
        assertThat(Files.readString(out.resolve("report.html"))).contains("Laid folded lengthwise the marker is");
    }

    /** The first marker is cut up to 18 in; behind the hole all the rest lies, and the crown that was spoilt once more. */
    @Test
    void bucketHatsGoOnBehindAHole(@TempDir Path folder) throws IOException {
        for (String file : List.of("half-a-dozen.yaml", "half-cut.yaml", "bucket-hat.svg")) {
            Files.copy(Path.of("bucket-hats", file), folder.resolve(file));
        }
        Path first = folder.resolve("half-a-dozen");
        make(folder.resolve("half-a-dozen.yaml").toString(), first);
        make(folder.resolve("half-cut.yaml").toString(), out);

        assertThat(Sheet.read(out, "sailcloth").contours())
                .isEqualTo(Sheet.read(first, "sailcloth").contours())
                .containsOnly(Map.entry("crown", 6), Map.entry("side", 12), Map.entry("brim", 24));
        assertThat(check(folder.resolve("half-cut.yaml").toString(), "sailcloth"))
                .isZero();
        assertThat(Files.readString(out.resolve("report.html"))).contains("is cut and spoilt: it has to be cut again");
    }

    /** The two of size 104 come first; what is made is a job of its own, which its markers pass the check of. */
    @Test
    void asManySmocksAsTheLastOfTheTwillGives() throws IOException {
        make("smock/short-of-cloth.yaml", out, "--what-fits");

        assertThat(Sheet.read(out, "moss-twill").contours().get("front")).isBetween(2, 7);
        String made = Files.readString(out.resolve("made.yaml"));
        assertThat(made).contains("size: 104, make: 2");
        assertThat(Files.readString(out.resolve("report.html")))
                .contains("garments the cloth on hand gives", "moss-twill runs out first");
        assertThat(check(out.resolve("made.yaml").toString(), "moss-twill", "calico"))
                .isZero();
    }

    private static void make(String job, Path out, String... more) {
        List<String> words = new ArrayList<>(
                List.of("marker", job, "--out", out.toString(), "--iterations", "20", "--seed", "7", "--workers", "2"));
        words.addAll(List.of(more));
        assertThat(Main.run(words.toArray(new String[0]))).isZero();
    }

    private static void assertSameFiles(Path one, Path other) throws IOException {
        try (Stream<Path> files = Files.list(one)) {
            assertThat(files)
                    .isNotEmpty()
                    .allSatisfy(file ->
                            assertThat(other.resolve(file.getFileName())).hasSameBinaryContentAs(file));
        }
    }

    private int check(String job, String... fabrics) {
        for (String fabric : fabrics) {
            int code = Main.run("check", out.resolve(fabric + ".svg").toString(), "--job", job);
            if (code != 0) {
                return code;
            }
        }
        return 0;
    }

    /**
     * A marker as its file shows it.
     *
     * @param contours how often each piece lies on it, by name and hand
     * @param sizes how many contours of each size
     * @param efficiency net area of the cut lines / (marker length × cuttable width)
     */
    private record Sheet(Map<String, Integer> contours, Map<String, Integer> sizes, double efficiency) {
        static Sheet read(Path folder, String fabric) throws IOException {
            String svg = Files.readString(folder.resolve(fabric + ".svg"));
            Map<String, Integer> contours = new TreeMap<>();
            Map<String, Integer> sizes = new TreeMap<>();
            double net = 0;
            Matcher piece = PIECE.matcher(svg);
            while (piece.find()) {
                contours.merge((piece.group(1) + " " + piece.group(3)).strip(), 1, Integer::sum);
                sizes.merge(piece.group(2), 1, Integer::sum);
                net += area(piece.group(4));
            }
            return new Sheet(contours, sizes, net / (number(svg, "data-length") * number(svg, "data-cuttable-width")));
        }

        private static double number(String svg, String attribute) {
            Matcher number = Pattern.compile(attribute + "=\"([0-9.]+)\"").matcher(svg);
            assertThat(number.find()).as(attribute).isTrue();
            return Double.parseDouble(number.group(1));
        }

        /** The area of a closed path of straight lines, in square millimetres. */
        private static double area(String path) {
            double twice = 0;
            double[] first = {};
            double[] last = {};
            Matcher vertex = VERTEX.matcher(path);
            while (vertex.find()) {
                double[] here = {Double.parseDouble(vertex.group(1)), Double.parseDouble(vertex.group(2))};
                if (first.length == 0) {
                    first = here;
                } else {
                    twice += last[0] * here[1] - here[0] * last[1];
                }
                last = here;
            }
            twice += last[0] * first[1] - first[0] * last[1];
            return Math.abs(twice) / 2;
        }
    }
}
