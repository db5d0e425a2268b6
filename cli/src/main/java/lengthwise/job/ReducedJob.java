package lengthwise.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lengthwise.model.Bundle;
import lengthwise.model.Garment;
import lengthwise.model.Item;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;
import lengthwise.model.SharedOrder;
import lengthwise.plan.WhatFits;

/**
 * A job cut down to what the cloth on hand gives.
 *
 * @param job with fewer garments in its order; empty where not one can be made
 * @param words what is made, what is left out and which cloth runs out first, a sentence each; empty where all is made
 * @param markers by the names of their fabrics, markers that were found to fit, of just these garments: to begin with
 */
public record ReducedJob(Optional<Job> job, List<String> words, Map<String, Marker> markers) {
    public ReducedJob {
        words = List.copyOf(words);
        markers = Map.copyOf(markers);
    }

    /** A search for room. */
    @FunctionalInterface
    public interface Fitting {
        /** Returns a marker of an order that finds room on its cloth, in a share of the time of a whole search. */
        Optional<Marker> fits(MarkerOrder order, double share);
    }

    /** A search for room on several pieces of cloth for one purpose. */
    @FunctionalInterface
    public interface SharedFitting {
        /** Returns a marker for each piece of cloth that is cut from, which hold a shared order, likewise. */
        Optional<List<Marker>> fit(SharedOrder shared, double share);
    }

    /** Says whether there is just so much of what some pieces are cut from. */
    public static boolean isLimited(Orders orders) {
        return !limited(orders, (order, share) -> Optional.empty(), (shared, share) -> Optional.empty())
                .isEmpty();
    }

    /** Cloth of which there is only so much: one fabric, or several pieces of cloth for one purpose. */
    private record Limited(String name, BiFunction<Set<Integer>, Double, Optional<List<Marker>>> fit) {}

    private static List<Limited> limited(Orders orders, Fitting fitting, SharedFitting sharing) {
        List<Limited> limited = new ArrayList<>();
        for (FabricOrder fabric : orders.fabrics()) {
            MarkerOrder order = fabric.order();
            String name = order.fabric().name();
            if (order.fabric().onHand().isPresent() && orders.sharedBy(name).isEmpty()) {
                limited.add(new Limited(
                        name,
                        (numbers, share) ->
                                fitting.fits(order.forGarments(numbers), share).map(List::of)));
            }
        }
        for (SharedOrder shared : orders.shared()) {
            if (shared.bought().isEmpty()) {
                limited.add(new Limited(
                        shared.names().collect(Collectors.joining(" with ")),
                        (numbers, share) -> sharing.fit(shared.forGarments(numbers), share)));
            }
        }
        return limited;
    }

