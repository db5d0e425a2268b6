package lengthwise.report;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Shrinkage;
import lengthwise.model.Spread;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

@Tag("written")
class RunFilesTest {
    private static final Map<String, String> TEXTS = RunFiles.texts(SampleRuns.run());

    @TempDir
    Path folder;

    @Test
    void aRunGivesAMarkerAndAPlacementSheetForEachFabricAndTwoReports() throws IOException {
        List<Path> files = RunFiles.write(SampleRuns.run(), folder.resolve("new/folder"));
        assertThat(files)
                .extracting(file -> file.getFileName().toString())
                .containsExactly(
                        "report.html",
                        "reef-print.svg",
                        "reef-print-placement.html",
                        "sand lining.svg",
                        "sand lining-placement.html",
                        "report.json");
        for (Path file : files) {
            assertThat(file).content().isEqualTo(TEXTS.get(file.getFileName().toString()));
        }
        try (var all = Files.list(folder.resolve("new/folder"))) {
            assertThat(all).hasSameSizeAs(files);
        }
    }

    @Test
    void aFileThatCannotBeReplacedIsLeftAsItWas() throws IOException {
        Path inTheWay = folder.resolve("report.html");
        Files.createDirectory(inTheWay);
        Files.writeString(inTheWay.resolve("mine.txt"), "mine");
        assertThatThrownBy(() -> RunFiles.write(SampleRuns.run(), folder)).isInstanceOf(IOException.class);
        assertThat(inTheWay.resolve("mine.txt")).content().isEqualTo("mine");
        try (var all = Files.list(folder)) {
            assertThat(all).containsExactly(inTheWay);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva"})
    void theSameRunGivesTheSameBytesInEveryLocale(String tag) {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            assertThat(RunFiles.texts(SampleRuns.run())).isEqualTo(TEXTS);
            assertThat(ReportTable.of(SampleRuns.run())).contains("0.300 m").contains("4.80");
        } finally {
            Locale.setDefault(before);
        }
    }

    /**
     * By hand: marker 300 mm, ends 2 × 20 mm, so 340 mm washed are 340 / 0.97 = 350.516 mm unwashed, 400 mm in steps of
     * 10 cm, which cost 0.4 × 12.00. Cuttable width (1500 − 40) × 0.98 = 1430.8 mm. Pieces 2 × 200 × 100 / 2 + 32 × 400 =
     * 32 800 mm² of 300 × 1430.8 mm².
     */
    @Test
    void theJsonReportHasTheFiguresOfTheRun() throws IOException {
        Map<String, Object> report = object(text(TEXTS, "report.json"));
        assertThat(report)
                .containsEntry("version", 1L)
                .containsEntry("seed", 7L)
                .containsEntry("workers", 2L);
        assertThat(report).containsEntry("job", "Plover swim set").containsEntry("reproducible", true);
        Map<String, Object> fabric = at(report, "fabrics", 0);
        assertThat(fabric)
                .containsEntry("name", "reef-print")
                .containsEntry("marker", "reef-print.svg")
                .containsEntry("length_mm", 300.0)
                .containsEntry("cuttable_width_mm", 1430.8)
                .containsEntry("efficiency", 0.076414)
                .containsEntry("lower_bound_mm", 150.0)
                .containsEntry("buy_mm", 400.0)
                .containsEntry("cost", 4.8)
                .containsEntry("stop_reason", "budget");
        assertThat(map(fabric.get("purchase")))
                .containsEntry("marker_mm", 300.0)
                .containsEntry("ends_mm", 40.0)
                .containsEntry("shrinkage_mm", 10.516)
                .containsEntry("rounding_mm", 49.484);
        assertThat(map(fabric.get("waste")))
                .containsEntry("pieces_mm2", 32_800.0)
                .containsEntry("between_pieces_mm2", 396_440.0)
                .containsEntry("edges_mm2", 300 * 39.2)
                .containsEntry("ends_mm2", 40 * 1470.0);
        assertThat((List<?>) fabric.get("pieces"))
                .isEqualTo(List.of(piece("cup", "L", 1), piece("cup", "R", 2), piece("tie", "", 3)));
        // A pair cut in one go is two pieces; the loop that nobody ordered is none.
        assertThat((List<?>) at(report, "fabrics", 1).get("pieces"))
                .isEqualTo(List.of(
                        piece("back", "", 1), piece("cup", "L", 2), piece("cup", "R", 2), piece("loop", "", 3)));
        assertThat(at(report, "fabrics", 1)).containsEntry("cost", null);
    }

    private static Map<String, Object> piece(String name, String hand, long number) {
        return Map.of("piece", name, "size", "S", "garment", 1L, "hand", hand, "number", number);
    }

    @ParameterizedTest
    @ValueSource(strings = {"report.html", "reef-print-placement.html", "sand lining-placement.html"})
    void pagesNeedNothingButThemselves(String name) throws Exception {
        String html = text(TEXTS, name);
        assertThat(html).startsWith("<!DOCTYPE html>");
        Document page = parsed(html);
        assertThat(page.getElementsByTagName("script").getLength()).isZero();
        assertThat(page.getElementsByTagName("link").getLength()).isZero();
        assertThat(page.getElementsByTagName("img").getLength()).isZero();
        assertThat(html.replace("http://www.w3.org/2000/svg", "")).doesNotContain("http:", "https:", "url(", "@import");
        assertThat(page.getElementsByTagName("svg").getLength()).isPositive();
    }

    @Test
    void theReportSaysWhatToBuyAndWhy() throws Exception {
        String text = parsed(text(TEXTS, "report.html")).getDocumentElement().getTextContent();
        assertThat(text)
                .contains("40 cm (1/2 yd)")
                .contains("30 cm (11 3/4 in)")
                .contains("1.431 m (56 3/8 in)")
                .contains("7.64 %")
                .contains("no marker can be shorter than", "15 cm (5 7/8 in)")
                .contains("shrinkage in the wash", "1.1 cm")
                .contains("At 12.00 per m: 4.80")
                .contains("between the pieces", "along the edges", "at both ends")
                .contains("One layer.", "Folded: 1.20 m.")
                .contains("Cut list: 3 pieces", "1 (L), 2 (R)")
                .contains("One loop more than ordered.")
                .contains("seed 7, workers 2", "after 1234 rounds of the search")
                .contains("hydrogen chloride", "Mind the width.");
    }

    @Test
    void theCutListTicksWhatLiesOnTheMarkerAndSaysWhatDoesNot() {
        Marker whole = SampleRuns.singleLayer();
        assertThat(CutList.of(whole).lines()).allMatch(CutList.Line::isComplete);
        assertThat(CutList.of(whole).wanted()).isEqualTo(3);
        assertThat(CutList.of(SampleRuns.folded()).lines()).allMatch(CutList.Line::isComplete);
        Marker short1 = new Marker(whole.order(), whole.placements().subList(0, 2), whole.length());
        assertThat(CutList.of(short1).lines())
                .extracting(CutList.Line::isComplete)
                .containsExactly(false, true);
    }

    /**
     * By hand: near edge 20 × 0.98 = 19.6 mm and end allowance 20 mm. The left cup's grain line from (10, 30) to (110,
     * 30) on the marker is 49.6 mm from the selvedge, 30 and 130 mm from the start; the right one, turned over, lies at
     * 250 − 30 + 19.6 = 239.6 mm. The middle of the crosswise tie is 268 + 16 + 20 = 304 mm from the start, from 19.6 to
     * 419.6 mm.
     */
    @Test
    void thePlacementSheetMeasuresFromTheSelvedgeAndFromTheCutEnd() throws Exception {
        assertThat(rows(text(TEXTS, "reef-print-placement.html")))
                .containsExactly(
                        List.of(
                                "1",
                                "cup",
                                "S",
                                "1",
                                "L",
                                "as drawn, up →",
                                "5.0",
                                "1 15/16",
                                "5.0",
                                "1 15/16",
                                "3.0",
                                "1 3/16",
                                "13.0",
                                "5 1/8"),
                        List.of(
                                "2",
                                "cup",
                                "S",
                                "1",
                                "R",
                                "turned over, up →",
                                "24.0",
                                "9 7/16",
                                "24.0",
                                "9 7/16",
                                "3.0",
                                "1 3/16",
                                "13.0",
                                "5 1/8"),
                        List.of(
                                "3",
                                "tie",
                                "S",
                                "1",
                                "",
                                "runs ↕",
                                "2.0",
                                "3/4",
                                "42.0",
                                "16 1/2",
                                "30.4",
                                "11 15/16",
                                "30.4",
                                "11 15/16"));
    }

    /** On folded cloth the fold is measured from: no edge lies along it. */
    @Test
    void onFoldedClothThePlacementSheetMeasuresFromTheFold() throws Exception {
        String html = text(TEXTS, "sand lining-placement.html");
        assertThat(html).contains("from the fold").doesNotContain("from the selvedge");
        List<List<String>> rows = rows(html);
        assertThat(rows).hasSize(3);
        assertThat(rows.get(0).subList(4, 9)).isEqualTo(List.of("on fold", "as drawn, up →", "3.0", "1 3/16", "3.0"));
        assertThat(rows.get(1).get(4)).isEqualTo("L + R");
        assertThat(rows.get(2).get(4)).isEqualTo("one, one spare");
    }

    /** One contour on folded cloth gives both hands, or two alike. */
    @Test
    void onFoldedClothTheCutListNamesAContourOnce() throws Exception {
        assertThat(parsed(text(TEXTS, "report.html")).getDocumentElement().getTextContent())
                .contains("2 (L + R)")
                .doesNotContain("2 (L), 2 (R)", "2 (R), 2 (L)");
    }

    @Test
    void thePlacementSheetHasNoColumnForSizesOrHandsWhereThereAreNone() throws Exception {
        Marker marker = SampleRuns.singleLayer();
        Marker tiesAlone = new Marker(
                marker.order(),
                marker.placements().stream()
                        .filter(placement -> placement.item().piece().strip())
                        .toList(),
                marker.length());
        Run run = new Run("ties", "0", 1, 1, true, List.of(SampleRuns.fabricRun(tiesAlone)), List.of());
        String sheet = text(RunFiles.texts(run), "reef-print-placement.html");
        assertThat(sheet).contains(">size<").doesNotContain(">hand<");
        assertThat(rows(sheet)).hasSize(1);
        assertThat(rows(sheet).get(0)).hasSize(13).startsWith("1", "tie", "S", "1", "runs ↕");
    }

    @Test
    void strangeNamesAreEscapedAndNeverLeaveTheFolder() throws Exception {
        Run run = renamed("../a/<b> & \"ü\" 漢", "CON:aux", "Con:AUX", "...");
        assertThat(OutputNames.of(run)).containsExactly("-a-b- & -ü- 漢", "CON-aux", "Con-AUX-2", "fabric");
        Map<String, String> texts = RunFiles.texts(run);
        assertThat(texts).hasSize(10);
        Document page = parsed(text(texts, "report.html"));
        assertThat(page.getDocumentElement().getTextContent()).contains("../a/<b> & \"ü\" 漢");
        NodeList links = page.getElementsByTagName("a");
        assertThat(IntStream.range(0, links.getLength()).mapToObj(i -> ((Element) links.item(i)).getAttribute("href")))
                .contains("./-a-b-%20%26%20-%C3%BC-%20%E6%BC%A2.svg");
        object(text(texts, "report.json"));
    }

    @Test
    void theTableHasALineForEachFabric() {
        assertThat(ReportTable.of(SampleRuns.run()).lines().toList())
                .hasSize(3)
                .element(1)
                .asString()
                .containsSubsequence(
                        "reef-print", "0.300 m", "0.33 yd", "143.1 cm", "7.64 %", "0.400 m", "1/2 yd", "4.80");
    }

    private static Run renamed(String... names) {
        Marker marker = SampleRuns.singleLayer();
        List<FabricRun> fabrics = new ArrayList<>();
        for (String name : names) {
            Fabric fabric = SampleRuns.fabric(
                    name,
                    new Spread(Spread.Form.SINGLE_LAYER, Length.ZERO),
                    Direction.ONE_WAY_PER_GARMENT,
                    Shrinkage.NONE,
                    Optional.empty());
            fabrics.add(SampleRuns.fabricRun(new Marker(
                    new MarkerOrder(fabric, Length.ZERO, marker.order().bundles()),
                    marker.placements(),
                    marker.length())));
        }
        return new Run("<i>&", "0", 1, 1, false, fabrics, List.of("a < b"));
    }

    private static String text(Map<String, String> texts, String name) {
        return requireNonNull(texts.get(name), name);
    }

    private static List<List<String>> rows(String html) throws Exception {
        Element body = (Element) parsed(html).getElementsByTagName("tbody").item(0);
        NodeList rows = body.getElementsByTagName("tr");
        return IntStream.range(0, rows.getLength())
                .mapToObj(i -> ((Element) rows.item(i)).getElementsByTagName("td"))
                .map(cells -> IntStream.range(0, cells.getLength())
                        .mapToObj(i -> cells.item(i).getTextContent())
                        .toList())
                .toList();
    }

    /** Our pages are well-formed XML as well, so that an independent parser can vouch for their escaping. */
    private static Document parsed(String html) throws Exception {
        return DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(html)));
    }

    private static Map<String, Object> object(String json) throws IOException {
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            parser.nextToken();
            return map(value(parser));
        }
    }

    private static @Nullable Object value(JsonParser parser) throws IOException {
        switch (parser.currentToken()) {
            case START_OBJECT -> {
                Map<String, @Nullable Object> object = new LinkedHashMap<>();
                while (parser.nextToken() == JsonToken.FIELD_NAME) {
                    String name = parser.currentName();
                    parser.nextToken();
                    object.put(name, value(parser));
                }
                return object;
            }
            case START_ARRAY -> {
                List<@Nullable Object> array = new ArrayList<>();
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    array.add(value(parser));
                }
                return array;
            }
            case VALUE_STRING -> {
                return parser.getText();
            }
            case VALUE_NUMBER_INT -> {
                return parser.getLongValue();
            }
            case VALUE_NUMBER_FLOAT -> {
                return parser.getDoubleValue();
            }
            case VALUE_TRUE -> {
                return true;
            }
            case VALUE_FALSE -> {
                return false;
            }
            default -> {
                return null;
            }
        }
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> map(@Nullable Object value) {
        return (Map<String, Object>) requireNonNull(value);
    }

    private static Map<String, Object> at(Map<String, Object> object, String array, int index) {
        return map(((List<?>) requireNonNull(object.get(array))).get(index));
    }
}
