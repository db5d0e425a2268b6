package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

class PdfDrawingTest extends DrawingOfAKind {
    /** A rectangle of 288 by 576 points, 4 by 8 inches, with a grain line and its lettering. */
    private static final String CONTENT = "36 36 288 576 re S 180 100 m 180 500 l S 170 480 m 180 500 l 190 480 l S"
            + " BT /F 14 Tf 14 TL 60 560 Td (Plover) Tj T* (cut 1 pair) Tj ET";

    PdfDrawingTest() {
        super("plover.pdf", "Plover");
    }

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

    @Override
    void draw() throws IOException {
        job.write("plover.pdf", pdf(CONTENT));
    }

    @Test
    void whatIsDamagedAndStillReadIsSaid() {
        assertThat(job.run("inspect", job.path("plover.pdf"))).isZero();
        assertThat(job.said()).contains("is damaged");
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

    /** Two pages of 612 points that overlap by 36 (half an inch), with a band of 1000 points, 13.89 in, over both. */
    private void drawTiles() throws IOException {
        String band = "50 100 1000 144 re S";
        job.write(
                "band.pdf",
                """
                %%PDF-1.4
                1 0 obj << /Type /Catalog /Pages 2 0 R >> endobj
                2 0 obj << /Type /Pages /Kids [3 0 R 5 0 R] /Count 2 /MediaBox [0 0 612 792] >> endobj
                3 0 obj << /Type /Page /Parent 2 0 R /Contents 4 0 R >> endobj
                4 0 obj << /Length %d >>
                stream
                %s
                endstream
                endobj
                5 0 obj << /Type /Page /Parent 2 0 R /Contents 6 0 R >> endobj
                6 0 obj << /Length %d >>
                stream
                1 0 0 1 -576 0 cm %s
                endstream
                endobj
                """.formatted(band.length(), band, band.length() + 18, band)
                        + "trailer << /Size 7 /Root 1 0 R >>\n%%EOF\n");
    }

    @Test
    void pagesAreTapedTogetherAsTheMakerSays() throws IOException {
        drawTiles();
        assertThat(job.run("inspect", job.path("band.pdf"))).isZero();
        assertThat(job.said()).contains("tiles: {columns: 3, overlap: 20 mm}");
        assertThat(job.run("inspect", job.path("band.pdf"), "--tiles", "2", "--tile-overlap", "1/2 in"))
                .as(job.said())
                .isZero();
        assertThat(job.said()).contains("13.89 × 2.00").doesNotContain("tiles:");
        job.write("job.yaml", """
                version: 1
                drawings: [{file: band.pdf, tiles: {columns: 2, overlap: 1/2 in}}]
                fabrics:
                  cloth: {for: shell, width: 60 cm, direction: either-way}
                pieces:
                  (unnamed): {cut: {shell: 2 alike}, up: as-drawn}
                order:
                  - {make: 1}
                """);
        assertThat(job.marker(3, "markers")).as(job.said()).isZero();
        assertThat(job.check("markers/cloth.svg")).as(job.said()).isZero();
    }

    @Test
    void tilesAreForPages() throws IOException {
        drawTiles();
        job.write("plain.svg", "<svg xmlns='http://www.w3.org/2000/svg' width='9mm' height='9mm'/>");
        assertThat(job.run("inspect", job.path("plain.svg"), "--tiles", "2")).isEqualTo(3);
        assertThat(job.said()).contains("plain.svg is one drawing; tiles are said of a PDF");
        assertThat(job.run("inspect", job.path("band.pdf"), "--first-tile", "2"))
                .isEqualTo(2);
        assertThat(job.run("inspect", job.path("band.pdf"), "--tiles", "2", "--first-tile", "3"))
                .isEqualTo(3);
        assertThat(job.said()).contains("band.pdf has 2 pages");
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
