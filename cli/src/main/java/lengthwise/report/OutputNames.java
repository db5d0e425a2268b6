package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import lengthwise.FabricRun;
import lengthwise.Run;

/** What the files of a run are called, fabric by fabric. */
final class OutputNames {
    private OutputNames() {}

    /**
     * Returns a name without an ending for each fabric: the fabric's own, with what a file system may refuse replaced
     * by "-"; numbered where two would be the same on a system that does not tell capitals apart.
     */
    static List<String> of(Run run) {
        List<String> names = new ArrayList<>();
        List<String> taken = new ArrayList<>(List.of("report"));
        for (FabricRun fabric : run.fabrics()) {
            String plain = plain(fabric.marker().order().fabric().name());
            String name = plain;
            for (int i = 2; taken.contains(name.toLowerCase(Locale.ROOT)); i++) {
                name = plain + "-" + i;
            }
            taken.add(name.toLowerCase(Locale.ROOT));
            names.add(name);
        }
        return names;
    }

    static String plain(String name) {
        String plain = name.strip()
                .replaceAll("[\\p{Cntrl}\\p{Cs}\\\\/:*?\"<>|]+", "-")
                .replaceAll("^\\.+|\\.+$", "");
        String shortened = plain.codePointCount(0, plain.length()) > 60
                ? plain.substring(0, plain.offsetByCodePoints(0, 60))
                : plain;
        return shortened.isBlank() ? "fabric" : shortened;
    }
}
