package lengthwise.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.svg.MarkerNotes;
import lengthwise.svg.MarkerSvg;

/** Every file of a plan, in one folder. */
public final class PlanFiles {
    private PlanFiles() {}

    /**
     * Writes the cut ticket, the plan for machines, and a marker, a placement sheet and a job file for each lay. Every text is complete before
     * the first file is replaced.
     */
    public static void write(PlanRun plan, Path folder) throws IOException {
        List<FabricRun> lays =
                plan.cloths().stream().flatMap(cloth -> cloth.lays().stream()).toList();
        Run run = new Run(
                plan.job(), plan.version(), plan.seed(), plan.workers(), plan.reproducible(), lays, plan.warnings());
        List<String> jobs =
                plan.cloths().stream().flatMap(cloth -> cloth.jobs().stream()).toList();
        List<String> names = OutputNames.of(run);
        List<List<String>> byCloth = new ArrayList<>();
        int next = 0;
        for (PlanRun.Cloth cloth : plan.cloths()) {
            byCloth.add(names.subList(next, next + cloth.lays().size()));
            next += cloth.lays().size();
        }
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put("plan.html", PlanHtml.of(plan, byCloth));
        for (int i = 0; i < lays.size(); i++) {
            FabricRun lay = lays.get(i);
            MarkerNotes notes = new MarkerNotes(
                    plan.job(),
                    "Lengthwise " + plan.version(),
                    "",
                    lay.assumptions().stream().map(FabricRun.Assumption::text).toList(),
                    lay.surplus());
            texts.put(names.get(i) + ".svg", MarkerSvg.of(lay.marker(), notes));
            texts.put(names.get(i) + "-placement.html", PlacementSheet.of(run, lay));
            texts.put(names.get(i) + ".yaml", jobs.get(i));
        }
        texts.put("plan.json", PlanJson.of(plan));
        for (Map.Entry<String, String> entry : texts.entrySet()) {
            WholeFile.write(folder.resolve(entry.getKey()), entry.getValue());
        }
    }
}
