package lengthwise.testing;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files of a kind that were damaged, some of which refer to other files: pieces or one line, and nothing else is opened. */
public abstract class DamagedFiles {
    @TempDir
    protected Path folder;

    /** Returns whole files, among them such that refer to each of the decoys in every way that there is. */
    protected abstract Mutants files(Decoys decoys) throws Exception;

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
