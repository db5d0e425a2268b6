package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import lengthwise.demos.SeamLine.Seam;
import lengthwise.drawing.Arrow;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.job.JobDrawing;
import lengthwise.job.JobFile;
import lengthwise.model.Segment;
import lengthwise.svg.SvgPattern;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The drawings of the demos are patterns that can be sewn: seams that meet are as long as each other. */
class DrawingsTest {
    private static final List<String> SWIM_SIZES = List.of("XS", "S", "M", "L", "XL");
    private static final List<String> SMOCK_SIZES = List.of("98", "104", "110");

    /** Each drawing is read once. */
    private static final Map<String, Map<JobDrawing, PatternDrawing>> READ = new HashMap<>();

    /** A millimetre on a seam is eased in unseen: common practice, no source. */
    private static final Offset<Double> TRUE = within(1.0);

    @Test
    void everyPieceOfTheSwimSetIsThereInEverySize() throws Exception {
        Map<String, Map<String, DrawnPiece>> pieces = pieces("wrap-swim-set");

        assertThat(pieces.keySet())
                .containsExactlyInAnyOrder("cup", "front-band", "back-wing", "brief-front", "brief-back", "gusset");
        assertThat(pieces.values())
                .allSatisfy(bySize -> assertThat(bySize.keySet()).containsExactlyInAnyOrderElementsOf(SWIM_SIZES));
    }

    @Test
    void everyPieceOfTheSmockIsThereInEverySize() throws Exception {
        Map<String, Map<String, DrawnPiece>> pieces = pieces("smock");

        assertThat(pieces.keySet()).containsExactlyInAnyOrder("front", "back", "front-facing", "back-facing", "pocket");
        assertThat(pieces.values())
                .allSatisfy(bySize -> assertThat(bySize.keySet()).containsExactlyInAnyOrderElementsOf(SMOCK_SIZES));
    }

    @Test
    void everyPieceOfTheHatIsThere() throws Exception {
        assertThat(pieces("bucket-hats").keySet()).containsExactlyInAnyOrder("crown", "side", "brim");
    }

