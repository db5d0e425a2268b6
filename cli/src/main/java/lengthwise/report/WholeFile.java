package lengthwise.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file as a whole or not at all: to a temporary file beside it, which is then moved into its place. */
public final class WholeFile {
    private WholeFile() {}

    /** Writes text in UTF-8, replacing what was there. */
    public static void write(Path file, String text) throws IOException {
        write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /** Writes bytes, replacing what was there. */
    public static void write(Path file, byte[] bytes) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null) {
            throw new IOException("There is no folder to write " + file + " to.");
        }
        Files.createDirectories(folder);
        // Not the system's temporary file, which nobody else may read.
        Path temporary = folder.resolve(
                "." + file.getFileName() + "." + ProcessHandle.current().pid() + ".part");
        try {
            Files.write(temporary, bytes);
            try {
                Files.move(temporary, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException notHere) {
                Files.move(temporary, file, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(temporary);
        }
    }
}
