package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A PDF drawing stands wherever an SVG drawing can. */
class PdfDrawingTest {
    /** A rectangle of 288 by 576 points, 4 by 8 inches, with a grain line and its lettering. */
    private static final String CONTENT = "36 36 288 576 re S 180 100 m 180 500 l S 170 480 m 180 500 l 190 480 l S"
            + " BT /F 14 Tf 14 TL 60 560 Td (Plover) Tj T* (cut 1 pair) Tj ET";

    @TempDir
    private Path folder;

    private JobFolder job = new JobFolder(Path.of(""));

    /** Without a table of its objects, which readers then look for. */
    private static String pdf(String content) {
        return """
                %%PDF-1.4
                1 0 obj << /Type /Catalog /Pages 2 0 R >> endobj
                2 0 obj << /Type /Pages /Kids [3 0 R] /Count 1 >> endobj
                3 0 obj << /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R /Resources << /Font << /F
                << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >> >> >> endobj
                4 0 obj << /Length %d >>
                stream
                %s
                endstream
                endobj
                """.formatted(content.length(), content) + "trailer << /Size 5 /Root 1 0 R >>\n%%EOF\n";
    }

    @BeforeEach
    void draw() throws IOException {
        job = new JobFolder(folder);
        job.write("plover.pdf", pdf(CONTENT));
    }

    @Test
    void inspectShowsItsPieces() {
        assertThat(job.run("inspect", job.path("plover.pdf"), "--picture", job.path("seen.svg")))
                .as(job.said())
                .isZero();
        assertThat(job.said()).contains("Plover", "101.6 × 203.2", "4.00 × 8.00", "90.0°", "is damaged");
        assertThat(folder.resolve("seen.svg")).content().contains("Plover");
    }

    @Test
    void aBareDrawingIsLaidByItsLettering() {
        assertThat(job.run(
                        "marker",
                        job.path("plover.pdf"),
                        "--width",
                        "60 cm",
                        "--direction",
                        "either-way",
                        "--iterations",
                        "3",
                        "--workers",
                        "1",
                        "--out",
                        job.path("markers")))
                .as(job.said())
                .isZero();
        assertThat(folder.resolve("markers/cloth.svg")).content().contains("Plover");
    }

    @Test
    void aJobLaysIt() throws IOException {
        job.write("job.yaml", """
                version: 1
                drawings: [{file: plover.pdf, arrow-means: grain}]
                fabrics:
                  cloth: {for: shell, width: 60 cm, direction: either-way}
                pieces:
                  Plover: {cut: {shell: 2}}
                order:
                  - {make: 1}
                """);
        assertThat(job.marker(3, "markers")).as(job.said()).isZero();
        assertThat(job.check("markers/cloth.svg")).as(job.said()).isZero();
        assertThat(job.said()).contains("2 contours");
    }

    @Test
    void aDamagedFileIsRefusedWithItsPage() throws IOException {
        job.write("damaged.pdf", pdf(CONTENT).replace("<< /Length", "<< /Filter /FlateDecode /Length"));
        assertThat(job.run("inspect", job.path("damaged.pdf"))).isEqualTo(3);
        assertThat(job.said()).contains("damaged.pdf, page 1:", "export the pattern again");
        Files.writeString(folder.resolve("none.pdf"), "<svg/>");
        assertThat(job.run("inspect", job.path("none.pdf"))).isEqualTo(3);
        assertThat(job.said()).contains("none.pdf is no PDF file");
    }
}
