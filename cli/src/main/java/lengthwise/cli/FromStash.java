package lengthwise.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.job.FabricOrder;
import lengthwise.job.Job;
import lengthwise.job.JobBuying;
import lengthwise.job.JobException;
import lengthwise.job.JobFabric;
import lengthwise.job.JobFile;
import lengthwise.job.JobWriter;
import lengthwise.job.Orders;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.MarkerOrder;
import lengthwise.stash.Draw;
import lengthwise.stash.Stash;
import lengthwise.stash.StashCloth;
import lengthwise.stash.StashException;
import lengthwise.workshop.ShoppingList;
import lengthwise.workshop.StashDraw;
import org.jspecify.annotations.Nullable;

/** The cloth of a run that comes from the stash: reserved before the search, spent when the markers are written. */
final class FromStash implements AutoCloseable {
    private final boolean keep;
    private final @Nullable Stash stash;
    private final @Nullable Draw draw;
    private final Map<String, StashCloth> drawn = new LinkedHashMap<>();
    private JobFile file;

    /** Says whether a marker order fits on its cloth, by a short search. */
    @FunctionalInterface
    interface Trying {
        boolean fits(MarkerOrder order);
    }

    private FromStash(JobFile file, boolean keep, @Nullable Stash stash, @Nullable Draw draw) {
        this.file = file;
        this.keep = keep;
        this.stash = stash;
        this.draw = draw;
    }

    /**
     * Reserves what a job takes from the stash.
     *
     * @param keep whether what the markers leave goes into the stash, which is made where there is none
     */
    static FromStash of(JobFile file, Path where, boolean keep, Trying trying, PrintWriter err)
            throws StashException, JobException {
        boolean draws = file.job().fabrics().stream()
                .anyMatch(fabric -> fabric.buying().from().isPresent());
        if (!draws && !keep) {
            return new FromStash(file, false, null, null);
        }
        Stash stash = draws ? Stash.open(where) : Stash.openOrMake(where);
        FromStash cloth = new FromStash(file, keep, stash, stash.draw());
        try {
            for (JobFabric fabric : file.job().fabrics()) {
                if (fabric.buying().from().isPresent()) {
                    cloth.reserve(fabric, fabric.buying().from().get(), trying, err);
                }
            }
            return cloth;
        } catch (StashException | JobException | RuntimeException wrong) {
            cloth.close();
            throw wrong;
        }
    }

    /** Returns the job with its fabrics as the cloths that were reserved. */
    JobFile file() {
        return file;
    }

    /** Returns the text of the job with the cloths that it was laid on, where there are any; the markers are checked by it. */
    Optional<String> asLaid(Job job, Path folder) {
        return drawn.isEmpty()
                ? Optional.empty()
                : Optional.of(JobWriter.text(
                        job.seenFrom(folder, file.folder()),
                        List.of("The job on the cloth that came from the stash: its markers are checked by this.")));
    }

    private void reserve(JobFabric fabric, String from, Trying trying, PrintWriter err)
            throws StashException, JobException {
        Draw open = Objects.requireNonNull(draw);
        boolean any = from.equals(JobBuying.STASH);
        List<StashCloth> candidates = any ? open.free(fabric.name()) : List.of(open.reserve(from));
        if (any) {
            refuseColours(fabric, candidates);
            candidates = candidates.stream().filter(this::isColour).toList();
        } else if (!isColour(candidates.get(0))) {
            throw new StashException("%s: the order is %s and %s is %s"
                    .formatted(
                            fabric.name(),
                            colour().orElse(""),
                            from,
                            candidates.get(0).colour().orElse("")));
        }
        if (candidates.isEmpty()) {
            throw new StashException(
                    "%s: there is no free cloth of it%s in the stash; lengthwise stash list shows what there is"
                            .formatted(
                                    fabric.name(),
                                    colour().map(colour -> " in " + colour).orElse("")));
        }
        JobFile before = file;
        for (StashCloth candidate : candidates) {
            boolean last = candidate.equals(candidates.get(candidates.size() - 1));
            StashCloth cloth = any ? reserved(open, candidate.name()) : candidate;
            if (cloth == null) {
                continue;
            }
            file = before.cutFrom(cloth.as(fabric, isMatched(fabric)), cloth.name());
            if (last || fits(fabric, trying)) {
                drawn.put(fabric.name(), cloth);
                err.println("%s: %s from the stash, %s long, %s wide."
                        .formatted(
                                fabric.name(),
                                cloth.name(),
                                LengthWords.both(cloth.there().length()),
                                LengthWords.both(cloth.width())));
                return;
            }
            open.letGo(cloth.name());
        }
        throw new StashException(
                "%s: other runs took the cloth of it that was free; try again".formatted(fabric.name()));
    }

    /** Another run may have been faster. */
    private static @Nullable StashCloth reserved(Draw draw, String name) {
        try {
            return draw.reserve(name);
        } catch (StashException taken) {
            return null;
        }
    }

    private boolean fits(JobFabric fabric, Trying trying) throws JobException {
        return Orders.of(file).fabrics().stream()
                .map(FabricOrder::order)
                .filter(order -> order.fabric().name().equals(fabric.name()))
                .allMatch(trying::fits);
    }

