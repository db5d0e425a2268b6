package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BareJobTest {
    @TempDir
    Path folder;

    @Test
    void aDrawingIsNamedFromTheFolderOfTheJob() {
        assertThat(BareJob.relative(folder.resolve("out"), folder.resolve("drawings/top.svg")))
                .isEqualTo("../drawings/top.svg");
    }

    /** The root of an archive stands here for another drive: no path leads from one to the other. */
    @Test
    void aDrawingUnderAnotherRootIsNamedByItsWholePath() throws Exception {
        Path archive = folder.resolve("other-drive.zip");
        try (FileSystem drive = FileSystems.newFileSystem(archive, Map.of("create", "true"))) {
            assertThat(BareJob.relative(folder, drive.getPath("/drawings/top.svg")))
                    .isEqualTo("/drawings/top.svg");
        }
    }
}
