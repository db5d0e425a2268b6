package lengthwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.FabricRun;
import lengthwise.geometry.Box;
import lengthwise.job.JobFabric;
import lengthwise.job.JobFabric.Corner;
import lengthwise.job.JobFabric.There;
import lengthwise.job.Remnants;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.Spread;
import lengthwise.plan.Leftovers;
import lengthwise.stash.StashCloth;

/**
 * What a marker leaves of its cloth. A straight cloth is spread as far as the marker goes and cut off there, however it is
 * folded: the rest is one piece as wide as before, with its selvedges. Between the pieces there are rectangles, once in each
 * layer; one that lies along a fold is opened, and is there once, twice as large.
 */
final class LeftForStash {
    private final JobFabric said;
    private final Marker marker;
    private final Fabric fabric;

    /** @param said the fabric of the job that the marker was made for */
    LeftForStash(JobFabric said, Marker marker) {
        this.said = said;
        this.marker = marker;
        this.fabric = marker.order().fabric();
    }

    /** Returns what is left of a straight cloth behind the marker, as it is now: washed where it is washed first. */
    Optional<StashCloth> rest(StashCloth cloth) {
        if (!cloth.isStraight()) {
            return Optional.empty();
        }
        StashCloth cut = (fabric.isWashedFirst() ? cloth.shrinking(fabric.shrinkage()) : cloth).asCut();
        return cut.withoutStart(
                fabric.spread().onTable(marker.length()).times(fabric.spread().lengths()));
    }

    /**
     * Returns the usable rectangles in the marker.
     *
     * @param cloth that it was cut from, whose name and colour they get
     */
    List<StashCloth> rectangles(StashCloth cloth, FabricRun run) {
        List<Box> boxes = cloth.isStraight() ? Leftovers.within(marker) : Leftovers.of(marker, run.purchase());
        List<StashCloth> left = new ArrayList<>();
        for (Box box : boxes) {
            Box opened = opened(box);
            boolean onFold = !opened.equals(box);
            int copies = onFold ? fabric.spread().layers() / 2 : fabric.spread().layers();
            JobFabric one = Remnants.of(said, fabric, List.of(opened)).get(0);
            for (int i = 0; i < copies; i++) {
                left.add(kept("%s-left-%d".formatted(cloth.name(), left.size() + 1), cloth, one));
            }
        }
        return left;
    }

    private Box opened(Box box) {
        Spread spread = fabric.spread();
        if (spread.isFoldedLengthwise() && box.minY() == 0) {
            return new Box(box.minX(), -box.maxY(), box.maxX(), box.maxY());
        }
        if (spread.isFoldedCrosswise() && box.minX() == 0) {
            return new Box(-box.maxX(), box.minY(), box.maxX(), box.maxY());
        }
        return box;
    }

    private StashCloth kept(String name, StashCloth cloth, JobFabric rectangle) {
        boolean printKnown = cloth.print().isPresent() && !fabric.spread().mirrors();
        return new StashCloth(
                name,
                cloth.fabric(),
                cloth.colour(),
                rectangle.width(),
                new There(rectangle.there().orElseThrow().length(), List.of()),
                rectangle.unusableEdge(),
                cloth.direction().or(said::direction),
                fabric.isWashedFirst() ? rectangle.shrinkage() : cloth.shrinkage(),
                cloth.price(),
                rectangle
                        .repeat()
                        .filter(print -> printKnown)
                        .map(print -> new Corner(print.fromStart(), print.fromSelvedge())),
                List.of());
    }

    /** Returns cloth that was bought for the marker, with what the shop's step added, as a cloth of the stash. */
    static StashCloth bought(JobFabric said, FabricRun run, Optional<String> colour) {
        Fabric fabric = run.marker().order().fabric();
        Length laid = fabric.spread()
                .onTable(run.marker().length())
                .times(fabric.spread().lengths());
        Length bought = new Length((long) Math.ceil(laid.micrometres() / fabric.lengthKept()))
                .plus(run.purchase().rounding());
        return new StashCloth(
                said.name(),
                said.name(),
                colour,
                fabric.width(),
                new There(bought, List.of()),
                Optional.of(fabric.unusableEdge()),
                said.direction(),
                said.shrinkage(),
                said.price(),
                said.repeat().map(print -> new Corner(print.fromStart(), print.fromSelvedge())),
                List.of());
    }
}
