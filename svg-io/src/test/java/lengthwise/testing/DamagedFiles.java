package lengthwise.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.PieceEdges;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files of a kind that were damaged, some of which refer to other files: pieces or one line, and nothing else is opened. */
public abstract class DamagedFiles {
    @TempDir
    protected Path folder;

    /** Returns whole files, among them such that refer to each of the decoys in every way that there is. */
    protected abstract Mutants files(Decoys decoys) throws Exception;

    /** Whatever is read is measured too. */
    protected static void measure(PatternDrawing drawing) {
        for (DrawnPiece piece : drawing.pieces()) {
            PieceEdges edges = PieceEdges.of(piece);
            for (PieceEdges.Section section : edges.sections()) {
                assertThat(section.length().micrometres()).isNotNegative();
            }
            assertThat(edges.whole().micrometres()).isPositive();
        }
    }

    @Test
    void damagedFiles() throws Exception {
        try (Decoys decoys = new Decoys(folder)) {
            files(decoys).few(1);
            decoys.assertUntouched();
        }
    }

    @Tag("long")
    @Test
    void damagedFilesForAnHour() throws Exception {
        try (Decoys decoys = new Decoys(folder)) {
            files(decoys).many();
            decoys.assertUntouched();
        }
    }
}
