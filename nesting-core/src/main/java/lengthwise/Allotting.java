package lengthwise;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Pose;
import lengthwise.model.CutPiece;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.OnHand;
import lengthwise.model.Placement;
import lengthwise.model.SharedOrder;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Ruling;
import lengthwise.solver.Layout;
import lengthwise.solver.Search;
import lengthwise.solver.SearchResult;
import lengthwise.solver.StopRule;
import lengthwise.solver.StripSearch;

/**
 * Shares an order out over pieces of cloth: bin packing with a few bins of different sizes, and a search inside each.
 *
 * <p>One piece of cloth is filled after another. Of what is still waiting the largest goes first (first fit decreasing),
 * wherever there is room beside what lies there; nothing moves. When all are filled so, each is laid anew together with one more
 * of what is over, and if that succeeds the rest is tried beside it again. This is done with the smallest cloth first
 * and with the largest first, with the pieces by area and by their longest side; kept is what leaves the least area over for
 * the cloth that is bought. A good choice, not always the best one.
 *
 * <p>Reference: E. G. Coffman, M. R. Garey, D. S. Johnson, "Approximation algorithms for bin packing: a survey", in:
 * Approximation Algorithms for NP-Hard Problems, PWS 1996.
 */
final class Allotting {
    /** Sweeps of a search that lays everything anew; most tell at once. */
    private static final long SWEEPS_ANEW = 100;

    /** So often a cloth is laid anew without success before it is taken to be full. */
    private static final int MOST_ANEW = 8;

    /** What of the budget goes to filling all cloth one by one; the rest to filling it better. */
    private static final double ONE_BY_ONE = 0.5;

    /** Of more lots than these the first are laid together, as many as take this share of a cloth's area. */
    private static final int MANY = 60;

    private static final double LOOSELY = 0.6;

    private final SharedOrder shared;
    private final Series series;
    private final MarkerOrder last;
    private final List<Lot> lots;
    private final Map<Lot, Double> areas = new HashMap<>();
    private final Map<List<CutPiece>, Boolean> onLast = new HashMap<>();
    private final Map<List<CutPiece>, MarkerOrder> homes = new HashMap<>();

    Allotting(SharedOrder shared, Search search) {
        this.shared = shared;
        this.series = new Series(search);
        this.last = shared.cloths().get(shared.cloths().size() - 1);
        this.lots = Lot.of(shared);
        lots.forEach(lot -> areas.computeIfAbsent(lot, one -> one.squareMillimetres(last)));
    }

    /** A piece of cloth, what was given to it, and how that lies. */
    private record Filled(MarkerOrder whole, List<Lot> lots, Marker marker) {
        static Filled nothing(MarkerOrder whole) {
            return new Filled(whole, List.of(), new Marker(Lot.order(whole, List.of()), List.of(), Length.ZERO));
        }

        List<Lot> with(Collection<Lot> more) {
            return Stream.concat(lots.stream(), more.stream()).toList();
        }
    }

    /** One way of sharing out: each cloth on hand filled, and what is over. */
    private record Attempt(List<Filled> filled, List<Lot> over) {}

    Allotment allotment() {
        List<MarkerOrder> smallestFirst = shared.cloths().stream()
                .filter(order -> order.fabric().onHand().isPresent())
                .toList();
        List<MarkerOrder> largestFirst = new ArrayList<>(smallestFirst);
        Collections.reverse(largestFirst);
        Comparator<Lot> byArea = Comparator.comparingDouble(lot -> -area(List.of(lot)));
        Comparator<Lot> bySide = Comparator.comparingLong(lot -> -lot.longestSide(last));
        Attempt best = attempt(smallestFirst, byArea);
        for (Supplier<Attempt> next : List.<Supplier<Attempt>>of(
                () -> attempt(smallestFirst, bySide),
                () -> attempt(largestFirst, byArea),
                () -> attempt(largestFirst, bySide))) {
            if (best.over.isEmpty() || series.isOver(1)) {
                break;
            }
            Attempt other = next.get();
            best = area(other.over) < area(best.over) ? other : best;
        }
        return allotment(best);
    }

    private double area(List<Lot> some) {
        return some.stream()
                .mapToDouble(lot -> Objects.requireNonNull(areas.get(lot)))
                .sum();
    }

    private Attempt attempt(List<MarkerOrder> cloths, Comparator<Lot> order) {
        // what has no place on the last cloth has to find one before
        List<Lot> waiting = new ArrayList<>(lots.stream()
                .sorted(Comparator.comparing(this::liesOnLast).thenComparing(order))
                .toList());
        List<Filled> filled = new ArrayList<>();
        for (int i = 0; i < cloths.size(); i++) {
            filled.add(filled(cloths.get(i), waiting, ONE_BY_ONE * (i + 1) / cloths.size()));
        }
        for (int i = 0; i < cloths.size() && !waiting.isEmpty(); i++) {
            double share = ONE_BY_ONE + (1 - ONE_BY_ONE) * (i + 1) / cloths.size();
            filled.set(i, fuller(filled.get(i), waiting, share));
        }
        return new Attempt(filled, waiting);
    }

