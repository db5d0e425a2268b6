package lengthwise.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.SharedRun;
import lengthwise.model.LengthWords;
import lengthwise.svg.MarkerNotes;
import lengthwise.svg.MarkerSvg;

/** Every file of a run, in one folder. */
public final class RunFiles {
    private RunFiles() {}

    /**
     * Writes a marker and a placement sheet for each fabric, and the report for people and for machines. Every text is
     * complete before the first file is replaced.
     *
     * @return the files, in the order in which a reader wants them
     */
    public static List<Path> write(Run run, Path folder) throws IOException {
        Map<String, String> texts = texts(run);
        for (Map.Entry<String, String> entry : texts.entrySet()) {
            WholeFile.write(folder.resolve(entry.getKey()), entry.getValue());
        }
        return texts.keySet().stream().map(folder::resolve).toList();
    }

    /** Returns the name of the file that a marker for a fabric has. */
    public static String markerName(String fabric) {
        return OutputNames.plain(fabric) + ".svg";
    }

    /** Returns a warning for each marker in the folder whose cloth this run cuts nothing from: it is of an earlier one. */
    public static List<String> leftFromBefore(Run run, Path folder) {
        return run.shared().stream()
                .flatMap(shared -> shared.cloths().stream())
                .filter(cloth -> SharedRun.of(cloth, run).isEmpty())
                .map(cloth -> folder.resolve(markerName(cloth.name())))
                .filter(Files::exists)
                .map(marker -> "%s is from an earlier run, and this one cuts nothing from that cloth: do not cut by it."
                        .formatted(marker))
                .toList();
    }

    /** Returns the text of each file by its name. */
    static Map<String, String> texts(Run run) {
        List<String> names = OutputNames.of(run);
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put("report.html", ReportHtml.of(run, names));
        for (int i = 0; i < names.size(); i++) {
            FabricRun fabric = run.fabrics().get(i);
            texts.put(names.get(i) + ".svg", MarkerSvg.of(fabric.marker(), notes(run, fabric)));
            texts.put(names.get(i) + "-placement.html", PlacementSheet.of(run, fabric));
        }
        texts.put("report.json", ReportJson.of(run, names));
        return texts;
    }

    private static MarkerNotes notes(Run run, FabricRun fabric) {
        boolean there = fabric.marker().order().fabric().onHand().isPresent();
        return new MarkerNotes(
                run.job(),
                "Lengthwise " + run.version(),
                there ? "" : LengthWords.toBuy(run.toBuy(fabric)),
                fabric.assumptions().stream().map(FabricRun.Assumption::text).toList(),
                fabric.surplus());
    }
}
