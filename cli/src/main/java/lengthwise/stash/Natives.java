package lengthwise.stash;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;

/**
 * Where SQLite's native library comes from: a folder {@code lib/native} beside the program's jar, where it lies unpacked;
 * else its own jar, which unpacks it into the temporary directory at each start.
 */
final class Natives {
    private Natives() {}

    /** Tells SQLite before it is first used. */
    static void announce() {
        try {
            CodeSource source = Natives.class.getProtectionDomain().getCodeSource();
            if (source == null) {
                return;
            }
            Path unpacked =
                    Path.of(source.getLocation().toURI()).resolveSibling("lib").resolve("native");
            String library = System.mapLibraryName("sqlitejdbc");
            if (Files.exists(unpacked.resolve(library))) {
                System.setProperty("org.sqlite.lib.path", unpacked.toString());
                System.setProperty("org.sqlite.lib.name", library);
            }
        } catch (URISyntaxException | RuntimeException noFolder) {
            // its own jar then
        }
    }
}
