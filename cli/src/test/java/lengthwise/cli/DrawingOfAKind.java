package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A drawing of another kind stands wherever an SVG drawing can. */
abstract class DrawingOfAKind {
    @TempDir
    Path folder;

    JobFolder job = new JobFolder(Path.of(""));

    private final String file;
    private final String piece;

    /**
     * @param file its name
     * @param piece the name of the only piece on it, 4 by 8 inches, with a grain line up the page
     */
    DrawingOfAKind(String file, String piece) {
        this.file = file;
        this.piece = piece;
    }

    /** Draws the file, and others that the tests ask for. */
    abstract void draw() throws IOException;

    @BeforeEach
    void inAFolder() throws IOException {
        job = new JobFolder(folder);
        draw();
    }

    @Test
    void inspectShowsItsPieces() {
        assertThat(job.run("inspect", job.path(file), "--picture", job.path("seen.svg")))
                .as(job.said())
                .isZero();
        assertThat(job.said()).contains(piece, "101.6 × 203.2", "4.00 × 8.00", "90.0°");
        assertThat(folder.resolve("seen.svg")).content().contains(piece);
    }

    @Test
    void aJobLaysIt() throws IOException {
        job.write("job.yaml", """
                version: 1
                drawings: [{file: FILE, arrow-means: grain}]
                fabrics:
                  cloth: {for: shell, width: 60 cm, direction: either-way}
                pieces:
                  PIECE: {cut: {shell: 2}}
                order:
                  - {make: 1}
                """.replace("FILE", file).replace("PIECE", piece));
        assertThat(job.marker(3, "markers")).as(job.said()).isZero();
        assertThat(job.check("markers/cloth.svg")).as(job.said()).isZero();
        assertThat(job.said()).contains("2 contours");
    }
}