    @ParameterizedTest
    @ValueSource(strings = {"wrap-swim-set", "smock", "bucket-hats"})
    void readsWithoutAWarning(String demo) throws Exception {
        for (PatternDrawing drawing : drawings(demo).values()) {
            assertThat(drawing.scaleStated()).isTrue();
            assertThat(drawing.warnings()).isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"wrap-swim-set", "smock", "bucket-hats"})
    void everyPieceHasAnUpEndASewLineAndNoHole(String demo) throws Exception {
        assertThat(allPieces(demo)).allSatisfy(piece -> {
            assertThat(piece.arrow().map(Arrow::heads)).contains(Arrow.Heads.ONE);
            Segment grain = piece.arrow().orElseThrow().line();
            assertThat(grain.to().y())
                    .as("up is up the page")
                    .isLessThan(grain.from().y());
            assertThat(grain.to().x()).isEqualTo(grain.from().x());
            assertThat(piece.sewLines()).isNotEmpty();
            assertThat(piece.notches()).isNotEmpty();
            assertThat(piece.outline().holes()).isEmpty();
            assertThat(piece.mirrored()).isFalse();
            assertThat(piece.lettering()).anyMatch(line -> line.contains(piece.name()));
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"wrap-swim-set", "smock", "bucket-hats"})
    void halfPiecesHaveTheirFoldOnTheOutlineAndNoOtherPieceHasOne(String demo) throws Exception {
        assertThat(allPieces(demo)).allSatisfy(piece -> {
            boolean half = piece.lettering().stream().anyMatch(line -> line.contains("cut 1 on fold"));
            assertThat(piece.foldEdge().isPresent()).as(piece.name()).isEqualTo(half);
            if (half) {
                assertThat(edges(piece.outline().shell()))
                        .contains(undirected(piece.foldEdge().orElseThrow()));
            }
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"wrap-swim-set", "smock"})
    void everySizeIsLargerThanTheOneBefore(String demo) throws Exception {
        List<String> sizes = demo.equals("smock") ? SMOCK_SIZES : SWIM_SIZES;
        pieces(demo).forEach((name, bySize) -> {
            for (int i = 1; i < sizes.size(); i++) {
                DrawnPiece smaller = of(bySize, sizes.get(i - 1));
                DrawnPiece larger = of(bySize, sizes.get(i));
                assertThat(larger.outline().squareMillimetres())
                        .as("area of %s in %s", name, sizes.get(i))
                        .isGreaterThan(smaller.outline().squareMillimetres());
                assertThat(width(larger))
                        .as("width of %s in %s", name, sizes.get(i))
                        .isGreaterThan(width(smaller));
                assertThat(height(larger))
                        .as("height of %s in %s", name, sizes.get(i))
                        .isGreaterThan(height(smaller));
            }
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"XS", "S", "M", "L", "XL"})
    void swimTopIsTrue(String size) throws Exception {
        Map<String, Map<String, DrawnPiece>> pieces = pieces("wrap-swim-set");
        DrawnPiece cup = piece(pieces, "cup", size);
        DrawnPiece band = piece(pieces, "front-band", size);
        DrawnPiece wing = piece(pieces, "back-wing", size);

        Seam bandTop = SeamLine.of(band).near(0.5, 0).rightwards();
        Seam bandSide = SeamLine.of(band).near(1, 0.5);
        Seam cupSide = SeamLine.of(cup).near(1, 0.8);
        Seam wingSide = SeamLine.of(wing).near(0, 0.5).downwards();
        Cup sewn = new Cup(cup);

        assertThat(sewn.fromCentreToSide()).as("cup on band").isCloseTo(bandTop.length(), TRUE);
        assertThat(cupSide.length() + bandSide.length())
                .as("wing on cup and band")
                .isCloseTo(wingSide.length(), TRUE);
        List<Double> onBand = along(
                bandTop,
                band.notches().stream()
                        .map(Segment::from)
                        .filter(notch -> notch.y() < band.outline().box().minY() + 15_000)
                        .toList());
        assertThat(onBand).hasSize(2);
        assertThat(onBand.get(0)).as("where the other cup ends").isCloseTo(sewn.overlap(), TRUE);
        assertThat(onBand.get(1)).as("the dart").isCloseTo(sewn.fromCentreToDart(), TRUE);
        assertThat(along(wingSide, wing.notches().stream().map(Segment::from).toList()))
                .as("a notch where cup and band meet")
                .anySatisfy(notch -> assertThat(notch).isCloseTo(cupSide.length(), TRUE));
    }

    @ParameterizedTest
    @ValueSource(strings = {"XS", "S", "M", "L", "XL"})
    void bothLegsOfTheDartAreAsLong(String size) throws Exception {
        Cup cup = new Cup(piece(pieces("wrap-swim-set"), "cup", size));

        assertThat(cup.dart.get(0).distance(cup.dart.get(1)) / 1000)
                .isCloseTo(cup.dart.get(2).distance(cup.dart.get(1)) / 1000, within(0.1));
    }

    @ParameterizedTest
    @ValueSource(strings = {"XS", "S", "M", "L", "XL"})
    void briefIsTrue(String size) throws Exception {
        Map<String, Map<String, DrawnPiece>> pieces = pieces("wrap-swim-set");
        DrawnPiece front = piece(pieces, "brief-front", size);
        DrawnPiece back = piece(pieces, "brief-back", size);
        DrawnPiece gusset = piece(pieces, "gusset", size);

        assertMatch(front, seam(front, 1, 0.25), back, seam(back, 1, 0.2), 1);
        assertMatch(front, across(front, 0.1, 1), gusset, across(gusset, 0.3, 0), 1);
        assertMatch(back, across(back, 0.1, 1), gusset, across(gusset, 0.3, 1), 2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"98", "104", "110"})
    void smockIsTrue(String size) throws Exception {
        Map<String, Map<String, DrawnPiece>> pieces = pieces("smock");
        DrawnPiece front = piece(pieces, "front", size);
        DrawnPiece back = piece(pieces, "back", size);
        DrawnPiece frontFacing = piece(pieces, "front-facing", size);
        DrawnPiece backFacing = piece(pieces, "back-facing", size);

        assertThat(side(front).length()).as("side").isCloseTo(side(back).length(), TRUE);
        assertThat(SeamLine.of(front).near(0.35, 0).length())
                .as("shoulder")
                .isCloseTo(SeamLine.of(back).near(0.4, 0).length(), TRUE);
        assertThat(SeamLine.of(frontFacing).near(1, 0.8).length())
                .as("side of the facing")
                .isCloseTo(SeamLine.of(backFacing).near(1, 0.38).length(), TRUE);
        assertMatch(front, seam(front, 0.65, 0.25), frontFacing, seam(frontFacing, 0.7, 0.5), 1);
        assertMatch(back, seam(back, 0.7, 0.25), backFacing, seam(backFacing, 0.8, 0.25), 2);
        assertThat(side(front).along(sideNotch(front))).isCloseTo(side(back).along(sideNotch(back)), TRUE);
    }

    /** The crown's seam is 2 × 295 mm by what the job's README says; the crown is drawn for 58 cm and 1 cm of ease. */
    @Test
    void hatIsTrue() throws Exception {
        Map<String, Map<String, DrawnPiece>> pieces = pieces("bucket-hats");
        DrawnPiece sidePiece = piece(pieces, "side", "");
        DrawnPiece brimPiece = piece(pieces, "brim", "");
        SeamLine crown = SeamLine.of(piece(pieces, "crown", ""));
        SeamLine side = SeamLine.of(sidePiece);
        SeamLine brim = SeamLine.of(brimPiece);

        assertThat(crown.length()).isCloseTo(590, TRUE);
        assertThat(2 * side.near(0.5, 0).length()).as("sides on the crown").isCloseTo(crown.length(), TRUE);
        assertThat(side.near(0.5, 1).length())
                .as("brim on the side")
                .isCloseTo(brim.near(0.5, 0.5).length(), TRUE);
        assertThat(side.near(0, 0.5).length()).isCloseTo(side.near(1, 0.5).length(), within(0.1));
        assertThat(brim.near(0.05, 0.3).length()).isCloseTo(brim.near(0.95, 0.3).length(), within(0.1));
    }

    private static Seam side(DrawnPiece piece) {
        return SeamLine.of(piece).near(0.9, 0.6).downwards();
    }

    /** Two seams are as long as each other, and so many notches on them meet. */
    private static void assertMatch(DrawnPiece a, Seam onA, DrawnPiece b, Seam onB, int notches) {
        assertThat(onA.length()).as(a.name() + " on " + b.name()).isCloseTo(onB.length(), TRUE);
        List<Double> alongA = along(onA, notchesAt(a, onA));
        List<Double> alongB = along(onB, notchesAt(b, onB));
        assertThat(alongA).as("notches of " + a.name()).hasSize(notches);
        assertThat(alongB).as("notches of " + b.name()).hasSize(notches);
        for (int i = 0; i < notches; i++) {
            assertThat(alongA.get(i))
                    .as("notch %d of %s and %s", i + 1, a.name(), b.name())
                    .isCloseTo(alongB.get(i), TRUE);
        }
    }

    /** Returns the notches cut from the edge beside a seam: within the widest seam allowance and not at its ends. */
    private static List<Point> notchesAt(DrawnPiece piece, Seam seam) {
        return piece.notches().stream()
                .map(Segment::from)
                .filter(notch ->
                        seam.distance(notch) < 10.5 && seam.along(notch) > 5 && seam.along(notch) < seam.length() - 5)
                .toList();
    }

    private static Seam seam(DrawnPiece piece, double across, double down) {
        return SeamLine.of(piece).near(across, down).downwards();
    }

    private static Seam across(DrawnPiece piece, double across, double down) {
        return SeamLine.of(piece).near(across, down).rightwards();
    }

    /** The notch in the middle of the side: the one nearest to it that is not at the hem. */
    private static Point sideNotch(DrawnPiece piece) {
        Seam side = side(piece);
        return piece.notches().stream()
                .map(Segment::from)
                .min(Comparator.comparingDouble(notch -> notch.distance(side.middle())))
                .orElseThrow();
    }

    /** A cup's lower seam, which a dart divides: when it is sewn, the cloth between its legs is folded away. */
    private static final class Cup {
        private final List<Point> dart;
        private final Seam inner;
        private final Seam outer;
        private final double centre;

        Cup(DrawnPiece cup) {
            SeamLine line = SeamLine.of(cup);
            inner = line.near(0.3, 1).rightwards();
            outer = line.near(0.8, 1).rightwards();
            List<Point> legs = cup.sewLines().stream()
                    .filter(points -> points.size() == 3)
                    .findFirst()
                    .orElseThrow();
            dart = new ArrayList<>(legs);
            if (dart.get(0).x() > dart.get(2).x()) {
                Collections.reverse(dart);
            }
            centre = cup.notches().stream()
                    .map(Segment::from)
                    .min(Comparator.comparingDouble(notch -> notch.distance(inner.middle())))
                    .map(inner::along)
                    .orElseThrow();
        }

        double overlap() {
            return centre;
        }

        double fromCentreToDart() {
            return inner.along(dart.get(0)) - centre;
        }

        double fromCentreToSide() {
            return fromCentreToDart() + outer.length() - outer.along(dart.get(2));
        }
    }

    private static List<Double> along(Seam seam, List<Point> notches) {
        return notches.stream().map(seam::along).sorted().toList();
    }

    private static double width(DrawnPiece piece) {
        Box box = piece.outline().box();
        return box.width();
    }

    private static double height(DrawnPiece piece) {
        Box box = piece.outline().box();
        return box.height();
    }

    private static List<List<Point>> edges(Ring ring) {
        List<List<Point>> edges = new ArrayList<>();
        for (int i = 0; i < ring.size(); i++) {
            edges.add(undirected(new Segment(ring.vertex(i), ring.vertex((i + 1) % ring.size()))));
        }
        return edges;
    }

    private static List<Point> undirected(Segment segment) {
        boolean down = segment.from().y() <= segment.to().y();
        return down ? List.of(segment.from(), segment.to()) : List.of(segment.to(), segment.from());
    }

    private static DrawnPiece piece(Map<String, Map<String, DrawnPiece>> pieces, String name, String size) {
        return of(pieces.getOrDefault(name, Map.of()), size);
    }

    private static DrawnPiece of(Map<String, DrawnPiece> bySize, String size) {
        return Optional.ofNullable(bySize.get(size)).orElseThrow(() -> new AssertionError("not drawn in " + size));
    }

    private static List<DrawnPiece> allPieces(String demo) throws Exception {
        return pieces(demo).values().stream()
                .flatMap(bySize -> bySize.values().stream())
                .toList();
    }

    /** Returns the drawn pieces by name, then by size; a piece drawn in no size has the size "". */
    private static Map<String, Map<String, DrawnPiece>> pieces(String demo) throws Exception {
        Map<String, Map<String, DrawnPiece>> pieces = new TreeMap<>();
        for (Map.Entry<JobDrawing, PatternDrawing> drawing : drawings(demo).entrySet()) {
            for (DrawnPiece piece : drawing.getValue().pieces()) {
                String size = piece.size().or(drawing.getKey()::size).orElse("");
                DrawnPiece twice = pieces.computeIfAbsent(piece.name(), name -> new TreeMap<>())
                        .put(size, piece);
                assertThat(twice).as(piece.name() + " is drawn twice").isNull();
            }
        }
        return pieces;
    }

    private static Map<JobDrawing, PatternDrawing> drawings(String demo) throws Exception {
        Map<JobDrawing, PatternDrawing> drawings = READ.get(demo);
        if (drawings == null) {
            drawings = new LinkedHashMap<>();
            JobFile file = DemoJobsTest.read(demo);
            for (JobDrawing drawing : file.job().drawings()) {
                drawings.put(drawing, SvgPattern.read(file.path(drawing), drawing.scale()));
            }
            READ.put(demo, drawings);
        }
        return drawings;
    }
}