    /** Chooses the garments by priority. */
    public static ReducedJob of(Job job, Orders orders, Fitting fitting, SharedFitting sharing) {
        List<Integer> lineOf = new ArrayList<>();
        for (int line = 0; line < job.order().size(); line++) {
            for (int i = 0; i < job.order().get(line).make(); i++) {
                lineOf.add(line);
            }
        }
        // Garments are numbered from 1 through the lines; the sort keeps that order among equals.
        List<Integer> byPriority = IntStream.rangeClosed(1, lineOf.size())
                .boxed()
                .sorted(Comparator.comparingInt(number ->
                        job.order().get(lineOf.get(number - 1)).priority().orElse(Integer.MAX_VALUE)))
                .toList();
        List<Limited> limited = limited(orders, fitting, sharing);
        List<Map<Set<Integer>, List<Marker>>> found =
                limited.stream().map(cloth -> fresh()).toList();
        WhatFits choice = WhatFits.of(
                byPriority.stream().map(number -> lineOf.get(number - 1)).toList(),
                IntStream.range(0, limited.size())
                        .mapToObj(i -> (WhatFits.Cloth) (garments, share) -> {
                            Set<Integer> numbers =
                                    garments.stream().map(byPriority::get).collect(Collectors.toSet());
                            Optional<List<Marker>> markers = limited.get(i).fit.apply(numbers, share);
                            markers.ifPresent(fit -> found.get(i).put(numbers, fit));
                            return markers.isPresent();
                        })
                        .toList());
        Set<Integer> made = choice.made().stream().map(byPriority::get).collect(Collectors.toCollection(TreeSet::new));
        Map<String, Marker> markers = new HashMap<>();
        found.forEach(ofCloth -> ofCloth.entrySet().stream()
                .filter(fits -> fits.getKey().containsAll(made))
                .min(Comparator.comparingInt(fits -> fits.getKey().size()))
                .ifPresent(fits -> fits.getValue()
                        .forEach(marker ->
                                markers.put(marker.order().fabric().name(), renumbered(without(marker, made), made)))));
        if (made.size() == lineOf.size()) {
            return new ReducedJob(Optional.of(job), List.of(), markers);
        }
        List<OrderLine> lines = new ArrayList<>();
        List<String> makes = new ArrayList<>();
        List<String> leaves = new ArrayList<>();
        for (int line = 0; line < job.order().size(); line++) {
            OrderLine ordered = job.order().get(line);
            int kind = line;
            int count = (int) made.stream()
                    .filter(number -> lineOf.get(number - 1) == kind)
                    .count();
            if (count > 0) {
                lines.add(ordered.withMake(count));
                makes.add(counted(count, ordered));
            }
            if (count < ordered.make()) {
                leaves.add(counted(ordered.make() - count, ordered));
            }
        }
        List<String> words = new ArrayList<>();
        words.add("Of %d garments the cloth on hand gives %d%s; left out: %s."
                .formatted(
                        lineOf.size(),
                        made.size(),
                        makes.isEmpty() ? "" : " (" + String.join(", ", makes) + ")",
                        String.join(", ", leaves)));
        words.add(runsOut(limited, choice.enoughFor(), lineOf.size()));
        return new ReducedJob(lines.isEmpty() ? Optional.empty() : Optional.of(job.withOrder(lines)), words, markers);
    }

    /** Returns a marker that fits without what is for garments that are not made: it fits still. */
    private static Marker without(Marker fits, Set<Integer> made) {
        return new Marker(
                fits.order().forGarments(made),
                fits.placements().stream()
                        .filter(placement -> placement.item().garments().stream()
                                .anyMatch(garment -> made.contains(garment.number())))
                        .toList(),
                fits.length());
    }

    private static Map<Set<Integer>, List<Marker>> fresh() {
        return new HashMap<>();
    }

    /** Returns a marker whose garments have the numbers that they have in the job where only these are made. */
    private static Marker renumbered(Marker marker, Set<Integer> made) {
        List<Integer> numbers = List.copyOf(made);
        UnaryOperator<Garment> renumber =
                garment -> new Garment(numbers.indexOf(garment.number()) + 1, garment.size(), garment.customer());
        return new Marker(
                marker.order()
                        .withBundles(marker.order().bundles().stream()
                                .map(bundle -> new Bundle(renumber.apply(bundle.garment()), bundle.pieces()))
                                .toList()),
                marker.placements().stream()
                        .map(placement -> new Placement(renumbered(placement.item(), renumber), placement.pose()))
                        .toList(),
                marker.length());
    }

    private static Item renumbered(Item item, UnaryOperator<Garment> renumber) {
        return new Item(item.piece(), item.garments().stream().map(renumber).toList(), item.hand(), item.mirrored());
    }

    private static String counted(int count, OrderLine line) {
        return count + " ×"
                + (line.size().name().isEmpty()
                        ? " the garment"
                        : " " + line.size().name())
                + line.customer().map(" for "::concat).orElse("");
    }

    private static String runsOut(List<Limited> limited, List<Integer> enoughFor, int all) {
        int least = enoughFor.stream().mapToInt(count -> count).min().orElse(all);
        String first = IntStream.range(0, limited.size())
                .filter(i -> enoughFor.get(i) == least)
                .mapToObj(i -> limited.get(i).name)
                .collect(Collectors.joining(" and "));
        String others = IntStream.range(0, limited.size())
                .filter(i -> enoughFor.get(i) > least)
                .mapToObj(i -> "%s would do for %s"
                        .formatted(
                                limited.get(i).name,
                                enoughFor.get(i) == all ? "all" : Integer.toString(enoughFor.get(i))))
                .collect(Collectors.joining(", "));
        return "By priority %s runs out first, after %d%s; found by short searches."
                .formatted(first, least, others.isEmpty() ? "" : " (" + others + ")");
    }
}
