package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What plotters, cutting machines and screens get of a marker: two squares of 100 mm that touch, laid for it. */
@Tag("written")
class ExportMachinesTest {
    private static final String JOB = """
            version: 1
            units: mm
            fabrics:
              felt: {width: 100, unusable-edge: {each-side: 0}, direction: either-way, sold-by: 100, spread: {form: single-layer}}
            pieces:
              square: {strip: {cut-width: 100, length: 100}, runs: lengthwise, cut: 2}
            gap: GAP
            order: [{make: 1}]
            """;

    @TempDir
    private Path folder;

    private JobFolder job = new JobFolder(Path.of(""));

    @BeforeEach
    void lay() throws IOException {
        job = new JobFolder(folder);
        lay("0");
    }

    private void lay(String gap) throws IOException {
        job.write("job.yaml", JOB.replace("GAP", gap));
        assertThat(job.marker(5, "markers")).as(job.said()).isZero();
    }

    private int export(String as, String out, String... more) {
        String[] words = {"export", job.path("markers/felt.svg"), "--as", as, "--out", job.path(out)};
        return job.run(Stream.of(words, more).flatMap(Arrays::stream).toArray(String[]::new));
    }

    @Test
    void aSharedEdgeIsCutOnceAndTheTimeIsSaid() throws IOException {
        assertThat(export("cutter-svg", "cut.svg", "--preview", job.path("way.svg"), "--speed", "80"))
                .as(job.said())
                .isZero();
        // 700 mm of cut and 100 mm between at 80 mm/s: 10 s.
        assertThat(job.said())
                .contains(
                        "2 contours",
                        "Cut 70 cm (27 1/2 in), travel 10 cm",
                        "0 min 10 s at 80 mm/s",
                        "caution: ",
                        "fumes",
                        "PVC");
        assertThat(job.read("cut.svg")).contains("<svg", "data-cut=\"outline\"").doesNotContain("<text");
        assertThat(job.read("way.svg")).contains("id=\"order\"", "0 min 10 s at 80 mm/s");
    }

    @Test
    void aKerfNeedsRoomBetweenPieces() throws IOException {
        assertThat(export("cutter-svg", "cut.svg", "--kerf", "0.2 mm")).isEqualTo(3);
        assertThat(job.said()).contains("square of garment 1", "kerf", "gap");
        assertThat(Files.exists(folder.resolve("cut.svg"))).isFalse();
        lay("1");
        assertThat(export("cutter-svg", "cut.svg", "--kerf", "0.2 mm"))
                .as(job.said())
                .isZero();
        assertThat(job.said()).contains("Cut 80.2 cm");
    }

    @Test
    void aPlotIsInPlotterUnitsAndSaysItsPens() throws IOException {
        assertThat(export("hpgl", "felt.plt")).as(job.said()).isZero();
        assertThat(job.read("felt.plt")).startsWith("IN;\nPS").contains("SP1;", "SP2;", "SP3;");
        assertThat(job.said()).contains("Pen 1", "hundredths of a millimetre", "check square", "--plotter-units");
        assertThat(export("hpgl", "felt.plt", "--frame", "20 cm", "--overlap-marks", "--roll-axis", "y"))
                .as(job.said())
                .isZero();
        assertThat(job.read("felt.plt").split("PG;", -1)).hasSize(3);
    }

    @Test
    void aPictureIsAsWideAsAsked() throws IOException {
        assertThat(export("png", "felt.png", "--pixels", "640")).as(job.said()).isZero();
        BufferedImage image = ImageIO.read(folder.resolve("felt.png").toFile());
        assertThat(image.getWidth()).isEqualTo(640);
    }

    @Test
    void wrongUseIsSaidInOneLineAndNothingIsWritten() {
        assertThat(export("png", "x", "--kerf", "1 mm")).isEqualTo(2);
        assertThat(job.said()).contains("--kerf goes with --as cutter-svg, not with png");
        assertThat(export("png", "x", "--pixels", "9")).isEqualTo(2);
        assertThat(job.said()).contains("from 16 to 30000");
        assertThat(export("cutter-svg", "x", "--kerf", "2")).isEqualTo(2);
        assertThat(job.said()).contains("--kerf");
        assertThat(export("cutter-svg", "x", "--kerf", "2 cm")).isEqualTo(2);
        assertThat(job.said()).contains("from 0 to 10 mm");
        assertThat(export("cutter-svg", "x", "--speed", "0")).isEqualTo(2);
        assertThat(export("cutter-svg", "x", "--preview", job.path("markers/felt.svg")))
                .isEqualTo(2);
        assertThat(job.said()).contains("would replace the marker");
        assertThat(export("cutter-svg", "x", "--preview", job.path("x"))).isEqualTo(2);
        assertThat(job.said()).contains("same file");
        assertThat(export("hpgl", "x", "--overlap-marks")).isEqualTo(2);
        assertThat(export("hpgl", "x", "--frame", "1 cm")).isEqualTo(2);
        assertThat(job.said()).contains("from 100 to");
        assertThat(export("hpgl", "x", "--roll-axis", "z")).isEqualTo(2);
        assertThat(Files.exists(folder.resolve("x"))).isFalse();
    }
}