    /**
     * Fills a cloth with what is waiting, one after another, and takes that out. Of few that is done however short the time
     * is: the first layout of each search tells alone then.
     *
     * @param shareForMany of the budget that may be used up by then
     */
    private Filled filled(MarkerOrder cloth, List<Lot> waiting, double shareForMany) {
        double share = waiting.size() > MANY ? shareForMany : Double.MAX_VALUE;
        Filled nothing = Filled.nothing(cloth);
        Optional<Filled> begun = series.isOver(share) ? Optional.empty() : anew(nothing, waiting);
        if (begun.isEmpty() && waiting.size() > MANY) {
            begun = anew(nothing, somewhatLessThanFits(cloth, waiting, share));
        }
        begun.ifPresent(filled -> filled.lots.forEach(waiting::remove));
        return withAllBeside(begun.orElse(nothing), waiting, share);
    }

    /** Returns so many of those that lie on a cloth, from the first on, that a search tells at once where they lie. */
    private List<Lot> somewhatLessThanFits(MarkerOrder cloth, List<Lot> waiting, double share) {
        Map<List<CutPiece>, Boolean> finds = new HashMap<>();
        List<Lot> some = new ArrayList<>();
        double room = LOOSELY
                * cloth.fabric().spread().layers()
                * cloth.fabric().room().orElseThrow().millimetres()
                * cloth.fabric().cuttableWidth().millimetres();
        for (Lot lot : waiting) {
            double area = area(List.of(lot));
            if (area <= room
                    && !series.isOver(share)
                    && finds.computeIfAbsent(
                            lot.pieces(cloth),
                            kind -> lies(lot, cloth, cloth.fabric().room()))) {
                some.add(lot);
                room -= area;
            }
        }
        return some;
    }

    /** Lays a cloth anew with one more, and the rest beside it, until nothing of what is waiting goes in. */
    private Filled fuller(Filled before, List<Lot> waiting, double share) {
        Filled filled = before;
        int failures = 0;
        boolean more = true;
        while (more) {
            more = false;
            for (Lot lot : oneOfEachKind(before.whole, waiting)) {
                List<Lot> one = List.of(lot);
                if (failures == MOST_ANEW || series.isOver(share)) {
                    break;
                }
                if (task(Lot.order(before.whole, filled.with(one))).isEmpty()) {
                    continue;
                }
                Optional<Filled> anew = anew(filled, one);
                if (anew.isPresent()) {
                    waiting.remove(lot);
                    filled = withAllBeside(anew.get(), waiting, share);
                    more = true;
                    break;
                }
                failures++;
            }
        }
        return filled;
    }

    private static List<Lot> oneOfEachKind(MarkerOrder cloth, List<Lot> lots) {
        Map<List<CutPiece>, Lot> kinds = new LinkedHashMap<>();
        lots.forEach(lot -> kinds.putIfAbsent(lot.pieces(cloth), lot));
        return List.copyOf(kinds.values());
    }

    /** Lays what finds room beside what lies there, and takes it out of what is left. */
    private Filled withAllBeside(Filled before, List<Lot> left, double share) {
        Filled filled = before;
        Set<List<CutPiece>> noRoom = new HashSet<>();
        for (Lot lot : List.copyOf(left)) {
            List<CutPiece> kind = lot.pieces(before.whole);
            if (noRoom.contains(kind) || series.isOver(share)) {
                continue;
            }
            Optional<Filled> more = beside(filled, lot);
            if (more.isPresent()) {
                filled = more.get();
                left.remove(lot);
            } else {
                noRoom.add(kind);
            }
        }
        return filled;
    }

    /** Lays one more beside what lies there, where that leaves room. Through several layers it may be cut with that. */
    private Optional<Filled> beside(Filled filled, Lot lot) {
        List<Lot> with = filled.with(List.of(lot));
        MarkerOrder order = Lot.order(filled.whole, with);
        return task(order)
                .flatMap(ruled -> beside(filled.marker, ruled, room(order, ruled))
                        .map(layout -> new Filled(filled.whole, with, MarkerMaking.marker(order, ruled, layout))));
    }

    private Optional<Layout> beside(Marker marker, Ruling.Task ruled, long room) {
        Map<Integer, Pose> laid = laid(marker, ruled.items());
        LayoutTask inPhase = ruled.task().inPhaseOf(laid);
        int count = ruled.items().size();
        if (laid.size() == count) {
            return Optional.of(new Layout(
                    IntStream.range(0, count)
                            .mapToObj(i -> Objects.requireNonNull(laid.get(i)))
                            .toList(),
                    marker.piecesEnd().micrometres()));
        }
        List<Integer> all = IntStream.range(0, count).boxed().toList();
        return StripSearch.within(
                room,
                OnCloth.part(inPhase, all, laid),
                series.next(StopRule.iterations(RoomLeft.SWEEPS * (count - laid.size()))));
    }

