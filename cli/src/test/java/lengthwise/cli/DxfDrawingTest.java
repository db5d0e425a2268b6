package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

class DxfDrawingTest extends DrawingOfAKind {
    /** A rectangle of 4 by 8 units on a layer named as the piece, with a grain line. */
    private static final String ENTITIES = String.join(
            "\n",
            "0 SECTION 2 ENTITIES 0 LWPOLYLINE 8 plover 90 4 70 1 10 0 20 0 10 4 20 0 10 4 20 8 10 0 20 8"
                    .replace(' ', '\n'),
            "0 LINE 8 grain 10 2 20 1 11 2 21 7 0 ENDSEC 0 EOF\n".replace(' ', '\n'));

    private static final String INCHES = "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n1\n0\nENDSEC\n";

    DxfDrawingTest() {
        super("plover.dxf", "plover");
    }

    @Override
    void draw() throws IOException {
        job.write("plover.dxf", INCHES + ENTITIES);
        job.write("unsaid.dxf", ENTITIES);
    }

    private int marker(String... words) {
        String[] all = new String[words.length + 8];
        all[0] = "marker";
        System.arraycopy(words, 0, all, 1, words.length);
        String[] more = {"--iterations", "3", "--workers", "1", "--out", job.path("markers")};
        System.arraycopy(more, 0, all, words.length + 1, more.length);
        all[all.length - 1] = "--stacktrace";
        return job.run(all);
    }

    /** The unit is asked for, with the key of the answer; both answers are taken. */
    @Test
    void theUnitIsAskedForWhereNothingSaysIt() throws IOException {
        String drawing = job.path("unsaid.dxf");
        assertThat(marker(drawing, "--width", "60 cm")).isEqualTo(3);
        assertThat(job.said()).contains("unsaid.dxf", "drawing-unit: 1 mm", "drawing-unit: 1 in");
        assertThat(marker(drawing, "--width", "60 cm", "--drawing-unit", "1 in"))
                .as(job.said())
                .isZero();
        assertThat(Files.exists(folder.resolve("markers/cloth.svg"))).isTrue();
        assertThat(job.run("inspect", "--drawing-unit", "1 cm", drawing)).isZero();
        assertThat(job.said()).contains("40.0 × 80.0").doesNotContain("warning");
        assertThat(job.run("inspect", "--drawing-unit", "ten", drawing)).isEqualTo(2);
    }

    @Test
    void aDamagedFileIsRefusedWithItsLine() throws IOException {
        job.write("damaged.dxf", INCHES + ENTITIES.replace("8\nplover", "8\nplover\nnonsense"));
        assertThat(job.run("inspect", job.path("damaged.dxf"))).isEqualTo(3);
        assertThat(job.said()).contains("damaged.dxf, line 19:", "\"nonsense\"", "export it again");
    }
}
