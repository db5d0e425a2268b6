package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.model.Fabric;

/**
 * Writes a job with every choice that was assumed filled in, so that a maker who gave only a drawing and a width finds
 * what there is to choose. It gives the same orders as before.
 */
public final class FilledJob {
    private FilledJob() {}

    /** Returns the text of the job file; the assumptions stand at its head as comments. */
    public static String text(Job job, Orders orders) {
        List<String> notes = new ArrayList<>();
        for (FabricOrder fabric : orders.fabrics()) {
            fabric.assumptions()
                    .forEach(assumption -> notes.add("Assumed for %s: %s"
                            .formatted(fabric.order().fabric().name(), assumption.text())));
        }
        return JobWriter.text(of(job, orders), notes);
    }

    static Job of(Job job, Orders orders) {
        return new Job(
                job.title(),
                job.units(),
                job.drawings().stream().map(FilledJob::filled).toList(),
                job.fabrics().stream().map(said -> filled(said, orders)).toList(),
                job.pieces(),
                orders.fabrics().stream().map(fabric -> fabric.order().gap()).findFirst(),
                job.cuttingTool(),
                job.sizes(),
                job.order(),
                job.plan(),
                job.sewing());
    }

    private static JobDrawing filled(JobDrawing drawing) {
        return new JobDrawing(
                drawing.file(),
                drawing.scale(),
                drawing.tiles(),
                drawing.size(),
                drawing.seamAllowance().or(() -> Optional.of(SeamAllowance.INCLUDED)),
                drawing.arrowMeans().or(() -> Optional.of(ArrowMeaning.GRAIN)));
    }

    private static JobFabric filled(JobFabric said, Orders orders) {
        Optional<Fabric> made = orders.fabrics().stream()
                .map(fabric -> fabric.order().fabric())
                .filter(fabric -> fabric.name().equals(said.name()))
                .findFirst();
        return new JobFabric(
                said.name(),
                said.role(),
                said.width(),
                made.map(Fabric::unusableEdge).or(said::unusableEdge),
                made.map(Fabric::direction).or(said::direction),
                said.mostStretch(),
                said.rightSide(),
                said.repeat(),
                made.map(Fabric::shrinkage).or(said::shrinkage),
                made.map(fabric -> said.spread().filled(fabric.spread())).orElse(said.spread()),
                said.price(),
                made.map(Fabric::soldBy).or(said::soldBy),
                said.flaws(),
                said.there(),
                said.pile(),
                said.cutAlready(),
                said.across(),
                said.buying());
    }
}