    /** Returns which contours are those of a marker, and how they lie: first those for the same garments, then those alike. */
    private static Map<Integer, Pose> laid(Marker marker, List<Item> items) {
        Map<Integer, Pose> laid = new HashMap<>();
        List<Placement> waiting = new ArrayList<>(marker.placements());
        List<BiPredicate<Item, Item>> likenesses = List.of(Item::equals, Allotting::areAlike);
        for (BiPredicate<Item, Item> alike : likenesses) {
            for (Placement placement : List.copyOf(waiting)) {
                OptionalInt same = IntStream.range(0, items.size())
                        .filter(i -> !laid.containsKey(i) && alike.test(items.get(i), placement.item()))
                        .findFirst();
                if (same.isPresent()) {
                    laid.put(same.getAsInt(), placement.pose());
                    waiting.remove(placement);
                }
            }
        }
        return laid;
    }

    private static boolean areAlike(Item one, Item other) {
        return one.piece().equals(other.piece()) && one.hand() == other.hand() && one.mirrored() == other.mirrored();
    }

    /** Lays all that lies there anew, with some more. */
    private Optional<Filled> anew(Filled filled, List<Lot> more) {
        List<Lot> with = filled.with(more);
        MarkerOrder order = Lot.order(filled.whole, with);
        return task(order)
                .flatMap(ruled -> MarkerMaking.fitting(order, series.next(StopRule.iterations(SWEEPS_ANEW))))
                .map(marker -> new Filled(filled.whole, with, marker));
    }

    /** Returns the task of a part order on cloth on hand; empty where a rule is against it or it is larger than the cloth. */
    private static Optional<Ruling.Task> task(MarkerOrder order) {
        if (order.bundles().isEmpty() || !(Ruling.of(order) instanceof Ruling.Task ruled)) {
            return Optional.empty();
        }
        long room = room(order, ruled);
        double wanted = ruled.items().stream()
                .mapToDouble(item -> item.piece().outline().squareMillimetres())
                .sum();
        double cuttable = room / 1e3 * order.fabric().cuttableWidth().millimetres();
        double there = order.fabric()
                .onHand()
                .flatMap(OnHand::outline)
                .map(Outline::squareMillimetres)
                .orElse(cuttable);
        return room > 0 && wanted <= Math.min(cuttable, there) ? Optional.of(ruled) : Optional.empty();
    }

    private static long room(MarkerOrder order, Ruling.Task ruled) {
        return ruled.lengths().downTo(order.fabric().room().orElseThrow()).micrometres();
    }

    private boolean liesOnLast(Lot lot) {
        return onLast.computeIfAbsent(
                lot.pieces(last), kind -> lies(lot, last, last.fabric().room()));
    }

    /** Says whether a lot finds a place on a piece of cloth where nothing else lies. */
    private boolean lies(Lot lot, MarkerOrder cloth, Optional<Length> room) {
        return Ruling.of(Lot.order(cloth, List.of(lot))) instanceof Ruling.Task ruled
                && StripSearch.solve(ruled.task(), series.next(StopRule.iterations(1)))
                        instanceof SearchResult.Solved solved
                && room.map(length -> solved.layout().length() <= length.micrometres())
                        .orElse(true);
    }

    private Allotment allotment(Attempt attempt) {
        Map<MarkerOrder, List<Lot>> over = new HashMap<>();
        attempt.over.forEach(lot -> over.computeIfAbsent(
                        homes.computeIfAbsent(lot.pieces(last), kind -> home(lot)), cloth -> new ArrayList<>())
                .add(lot));
        List<Allotment.Given> given = new ArrayList<>();
        for (MarkerOrder cloth : shared.cloths()) {
            Filled filled = attempt.filled.stream()
                    .filter(one -> one.whole.equals(cloth))
                    .findFirst()
                    .orElseGet(() -> Filled.nothing(cloth));
            List<Lot> more = over.getOrDefault(cloth, List.of());
            given.add(new Allotment.Given(
                    Lot.order(cloth, filled.with(more)),
                    filled.lots.isEmpty() || !more.isEmpty() ? Optional.empty() : Optional.of(filled.marker)));
        }
        return new Allotment(given);
    }

    /** Returns the last cloth that a lot finds a place on by itself; where there is none, the last that is wide enough. */
    private MarkerOrder home(Lot lot) {
        List<MarkerOrder> lastFirst = new ArrayList<>(shared.cloths());
        Collections.reverse(lastFirst);
        return lastFirst.stream()
                .filter(cloth -> lies(lot, cloth, cloth.fabric().room()))
                .findFirst()
                .or(() -> lastFirst.stream()
                        .filter(cloth -> lies(lot, cloth, Optional.empty()))
                        .findFirst())
                .orElse(last);
    }
}
