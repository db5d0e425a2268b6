package lengthwise.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import lengthwise.job.JobFabric;
import lengthwise.job.JobFile;
import lengthwise.job.JobPlan;
import lengthwise.job.JobPlan.Bolt;
import lengthwise.job.LengthText;
import lengthwise.job.LengthUnit;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.plan.lays.BoltPlies;
import lengthwise.report.PlanRun;
import lengthwise.stash.Draw;
import lengthwise.stash.Stash;
import lengthwise.stash.StashCloth;
import lengthwise.stash.StashException;
import org.jspecify.annotations.Nullable;

/**
 * The bolts of a plan that come from the stash: all that go with the job are reserved before it is planned, those that plies
 * are cut from are spent when it is written, and the others are free again.
 */
final class BoltsFromStash implements AutoCloseable {
    private final @Nullable Stash stash;
    private final @Nullable Draw draw;
    private final Map<String, StashCloth> reserved = new LinkedHashMap<>();

    private BoltsFromStash(@Nullable Stash stash, @Nullable Draw draw) {
        this.stash = stash;
        this.draw = draw;
    }

    /** Opens the stash where the plan takes its bolts from there. */
    static BoltsFromStash of(JobFile file, Path where) throws StashException {
        if (file.job().plan().filter(JobPlan::fromStash).isEmpty()) {
            return new BoltsFromStash(null, null);
        }
        Stash stash = Stash.open(where);
        return new BoltsFromStash(stash, stash.draw());
    }

    /** Returns the job with the bolts that were reserved for it. */
    JobFile reserved(JobFile file, PrintWriter err) throws StashException {
        if (draw == null) {
            return file;
        }
        JobPlan plan = file.job().plan().orElseThrow();
        List<Bolt> bolts = new ArrayList<>();
        for (JobFabric fabric : file.job().fabrics()) {
            Set<String> ordered = new TreeSet<>();
            if (!plan.oneColour().contains(fabric.name())) {
                file.job().order().forEach(line -> line.colour().ifPresent(ordered::add));
            }
            Set<String> colours = new TreeSet<>();
            for (StashCloth cloth : draw.free(fabric.name())) {
                Optional<String> why = unfit(cloth, fabric, ordered);
                if (why.isPresent()) {
                    err.println("%s: %s stays in the stash: %s.".formatted(fabric.name(), cloth.name(), why.get()));
                    continue;
                }
                StashCloth got = taken(cloth.name());
                if (got != null) {
                    got.colour().ifPresent(colours::add);
                    reserved.put(got.name(), got);
                    bolts.add(new Bolt(
                            Optional.of(got.name()),
                            fabric.name(),
                            ordered.isEmpty() ? Optional.empty() : got.colour(),
                            got.there().length(),
                            Optional.of(got.width())));
                }
            }
            if (ordered.isEmpty() && colours.size() > 1) {
                throw new StashException("%s: the stash has it in %s; give the lines of the order a colour"
                        .formatted(fabric.name(), String.join(", ", colours)));
            }
        }
        return file.withBolts(bolts);
    }

    private @Nullable StashCloth taken(String name) {
        try {
            return Objects.requireNonNull(draw).reserve(name);
        } catch (StashException anotherRunWasFaster) {
            return null;
        }
    }

    /** Returns why the markers of a fabric cannot be laid on a cloth of it, a clause. */
    private static Optional<String> unfit(StashCloth cloth, JobFabric fabric, Set<String> colours) {
        if (!cloth.isStraight()) {
            return Optional.of("plies are cut from straight pieces");
        }
        if (!cloth.flaws().isEmpty()) {
            return Optional.of("it has flaws, and a flaw lies in one ply");
        }
        if (cloth.width().compareTo(fabric.width()) < 0) {
            return Optional.of("it is %s wide, and the job says %s"
                    .formatted(
                            LengthText.print(cloth.width(), LengthUnit.CM),
                            LengthText.print(fabric.width(), LengthUnit.CM)));
        }
        if (!colours.isEmpty() && cloth.colour().filter(colours::contains).isEmpty()) {
            return Optional.of(
                    cloth.colour().isEmpty()
                            ? "its colour is not known"
                            : "nothing is ordered in " + cloth.colour().get());
        }
        if (cloth.shrinkage().isPresent() && !cloth.shrinkage().equals(fabric.shrinkage())) {
            return Optional.of("it shrinks otherwise than the job says");
        }
        if (cloth.direction().isPresent() && !cloth.direction().equals(fabric.direction())) {
            return Optional.of("its direction is not that of the job");
        }
        if (cloth.edge().isPresent() && !cloth.edge().equals(fabric.unusableEdge())) {
            return Optional.of("its unusable edges are not those of the job");
        }
        return Optional.empty();
    }

    /** Says that the plan is written from now on. */
    void writesTo(Path folder) throws StashException {
        if (draw != null) {
            draw.writesTo(folder);
        }
    }

    /** Spends the bolts that plies are cut from and puts back what is left on them. */
    void spend(PlanRun run, Path folder, PrintWriter err) throws StashException {
        if (draw == null) {
            return;
        }
        List<Draw.Spent> spent = new ArrayList<>();
        for (PlanRun.Cloth cloth : run.cloths()) {
            for (PlanRun.Bolts bolts : cloth.bolts()) {
                if (bolts.plies().isPresent()) {
                    spent.addAll(spent(cloth.fabric(), bolts, bolts.plies().get()));
                }
            }
        }
        draw.spend(
                spent,
                List.of(),
                "cut for %s in %s".formatted(run.job(), folder.toAbsolutePath().normalize()));
        err.println(
                spent.isEmpty()
                        ? "Stash: nothing is taken from it."
                        : "Stash: %s begun or spent. Not cut after all: lengthwise stash give-back NAME, for each."
                                .formatted(String.join(
                                        ", ",
                                        spent.stream().map(Draw.Spent::name).toList())));
    }

    private List<Draw.Spent> spent(Fabric fabric, PlanRun.Bolts bolts, BoltPlies plies) {
        List<Draw.Spent> spent = new ArrayList<>();
        for (int i = 0; i < bolts.names().size(); i++) {
            StashCloth cloth = reserved.get(bolts.names().get(i).orElse(""));
            if (cloth == null || plies.plies().get(i).stream().allMatch(count -> count == 0)) {
                continue;
            }
            Length used = cloth.there().length().minus(plies.left().get(i));
            StashCloth cut = (fabric.isWashedFirst() ? cloth.shrinking(fabric.shrinkage()) : cloth).asCut();
            spent.add(new Draw.Spent(
                    cloth.name(),
                    cut.withoutStart(used.scaled(fabric.lengthKept())).stream().toList()));
        }
        return spent;
    }

    @Override
    public void close() throws StashException {
        try {
            if (draw != null) {
                draw.close();
            }
        } finally {
            if (stash != null) {
                stash.close();
            }
        }
    }
}