    private boolean isMatched(JobFabric fabric) {
        return file.job().pieces().stream()
                .filter(piece -> piece.cut().isEmpty()
                        || piece.cut().stream().anyMatch(cut -> cut.role().equals(fabric.role())))
                .anyMatch(piece -> piece.matchPoint().isPresent()
                        || !piece.lying().motifs().isEmpty());
    }

    private Optional<String> colour() {
        return file.job().order().stream()
                .flatMap(line -> line.colour().stream())
                .findFirst();
    }

    private boolean isColour(StashCloth cloth) {
        return colour().isEmpty() || cloth.colour().isEmpty() || cloth.colour().equals(colour());
    }

    private void refuseColours(JobFabric fabric, List<StashCloth> cloths) throws StashException {
        Set<String> colours = new TreeSet<>();
        cloths.forEach(cloth -> cloth.colour().ifPresent(colours::add));
        if (colour().isEmpty() && colours.size() > 1) {
            throw new StashException(
                    "%s: the stash has it in %s; say which by a colour on the lines of the order, or name the cloth: from: %s"
                            .formatted(
                                    fabric.name(),
                                    String.join(", ", colours),
                                    cloths.get(0).name()));
        }
    }

    /** Says that the markers are written from now on. */
    void writesTo(Path folder) throws StashException {
        if (draw != null) {
            draw.writesTo(folder);
        }
    }

    /**
     * What a marker leaves of its cloth.
     *
     * @param bought whether it never was in the stash
     * @param rest of it behind the marker
     * @param between what else of it is kept
     */
    private record Leaving(
            Fabric fabric,
            JobFabric said,
            StashCloth cloth,
            boolean bought,
            Optional<StashCloth> rest,
            List<StashCloth> between) {
        List<StashCloth> left() {
            List<StashCloth> left = new ArrayList<>(rest.stream().toList());
            left.addAll(between);
            return left;
        }

        StashDraw drawn() {
            // what is kept is washed; what it was before, the stash still says
            Length rest = this.rest
                    .map(kept -> kept.there().length().scaled(1 / fabric.lengthKept()))
                    .orElse(Length.ZERO);
            Length length = cloth.there().length();
            Length spent = length.minus(rest);
            double whole = cloth.isStraight()
                    ? spent.millimetres()
                    : cloth.squareMillimetres() / cloth.width().millimetres();
            return new StashDraw(
                    fabric.name(),
                    cloth.name(),
                    length,
                    spent,
                    left().stream()
                            .map(back -> new StashDraw.Back(back.there().length(), back.width()))
                            .toList(),
                    cloth.price()
                            .or(said::price)
                            .map(price -> OptionalDouble.of(ShoppingList.toTheHundredth(
                                    price.amount() * whole / price.per().millimetres())))
                            .orElse(OptionalDouble.empty()));
        }
    }

    /** Returns what the markers of a run take from the stash, before it is taken. */
    List<StashDraw> drawn(Run run, Job job) {
        return leaving(run, job).stream()
                .filter(leaving -> !leaving.bought)
                .map(Leaving::drawn)
                .toList();
    }

    /** Spends what was cut, and puts back what is left. */
    void spend(Run run, Job job, Path folder, PrintWriter err) throws StashException {
        if (draw == null) {
            return;
        }
        List<Draw.Spent> spent = new ArrayList<>();
        List<StashCloth> more = new ArrayList<>();
        for (Leaving leaving : leaving(run, job)) {
            if (leaving.bought) {
                more.addAll(leaving.left());
            } else {
                spent.add(new Draw.Spent(leaving.cloth.name(), leaving.left()));
            }
            err.println(words(leaving.cloth.name(), leaving.left(), leaving.bought));
        }
        draw.spend(
                spent,
                more,
                "cut for %s in %s"
                        .formatted(job.title(), folder.toAbsolutePath().normalize()));
    }

    private List<Leaving> leaving(Run run, Job job) {
        List<Leaving> all = new ArrayList<>();
        for (FabricRun fabricRun : run.fabrics()) {
            Fabric fabric = fabricRun.marker().order().fabric();
            JobFabric said = job.fabrics().stream()
                    .filter(each -> each.name().equals(fabric.name()))
                    .findFirst()
                    .orElseThrow();
            Optional<StashCloth> reserved = Optional.ofNullable(drawn.get(fabric.name()));
            boolean bought = reserved.isEmpty();
            if (bought
                    && (!keep || said.there().isPresent() || said.cutAlready().isPresent())) {
                continue;
            }
            StashCloth cloth = reserved.orElseGet(() -> LeftForStash.bought(said, fabricRun, colour()));
            LeftForStash left = new LeftForStash(said, fabricRun.marker());
            all.add(new Leaving(
                    fabric,
                    said,
                    cloth,
                    bought,
                    left.rest(cloth),
                    keep ? left.rectangles(cloth, fabricRun) : List.of()));
        }
        return all;
    }

    private static String words(String name, List<StashCloth> left, boolean bought) {
        List<String> pieces = left.stream()
                .map(cloth -> "%s × %s"
                        .formatted(LengthWords.metric(cloth.there().length()), LengthWords.metric(cloth.width())))
                .toList();
        String kept = pieces.isEmpty() ? "nothing is left of it" : "left: " + String.join(", ", pieces);
        return bought
                ? "Stash: of %s, %s.".formatted(name, pieces.isEmpty() ? "nothing is left to keep" : kept)
                : "Stash: %s is spent; %s. Not cut after all: lengthwise stash give-back %s"
                        .formatted(name, kept, name);
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
