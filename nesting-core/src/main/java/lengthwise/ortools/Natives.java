package lengthwise.ortools;

import com.google.ortools.Loader;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;

/**
 * Loads the native library of OR-Tools, once, when first asked. Files unpacked beforehand into a folder {@code native}
 * beside the jar are loaded at once; otherwise OR-Tools unpacks its own into the temporary directory, which takes half a
 * second.
 */
public final class Natives {
    private static final boolean LOADED = load();

    private Natives() {}

    /** Says whether linear programs can be solved here. */
    public static boolean areLoaded() {
        return LOADED;
    }

    private static boolean load() {
        try {
            Path unpacked = besideTheJar();
            if (Files.exists(unpacked)) {
                System.load(unpacked.toAbsolutePath().toString());
            } else {
                Loader.loadNativeLibraries();
            }
            return true;
        } catch (LinkageError | RuntimeException | URISyntaxException e) {
            // no library for this platform, or no room to unpack it: the search does without
            return false;
        }
    }

    private static Path besideTheJar() throws URISyntaxException {
        CodeSource source = Natives.class.getProtectionDomain().getCodeSource();
        Path jar = source == null
                ? Path.of("")
                : Path.of(source.getLocation().toURI()).toAbsolutePath();
        Path folder = jar.getParent() == null ? jar : jar.getParent();
        return folder.resolve("native").resolve(System.mapLibraryName("jniortools"));
    }
}
