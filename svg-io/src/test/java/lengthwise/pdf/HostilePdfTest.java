package lengthwise.pdf;

import static lengthwise.pdf.WrittenByHand.rectangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.Stream;
import java.util.zip.DeflaterOutputStream;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that nobody vouches for: one clear line or a list of pieces, in bounded time, whatever they hold. */
class HostilePdfTest {
    private static final String GOOD = "2.834645669 0 0 2.834645669 0 0 cm\n" + rectangle(20, 20, 120, 60);
    private static final Duration LONGEST = Duration.ofSeconds(60);

    static Stream<Arguments> refused() throws IOException {
        return Stream.of(
                file("nothing", new byte[0]),
                file("no PDF", "0\nSECTION\n".getBytes(StandardCharsets.US_ASCII)),
                file("a head alone", "%PDF-1.7\n".getBytes(StandardCharsets.US_ASCII)),
                file("locked", locked("open", "own")),
                file("locked by its owner", locked("", "own")),
                file("a form that draws itself", drawsItself()),
                file("deep forms", forms(200, 1)),
                file("a bomb of forms", forms(12, 8)),
                file("packed zeros", packed(deflated(new byte[200 << 20]), "/FlateDecode")),
                file("packed twice", packed(deflated(deflated(new byte[200 << 20])), "[/FlateDecode /FlateDecode]")),
                file("packed and breaking off", packed(half(deflated(noise())), "/FlateDecode")),
                file("packed in an unknown way", packed(new byte[100], "/GoblinDecode")),
                file("packed as a picture", packed(new byte[100], "/DCTDecode")),
                file("states without end", page("q ".repeat(1_000_000))),
                file("marks without end", page("/A BMC ".repeat(1_000_000))),
                file("too many points", page("0 0 m 1 1 l ".repeat(600_000))),
                file("curves far away", page("0 0 m 900000 0 900000 900000 0 900000 c S ".repeat(3_000))),
                file("pages without end", samePage(5_000)));
    }

    static Stream<Arguments> readable() {
        String deep = "[/Not ".repeat(100) + "]".repeat(100);
        return Stream.of(
                file("numbers beyond measure", page(GOOD + "0 0 m 1e300 0 l 1e38 1e38 l s 9999999999999 0 m 5 5 l S")),
                file("a matrix of nothing", page(GOOD + "q 0 0 0 0 0 0 cm 0 0 50 50 re S Q")),
                file("a matrix beyond measure", page(GOOD + "q 1e38 0 0 1e38 0 0 cm 5 5 50 50 re S Q")),
                file("operators that are none", page(GOOD + "goblin 5 goblins /X goblin l l m 3 c")),
                file("too few operands", page("m 3 l re " + GOOD)),
                file("states that were never saved", page("Q Q Q EMC EMC " + GOOD)),
                file("resources that are not there", page(GOOD + "/X Do /F 12 Tf (a) Tj /G gs /OC /L BDC EMC")),
                file("a picture in the content that is none", page(GOOD + "BI /W 99999 /H 99999 ID x EI ")),
                file(
                        "a page without a box",
                        new WrittenByHand().page("/MediaBox [0 0 0]", GOOD).bytes()),
                file(
                        "turned by an odd angle",
                        new WrittenByHand().page("/Rotate 45", GOOD).bytes()),
                file(
                        "a unit of nothing",
                        new WrittenByHand().page("/UserUnit -3", GOOD).bytes()),
                file(
                        "a script and a link",
                        new WrittenByHand()
                                .inCatalog("/OpenAction << /S /JavaScript /JS (app.alert(1)) >> /AA << /WC << /S /URI"
                                        + " /URI (http://127.0.0.1:9/) >> >>")
                                .page("/Annots [<< /Subtype /Link /A << /S /Launch /F (/bin/sh) >> >>]", GOOD)
                                .bytes()),
                file("content of another file", withStream("/F (/etc/passwd) /FFilter /FlateDecode")),
                file(
                        "layers by an endless rule",
                        new WrittenByHand()
                                .page(
                                        "/Resources << /Properties << /E << /Type /OCMD /VE " + deep + " >> >> >>",
                                        "/OC /E BDC 9 9 5 5 re S EMC " + GOOD)
                                .bytes()),
                file(
                        "a font of nothing",
                        new WrittenByHand()
                                .page(
                                        "/Resources << /Font << /F << /Subtype /Type0 /DescendantFonts [5] /W [1 2] >> /G"
                                                + " << /Widths 7 /Encoding << /Differences [1 /x (y)] >> >> >> >>",
                                        GOOD + "BT /F 1e30 Tf (abc) Tj /G 5 Tf 1e30 Tw 1e30 0 0 1 0 0 Tm (abc) Tj ET")
                                .bytes()),
                file("content that is no stream", noContent()),
                file("a page tree that holds itself", treeInItself()));
    }

    private static Arguments file(String name, byte[] bytes) {
        return Arguments.of(name, bytes);
    }

    private static byte[] page(String content) {
        return new WrittenByHand().page("", content).bytes();
    }

    private static byte[] packed(byte[] data, String filter) {
        WrittenByHand file = new WrittenByHand();
        int stream = file.stream("/Filter " + filter, data);
        return file.page("/Contents " + stream + " 0 R", GOOD).bytes();
    }

    private static byte[] withStream(String dictionary) {
        WrittenByHand file = new WrittenByHand();
        int stream = file.stream(dictionary, GOOD);
        return file.page("/Contents " + stream + " 0 R", "").bytes();
    }

