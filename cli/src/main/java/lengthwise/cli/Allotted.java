package lengthwise.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import lengthwise.Allotment;
import lengthwise.FabricRun;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.SharedRun;
import lengthwise.check.SharedCheck;
import lengthwise.check.Violation;
import lengthwise.job.FabricOrder;
import lengthwise.job.Orders;
import lengthwise.model.Bundle;
import lengthwise.model.Garment;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SharedOrder;
import lengthwise.plan.Purchase;
import lengthwise.solver.Search;
import org.jspecify.annotations.Nullable;

/**
 * The orders of a job, each that several pieces of cloth have together shared out over them.
 *
 * @param orders what every fabric was given; one that was given nothing is not among them
 * @param begun markers to begin with, by the names of their fabrics
 * @param seconds that are left for the markers, where time is limited
 */
record Allotted(
        Orders orders, Map<String, Marker> begun, @Nullable Double seconds) {
    Allotted {
        begun = Map.copyOf(begun);
    }

    /**
     * Shares out what is to be shared.
     *
     * @param known markers to begin with, by the names of their fabrics
     * @param time in seconds, where it is limited
     */
    static Allotted of(
            Orders whole,
            Map<String, Marker> known,
            @Nullable Double time,
            SearchOptions searching,
            BooleanSupplier interrupted,
            PrintWriter err) {
        if (whole.shared().isEmpty()) {
            return new Allotted(whole, known, time);
        }
        InstantSource clock = InstantSource.system();
        Instant start = clock.instant();
        Map<String, Marker> begun = new HashMap<>(known);
        Map<String, MarkerOrder> given = new HashMap<>();
        for (SharedOrder shared : whole.shared()) {
            List<Marker> laid =
                    shared.names().filter(known::containsKey).map(known::get).toList();
            if (!laid.isEmpty()
                    && SharedCheck.of(
                                    shared,
                                    laid.stream().map(SharedCheck.Part::of).toList(),
                                    Length.ZERO)
                            .all()
                            .isEmpty()) {
                shared.cloths().forEach(order -> given.put(order.fabric().name(), order.withBundles(List.of())));
                laid.forEach(marker -> given.put(marker.order().fabric().name(), marker.order()));
                continue;
            }
            if (ProgressLine.onTerminal()) {
                err.println("%s: sharing it out over %s"
                        .formatted(shared.purpose(), shared.names().collect(Collectors.joining(", "))));
            }
            Search search = Budget.sharingOut(shared, whole.shared().size(), time, searching.iterations, searching.seed)
                    .cancelledBy(interrupted);
            for (Allotment.Given part : Allotment.of(shared, search).given()) {
                String name = part.order().fabric().name();
                given.put(name, part.order());
                part.found().ifPresent(marker -> begun.put(name, marker));
            }
        }
        List<FabricOrder> fabrics = new ArrayList<>();
        for (FabricOrder fabric : whole.fabrics()) {
            MarkerOrder part = given.get(fabric.order().fabric().name());
            if (part == null) {
                fabrics.add(fabric);
            } else if (!part.bundles().isEmpty()) {
                fabrics.add(fabric.part(part));
            }
        }
        double spent = Duration.between(start, clock.instant()).toMillis() / 1000.0;
        return new Allotted(
                whole.withFabrics(fabrics), begun, time == null ? null : Double.valueOf(Math.max(0.2, time - spent)));
    }

    /** Returns an order without the fillers that lie on other cloth for the same purpose already. */
    static FabricOrder withFillersLeft(FabricOrder fabric, List<FabricRun> runs) {
        if (!fabric.isPart()) {
            return fabric;
        }
        Set<Integer> laid = new HashSet<>();
        for (FabricRun run : runs) {
            if (run.marker()
                    .order()
                    .fabric()
                    .role()
                    .equals(fabric.order().fabric().role())) {
                run.marker().placements().stream()
                        .flatMap(placement -> placement.item().garments().stream())
                        .map(Garment::number)
                        .forEach(laid::add);
            }
        }
        List<Bundle> left = fabric.order().fillers().stream()
                .filter(filler -> !laid.contains(filler.garment().number()))
                .toList();
        return fabric.part(fabric.order().withFillers(left));
    }

    /** Returns what is wrong with markers that are of one order together; each of them has passed its own check. */
    List<Violation> violations(List<FabricRun> runs) {
        return orders.shared().stream()
                .flatMap(shared -> SharedCheck.of(shared, parts(shared, runs), Length.ZERO).all().stream())
                .toList();
    }

    private static List<SharedCheck.Part> parts(SharedOrder shared, List<FabricRun> runs) {
        return runs.stream()
                .map(FabricRun::marker)
                .filter(marker -> shared.on(marker.order().fabric().name()).isPresent())
                .map(SharedCheck.Part::of)
                .toList();
    }

    /** Returns how the orders were shared out, with what would be bought if all were cut from bought cloth. */
    List<SharedRun> shared(List<FabricRun> runs, Budget budget, SearchOptions searching, BooleanSupplier interrupted) {
        return orders.shared().stream()
                .map(shared -> new SharedRun(
                        shared.purpose(),
                        shared.cloths().stream().map(MarkerOrder::fabric).toList(),
                        shared.keepsGarments(),
                        shared.bought().flatMap(order -> alone(order, budget, searching, interrupted))))
                .toList();
    }

    private static Optional<Purchase> alone(
            MarkerOrder bought, Budget budget, SearchOptions searching, BooleanSupplier interrupted) {
        if (interrupted.getAsBoolean()) {
            return Optional.empty();
        }
        MarkerOrder order = bought.withFillers(List.of());
        Search search = budget.aside(order, searching.seed, searching.workers).cancelledBy(interrupted);
        MarkerAnswer answer = MarkerMaking.make(order, search, (marker, progress) -> {});
        return answer instanceof MarkerAnswer.Made made && !interrupted.getAsBoolean()
                ? Optional.of(Purchase.of(made.marker().length(), order.fabric()))
                : Optional.empty();
    }

    /** Says what the other cloth for the same purpose takes, where one of them has no room for what it was given. */
    Optional<String> beside(MarkerOrder order) {
        List<String> others = orders.fabrics().stream()
                .filter(FabricOrder::isPart)
                .map(FabricOrder::order)
                .filter(other -> other.fabric().role().equals(order.fabric().role())
                        && !other.fabric().name().equals(order.fabric().name()))
                .map(other -> other.fabric().name())
                .toList();
        return others.isEmpty()
                ? Optional.empty()
                : Optional.of("That is what is left over for it beside %s."
                        .formatted(others.stream().collect(Collectors.joining(" and "))));
    }

    /** Says whether cloth on hand was given more than room was found for. */
    boolean isShort() {
        return orders.fabrics().stream()
                .filter(FabricOrder::isPart)
                .map(fabric -> fabric.order().fabric())
                .anyMatch(fabric -> fabric.onHand().isPresent() && !begun.containsKey(fabric.name()));
    }
}
