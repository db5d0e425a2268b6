package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("written")
class ExportCommandTest {
    private static final String DRAWING = "<svg xmlns='http://www.w3.org/2000/svg' width='400mm' height='300mm'"
            + " viewBox='0 0 400 300' fill='none' stroke='#000'><g id='plover'><path class='cut' d='M50 50H150V250H50Z'/>"
            + "<path class='grain' d='M100 220V80M95 90L100 80L105 90'/><text x='70' y='150' font-size='5'>cut 2</text>"
            + "</g></svg>";

    @TempDir
    private Path folder;

    private JobFolder job = new JobFolder(Path.of(""));

    @BeforeEach
    void lay() throws IOException {
        job = new JobFolder(folder);
        job.write("plover.svg", DRAWING);
        assertThat(job.run(
                        "marker",
                        job.path("plover.svg"),
                        "--width",
                        "60 cm",
                        "--iterations",
                        "5",
                        "--workers",
                        "1",
                        "--out",
                        job.path("markers")))
                .as(job.said())
                .isZero();
    }

    private int export(String as, String out) {
        return job.run("export", job.path("markers/cloth.svg"), "--as", as, "--out", job.path(out));
    }

    @Test
    void writesTheLinesToCutWithACaution() throws IOException {
        assertThat(export("dxf-lines", "plover.dxf")).as(job.said()).isZero();
        assertThat(job.read("plover.dxf"))
                .contains("AC1009")
                .endsWith("EOF\r\n")
                .doesNotContain("GRAIN");
        assertThat(job.said()).contains("2 contours", "caution: ", "fumes");
    }

    /** As it is printed: a piece moved over another by hand is no piece to cut. */
    @Test
    void aMarkerThatFailsItsCheckIsNotWritten() throws IOException {
        String given = job.path("markers/job.yaml");
        for (String as : new String[] {"dxf", "dxf-lines", "hpgl", "cutter-svg", "png"}) {
            String out = job.path("good." + as);
            assertThat(job.run("export", job.path("markers/cloth.svg"), "--as", as, "--out", out, "--job", given))
                    .as(job.said())
                    .isZero();
            assertThat(job.said()).doesNotContain("not checked");
        }
        String marker = job.read("markers/cloth.svg");
        int first = marker.indexOf(" d=\"", marker.indexOf("id=\"piece-1\""));
        int second = marker.indexOf(" d=\"", marker.indexOf("id=\"piece-2\""));
        String data = marker.substring(first, marker.indexOf('"', first + 4));
        job.write(
                "markers/cloth.svg",
                marker.substring(0, second) + data + marker.substring(marker.indexOf('"', second + 4)));
        assertThat(job.run(
                        "export",
                        job.path("markers/cloth.svg"),
                        "--as",
                        "dxf",
                        "--out",
                        job.path("bad.dxf"),
                        "--job",
                        given))
                .isEqualTo(5);
        assertThat(job.said()).contains("cloth.svg: do not cut, and so not written", "plover");
        assertThat(Files.exists(folder.resolve("bad.dxf"))).isFalse();
        assertThat(export("dxf", "bad.dxf")).isZero();
        assertThat(job.said()).contains("not checked");
    }

    @Test
    void wrongUseSaysWhatIsPossible() {
        assertThat(export("dwg", "plover.dwg")).isEqualTo(2);
        assertThat(job.said()).contains("dxf, dxf-lines", "not dwg");
        assertThat(export("dxf", "markers/cloth.svg")).isEqualTo(2);
        assertThat(job.said()).contains("would replace the marker");
    }

    @Test
    void whatIsNoMarkerIsRefusedAndNothingIsWritten() {
        assertThat(job.run("export", job.path("plover.svg"), "--as", "dxf", "--out", job.path("p.dxf")))
                .isEqualTo(3);
        assertThat(job.said()).contains("plover.svg", "not a marker");
        assertThat(Files.exists(folder.resolve("p.dxf"))).isFalse();
        assertThat(job.run("export", job.path("none.svg"), "--as", "dxf", "--out", job.path("p.dxf")))
                .isEqualTo(3);
    }
}