    private static byte[] noContent() {
        WrittenByHand file = new WrittenByHand();
        int stream = file.stream("", GOOD);
        return file.page("/Contents [null 7 [" + stream + " 0 R] " + stream + " 0 R]", "")
                .bytes();
    }

    private static byte[] samePage(int times) {
        WrittenByHand file = new WrittenByHand().page("", GOOD);
        String text = new String(file.bytes(), StandardCharsets.ISO_8859_1);
        return text.replace("/Kids [4 0 R ]", "/Kids [" + "4 0 R ".repeat(times) + "]")
                .getBytes(StandardCharsets.ISO_8859_1);
    }

    private static byte[] treeInItself() {
        String text = new String(page(GOOD), StandardCharsets.ISO_8859_1);
        return text.replace("/Kids [4 0 R ]", "/Kids [4 0 R 2 0 R]").getBytes(StandardCharsets.ISO_8859_1);
    }

    private static byte[] drawsItself() {
        WrittenByHand file = new WrittenByHand();
        int form =
                file.stream("/Subtype /Form /BBox [0 0 9 9] /Resources << /XObject << /F 3 0 R >> >>", GOOD + " /F Do");
        return file.page("/Resources << /XObject << /F " + form + " 0 R >> >>", "/F Do")
                .bytes();
    }

    /** Forms in forms, each drawn so many times by the next. */
    private static byte[] forms(int depth, int times) {
        WrittenByHand file = new WrittenByHand();
        int last = file.stream("/Subtype /Form /BBox [0 0 9 9]", "0 0 m S");
        for (int i = 0; i < depth; i++) {
            last = file.stream(
                    "/Subtype /Form /BBox [0 0 9 9] /Resources << /XObject << /F " + last + " 0 R >> >>",
                    "/F Do ".repeat(times));
        }
        return file.page("/Resources << /XObject << /F " + last + " 0 R >> >>", "/F Do")
                .bytes();
    }

    private static byte[] deflated(byte[] data) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(out)) {
            deflater.write(data);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static byte[] half(byte[] data) {
        return Arrays.copyOf(data, data.length / 2);
    }

    private static byte[] noise() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(1);
        StringBuilder content = new StringBuilder(GOOD);
        for (int i = 0; i < 500; i++) {
            content.append(random.nextInt(300))
                    .append(' ')
                    .append(random.nextInt(300))
                    .append(" m S\n");
        }
        return content.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] locked(String user, String owner) throws IOException {
        try (PDDocument document = Loader.loadPDF(page(GOOD))) {
            document.protect(new StandardProtectionPolicy(owner, user, new AccessPermission()));
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("refused")
    void isRefusedWithOneLine(String name, byte[] bytes) {
        assertTimeout(LONGEST, () -> {
            try {
                PdfPattern.read("p.pdf", bytes, ScaleStatement.NONE, Optional.empty());
                throw new AssertionError("read");
            } catch (DrawingException refused) {
                assertIsOneLine(refused);
            }
        });
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("readable")
    void whatIsGoodIsRead(String name, byte[] bytes) {
        assertTimeout(
                LONGEST,
                () -> assertThat(PdfPattern.read("p.pdf", bytes, ScaleStatement.NONE, Optional.empty())
                                .pieces())
                        .anyMatch(piece -> piece.outline().squareMillimetres() == 7200));
    }

    /** The complaint says the file and what to do; where the library broke down, it did so in its own code. */
    static void assertIsOneLine(DrawingException refused) {
        assertThat(refused.getMessage())
                .startsWith("p.pdf")
                .doesNotContain("\n")
                .containsAnyOf("export", "save", "take", "remove", "correct", "move");
        if (refused.getCause() instanceof RuntimeException broken) {
            StackTraceElement where = Arrays.stream(broken.getStackTrace())
                    .filter(frame -> !frame.getClassName().startsWith("java."))
                    .findFirst()
                    .orElseThrow();
            assertThat(where.getClassName())
                    .as("thrown at %s: %s", where, broken)
                    .startsWith("org.apache.");
        }
    }

    /** What is passed over may have been a piece. */
    @ParameterizedTest
    @ValueSource(strings = {"goblin", "5 l", "1 2 3 m", "[ [ [", "/A << /A << ", "(", "1 2 3"})
    void whatIsNotUnderstoodIsSaid(String words) throws DrawingException {
        PatternDrawing drawing = PdfPattern.read("p.pdf", page(GOOD + words), ScaleStatement.NONE, Optional.empty());
        assertThat(drawing.pieces()).hasSize(1);
        assertThat(drawing.warnings())
                .hasSize(1)
                .allMatch(warning -> warning.startsWith("On page 1 ") && warning.contains("not understood"));
    }

    static Stream<String> endless() {
        return Stream.of(
                "[".repeat(1_000_000),
                "[".repeat(2_000) + GOOD,
                "/A ".concat("<< /A ".repeat(1_000_000)),
                "(".repeat(1_000_000));
    }

    @ParameterizedTest
    @MethodSource("endless")
    void whatHasNoEndIsSaidOrRefused(String words) {
        assertTimeout(LONGEST, () -> {
            try {
                assertThat(PdfPattern.read("p.pdf", page(words), ScaleStatement.NONE, Optional.empty())
                                .warnings())
                        .anyMatch(warning -> warning.contains("not understood"));
            } catch (DrawingException refused) {
                assertIsOneLine(refused);
            }
        });
    }
}
