package lengthwise.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import lengthwise.model.Fabric;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SharedOrder;

/**
 * A job brought together with its drawings: one marker order for each fabric.
 *
 * @param warnings sentences for the maker
 * @param edges how long the edges are that lengths go by
 * @param shared the orders that are for several of the fabrics together, each of which has the whole of it
 */
public record Orders(List<FabricOrder> fabrics, List<String> warnings, SewnEdges edges, List<SharedOrder> shared) {
    public Orders {
        fabrics = List.copyOf(fabrics);
        warnings = List.copyOf(warnings);
        shared = List.copyOf(shared);
    }

    /** One fabric for each purpose. */
    public Orders(List<FabricOrder> fabrics, List<String> warnings, SewnEdges edges) {
        this(fabrics, warnings, edges, List.of());
    }

    /** Returns the same orders with what each fabric was given of them. */
    public Orders withFabrics(List<FabricOrder> others) {
        return new Orders(others, warnings, edges, shared);
    }

    /** Returns the order that a fabric has together with others. */
    public Optional<SharedOrder> sharedBy(String fabric) {
        return shared.stream().filter(order -> order.on(fabric).isPresent()).findFirst();
    }

    /**
     * Refuses orders that are shared by several pieces of cloth.
     *
     * @param what cannot deal with them, at the beginning of a sentence
     * @throws JobException in a sentence, without a place
     */
    public void refuseShared(String what) throws JobException {
        if (!shared.isEmpty()) {
            throw new JobException(
                    "%s takes one fabric for each purpose, and %s are all for %s; lengthwise marker lays them together, or leave all but one out."
                            .formatted(
                                    what,
                                    shared.get(0).names().collect(Collectors.joining(", ")),
                                    shared.get(0).purpose()));
        }
    }

    /** Returns the same orders with other warnings. */
    public Orders withWarnings(List<String> other) {
        return new Orders(fabrics, other, edges, shared);
    }

    /** Words a complaint about a key of the job, such as {@code pieces.cup}, with its place where that is known. */
    @FunctionalInterface
    interface Complaints {
        JobException at(String key, String what);
    }

    /**
     * Reads the drawings of a job file and works out its orders.
     *
     * @throws JobException with one line for the maker: the place, and what is wrong, or the question that she has to
     *     answer
     */
    public static Orders of(JobFile file) throws JobException {
        return of(file.job(), file.folder(), file::error, file.warnings());
    }

    /**
     * Works out the orders of a job that stands in no file.
     *
     * @param folder what the drawings' paths are relative to
     * @throws JobException likewise, without a place
     */
    public static Orders of(Job job, Path folder) throws JobException {
        return of(job, folder, (key, what) -> new JobException(what), List.of());
    }

    /**
     * Returns the order of a fabric for the same fabric in a width on offer; every piece of it lies by the same rules.
     *
     * @param said the fabric of the job
     * @throws JobException in a sentence, without a place, if the cloth is too narrow for what the job says of it
     */
    public static MarkerOrder inWidth(Job job, FabricOrder fabric, JobFabric said, JobBuying.Offer offer)
            throws JobException {
        JobFabric offered = said.at(offer);
        Fabric cloth = FabricMaking.of(offered, new Assumptions());
        if (cloth.cuttableWidth().micrometres() <= 0) {
            throw new JobException("Nothing is left to cut from between its selvedges.");
        }
        if (said.reach().compareTo(offer.width()) > 0) {
            throw new JobException("The job names a place on it that lies %s from the near selvedge."
                    .formatted(LengthText.print(said.reach(), LengthUnit.CM)));
        }
        return LyingMaking.tied(fabric.order().withFabric(cloth), job, offered, (key, what) -> new JobException(what));
    }

    private static Orders of(Job job, Path folder, Complaints complaints, List<String> warnings) throws JobException {
        List<String> allWarnings = new ArrayList<>(warnings);
        PatternBook book = PatternBook.read(job, folder, complaints, allWarnings);
        return new OrderMaking(job, book, folder, complaints, allWarnings).orders();
    }
}
