package lengthwise.stash;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lengthwise.job.JobFabric;
import lengthwise.job.JobFabric.Corner;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.job.JobFabric.PrintRepeat;
import lengthwise.job.JobFabric.There;
import lengthwise.model.Direction;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.Length;
import lengthwise.model.Shrinkage;

/**
 * A cloth that is there, a bolt or a remnant, measured as it is now.
 *
 * @param name the maker's label on it; no two have the same
 * @param fabric what it is: the name by which jobs draw it
 * @param there its length, and of a remnant that is no straight piece its corners
 * @param edge the strips along its selvedges that no piece may touch, where known
 * @param shrinkage what it does when it is washed; where it has been, in the pattern and nothing
 * @param print a point of its print, where known
 * @param flaws rectangles of bad cloth
 */
public record StashCloth(
        String name,
        String fabric,
        Optional<String> colour,
        Length width,
        There there,
        Optional<UnusableEdge> edge,
        Optional<Direction> direction,
        Optional<Shrinkage> shrinkage,
        Optional<Price> price,
        Optional<Corner> print,
        List<Flaw> flaws) {
    /** Shorter is no cloth to keep: common practice, no source. */
    private static final Length LEAST_REST = Length.ofMillimetres(50);

    private static final Shrinkage WASHED = new Shrinkage(0, 0, Shrinkage.Handling.IN_PATTERN);

    public StashCloth {
        flaws = List.copyOf(flaws);
    }

    /** Says whether it is a straight piece over the whole width. */
    public boolean isStraight() {
        return there.corners().isEmpty();
    }

    /** Returns its area in square millimetres. */
    public double squareMillimetres() {
        if (isStraight()) {
            return width.millimetres() * there.length().millimetres();
        }
        double twice = 0;
        List<Corner> corners = there.corners();
        for (int i = 0; i < corners.size(); i++) {
            Corner a = corners.get(i);
            Corner b = corners.get((i + 1) % corners.size());
            twice += a.fromStart().millimetres() * b.fromSelvedge().millimetres()
                    - b.fromStart().millimetres() * a.fromSelvedge().millimetres();
        }
        return Math.abs(twice) / 2;
    }

    /** Returns the same cloth, washed, where it is washed before it is cut; else the cloth itself. */
    public StashCloth asCut() {
        if (shrinkage.isEmpty() || shrinkage.get().handled() != Shrinkage.Handling.PRE_WASH) {
            return this;
        }
        double along = 1 - shrinkage.get().lengthwise();
        double across = 1 - shrinkage.get().crosswise();
        return new StashCloth(
                name,
                fabric,
                colour,
                width.scaled(across),
                new There(
                        there.length().scaled(along),
                        there.corners().stream()
                                .map(corner -> washed(corner, along, across))
                                .toList()),
                edge.map(strips -> new UnusableEdge(
                        strips.near().scaled(across), strips.far().scaled(across))),
                direction,
                Optional.of(WASHED),
                price.map(each -> new Price(each.amount(), each.per().scaled(along))),
                print.map(point -> washed(point, along, across)),
                flaws.stream()
                        .map(flaw -> new Flaw(
                                flaw.fromStart().scaled(along),
                                flaw.length().scaled(along),
                                flaw.fromSelvedge().scaled(across),
                                flaw.width().scaled(across)))
                        .toList());
    }

    private static Corner washed(Corner corner, double along, double across) {
        return new Corner(
                corner.fromStart().scaled(along), corner.fromSelvedge().scaled(across));
    }

    /**
     * Returns what is left of a straight piece when a length is cut off its start, under the same name, measured from the
     * new end; empty where that is not worth keeping.
     */
    public Optional<StashCloth> withoutStart(Length cut) {
        Length rest = there.length().minus(cut);
        if (!isStraight()) {
            throw new IllegalArgumentException("Only a straight piece is cut off across: " + name);
        }
        if (rest.compareTo(LEAST_REST) < 0) {
            return Optional.empty();
        }
        List<Flaw> still = new ArrayList<>();
        for (Flaw flaw : flaws) {
            Length from = flaw.fromStart().minus(cut);
            Length to = from.plus(flaw.length());
            if (to.micrometres() > 0) {
                Length start = Length.max(Length.ZERO, from);
                still.add(new Flaw(start, to.minus(start), flaw.fromSelvedge(), flaw.width()));
            }
        }
        return Optional.of(new StashCloth(
                name,
                fabric,
                colour,
                width,
                new There(rest, List.of()),
                edge,
                direction,
                shrinkage,
                price,
                print.map(point -> new Corner(point.fromStart().minus(cut), point.fromSelvedge())),
                still));
    }

    /**
     * Returns a fabric of a job as this cloth: what is known of the cloth goes before what the job says, and the job says the
     * rest.
     *
     * @throws StashException where the two ask for different directions, or match points need a print that nobody measured
     */
    public JobFabric as(JobFabric said, boolean matched) throws StashException {
        if (direction.isPresent() && said.direction().isPresent() && !direction.equals(said.direction())) {
            throw new StashException("%s: the job says %s and %s is %s in the stash; correct one of them"
                    .formatted(said.name(), word(said.direction().get()), name, word(direction.get())));
        }
        if (matched && said.repeat().isPresent() && print.isEmpty()) {
            throw new StashException(
                    "%s: pieces are matched to the print, and the stash does not know where it lies on %s; put it in again with --print"
                            .formatted(said.name(), name));
        }
        return new JobFabric(
                said.name(),
                said.role(),
                width,
                edge.or(said::unusableEdge),
                direction.or(said::direction),
                said.mostStretch(),
                said.rightSide(),
                said.repeat().map(this::printed),
                shrinkage.or(said::shrinkage),
                said.spread(),
                price.or(said::price),
                said.soldBy(),
                flaws,
                Optional.of(there),
                said.pile(),
                Optional.empty(),
                said.across(),
                said.buying().withoutFrom());
    }

    private PrintRepeat printed(PrintRepeat repeat) {
        Corner point = print.orElse(new Corner(Length.ZERO, Length.ZERO));
        long again = repeat.lengthwise().micrometres();
        return repeat.from(
                again == 0
                        ? Length.ZERO
                        : new Length(Math.floorMod(point.fromStart().micrometres(), again)),
                point.fromSelvedge());
    }

    private static String word(Direction direction) {
        return direction.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Returns the same cloth, of which this is known about shrinkage. */
    public StashCloth shrinking(Shrinkage how) {
        return new StashCloth(
                name, fabric, colour, width, there, edge, direction, Optional.of(how), price, print, flaws);
    }

    /** Returns the same cloth under another label. */
    public StashCloth named(String other) {
        return new StashCloth(other, fabric, colour, width, there, edge, direction, shrinkage, price, print, flaws);
    }
}
