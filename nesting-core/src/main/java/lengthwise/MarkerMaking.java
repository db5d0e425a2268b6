package lengthwise;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BiConsumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.check.MarkerCheck;
import lengthwise.check.Violation;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.model.CutAlready;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.model.ShadeWords;
import lengthwise.rules.CutAlreadyRule;
import lengthwise.rules.Demand;
import lengthwise.rules.FillerRule;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;
import lengthwise.rules.Ruling;
import lengthwise.solver.Layout;
import lengthwise.solver.LowerBound;
import lengthwise.solver.Progress;
import lengthwise.solver.Search;
import lengthwise.solver.SearchEvent;
import lengthwise.solver.SearchResult;
import lengthwise.solver.SearchResult.StopReason;
import lengthwise.solver.StopRule;
import lengthwise.solver.StripSearch;

/** Makes a marker: rules, search, check. Stateless. */
public final class MarkerMaking {
    /** Sweeps that lay what cannot lie as it was planned; the search goes on from there. */
    private static final long SWEEPS_AS_PLANNED = 20;

    private MarkerMaking() {}

    /**
     * Returns a checked marker for an order, or why there is none.
     *
     * @param search its watcher gets the events of the search as they are
     * @param watcher gets every better marker as it is found, unchecked, on the searching thread; must return fast
     */
    public static MarkerAnswer make(MarkerOrder order, Search search, BiConsumer<Marker, Progress> watcher) {
        return make(order, Optional.empty(), search, watcher);
    }

    /**
     * Returns a checked marker for an order that asks less of the cloth than the order of another marker, and the same
     * pieces. The search begins with that marker, so that the answer is never longer: what the rule costs that was left
     * out cannot come out below nothing.
     */
    public static MarkerAnswer loosen(MarkerOrder freer, Marker strict, Search search) {
        return make(freer, Optional.of(strict), search, (marker, progress) -> {});
    }

    /**
     * Returns a checked marker likewise, by a search that begins with a marker for the same pieces, whatever the numbers of
     * their garments. One for other pieces is of no use and passed over.
     */
    public static MarkerAnswer make(
            MarkerOrder order, Marker known, Search search, BiConsumer<Marker, Progress> watcher) {
        boolean same = Ruling.of(order) instanceof Ruling.Task ruled
                && contours(ruled.items())
                        .equals(contours(
                                known.placements().stream().map(Placement::item).toList()));
        return make(order, same ? Optional.of(known) : Optional.empty(), search, watcher);
    }

    private static MarkerAnswer make(
            MarkerOrder order, Optional<Marker> strict, Search search, BiConsumer<Marker, Progress> watcher) {
        Ruling ruling = Ruling.of(order);
        if (ruling instanceof Ruling.Refused refused) {
            return new MarkerAnswer.Impossible(refused.reason());
        }
        if (FillerRule.of(order) instanceof Ruling.Refused refused) {
            return new MarkerAnswer.Impossible(refused.reason());
        }
        Ruling.Task ruled = (Ruling.Task) ruling;
        Optional<String> wrong = whatIsCutWrong(order, ruled);
        if (wrong.isPresent()) {
            return new MarkerAnswer.Impossible(wrong.get());
        }
        Search watched = search.watchedBy(event -> {
            search.watcher().accept(event);
            if (event instanceof SearchEvent.Improved improved) {
                watcher.accept(marker(order, ruled, improved.layout()), improved.progress());
            }
        });
        Optional<Layout> known =
                strict.map(marker -> layout(marker, ruled.items())).or(() -> asPlanned(order, ruled, search));
        boolean fromOnGrain = Tilting.isTried(ruled) && !Tilting.isTilted(ruled, known);
        SearchResult result = !fromOnGrain
                ? StripSearch.solve(
                        Tilting.isTilted(ruled, known) ? ruled.tilted().orElseThrow() : ruled.task(), watched, known)
                : StripSearch.solve(ruled.task(), Tilting.onGrain(watched), known);
        if (fromOnGrain && result instanceof SearchResult.Unplaceable) {
            fromOnGrain = false;
            result = StripSearch.solve(ruled.tilted().orElseThrow(), watched, known);
        }
        if (result instanceof SearchResult.Unplaceable unplaceable) {
            return new MarkerAnswer.Impossible(whyNot(order, ruled, unplaceable.demands()));
        }
        SearchResult.Solved solved = (SearchResult.Solved) result;
        // blocks of strips are taken where they cost next to nothing, and next to nothing is not nothing
        Layout shortest =
                known.filter(first -> first.length() < solved.layout().length()).orElse(solved.layout());
        Layout layout = fromOnGrain ? Tilting.of(ruled, shortest, watched) : shortest;
        Marker marker = marker(order, ruled, layout);
        // a piece that may be tilted may be so by less than is tried
        Length lowerBound = ruled.lengths()
                .upTo(new Length(ruled.tilted().map(LowerBound::byArea).orElse(solved.lowerBound())));
        Optional<Length> room = order.fabric().room();
        if (room.isPresent() && marker.length().compareTo(room.get()) > 0) {
            LayoutTask inPhase = ruled.task().inPhaseOf(layout.poses());
            OnCloth onCloth = OnCloth.of(inPhase, layout, ruled.lengths().downTo(room.get()), search);
            if (!onCloth.staysOut().isEmpty()) {
                return new MarkerAnswer.TooLong(
                        marker,
                        room.get(),
                        lowerBound,
                        onCloth.staysOut().stream().map(ruled.items()::get).toList());
            }
            marker = marker(order, ruled, onCloth.layout(inPhase));
        }
        List<Violation> violations = MarkerCheck.violations(marker);
        if (!violations.isEmpty()) {
            return new MarkerAnswer.Rejected(marker, violations);
        }
        StopReason reason = marker.length().equals(lowerBound) ? StopReason.PROVEN_SHORTEST : solved.reason();
        Optional<Length> onGrain = layout.equals(shortest)
                ? Optional.empty()
                : Optional.of(ruled.lengths().upTo(new Length(shortest.length())));
        return new MarkerAnswer.Made(marker, lowerBound, ruled.surplus(), solved.progress(), reason, onGrain);
    }

    /** Says what is against the pieces that are cut already; nothing where the rest can be laid round them. */
    private static Optional<String> whatIsCutWrong(MarkerOrder order, Ruling.Task ruled) {
        return firstViolation(order, ruled, order.cutAlready().pieces())
                .map(violation ->
                        "What is cut already of %s breaks a rule itself: %s Leave that piece out of what is cut, or change the rule."
                                .formatted(order.fabric().name(), violation.sentence()));
    }

    /** Returns what is wrong with where some of the pieces of a marker lie; what they are for is known by their places. */
    private static Optional<Violation> firstViolation(MarkerOrder order, Ruling.Task ruled, List<PlacedPiece> pieces) {
        Length end = new Length(pieces.stream()
                .mapToLong(piece -> piece.outline().box().maxX())
                .max()
                .orElse(0));
        return pieces.isEmpty()
                ? Optional.empty()
                : MarkerCheck.violations(order, pieces, ruled.lengths().upTo(end), Length.ZERO).stream()
                        .filter(violation -> !violation.isOfTheCount())
                        .findFirst();
    }

    /** Returns a layout where what is not cut lies as it was planned, but for what cannot any more. */
    private static Optional<Layout> asPlanned(MarkerOrder order, Ruling.Task ruled, Search search) {
        CutAlready cut = order.cutAlready();
        List<PlacedPiece> all =
                Stream.concat(cut.pieces().stream(), cut.planned().stream()).toList();
        if (cut.planned().isEmpty() || firstViolation(order, ruled, all).isPresent()) {
            return Optional.empty();
        }
        Search brief = new Search(
                StopRule.iterations(SWEEPS_AS_PLANNED),
                search.seed(),
                1,
                search.clock(),
                search.cancelled(),
                event -> {});
        return StripSearch.solve(CutAlreadyRule.asPlanned(ruled, order), brief) instanceof SearchResult.Solved solved
                ? Optional.of(solved.layout())
                : Optional.empty();
    }

    /**
     * Returns a marker for an order that is no longer than its cloth has room for, unchecked, if a search finds one; it
     * ends as soon as it does. An order that cannot be laid at all is not told apart here, it has an empty marker:
     * {@link #make} says why.
     */
    public static Optional<Marker> fitting(MarkerOrder order, Search search) {
        Optional<Length> room = order.fabric().room();
        if (room.isEmpty()
                || !(Ruling.of(order) instanceof Ruling.Task ruled)
                || ruled.items().isEmpty()) {
            return Optional.of(new Marker(order, List.of(), Length.ZERO));
        }
        Length longest = ruled.lengths().downTo(room.get());
        double cuttable = longest.millimetres() * order.fabric().cuttableWidth().millimetres();
        double wanted = ruled.items().stream()
                .mapToDouble(item -> item.piece().outline().squareMillimetres())
                .sum();
        if (wanted > cuttable) {
            return Optional.empty();
        }
        AtomicBoolean found = new AtomicBoolean();
        Search untilFound = search.cancelledBy(
                        () -> found.get() || search.cancelled().getAsBoolean())
                .watchedBy(event -> {
                    if (event instanceof SearchEvent.Improved improved
                            && improved.layout().length() <= longest.micrometres()) {
                        found.set(true);
                    }
                });
        return StripSearch.solve(ruled.task(), untilFound) instanceof SearchResult.Solved solved
                        && solved.layout().length() <= longest.micrometres()
                ? Optional.of(marker(order, ruled, solved.layout()))
                : Optional.empty();
    }

    static Marker marker(MarkerOrder order, Ruling.Task ruled, Layout layout) {
        List<Placement> placements = IntStream.range(0, ruled.items().size())
                .mapToObj(
                        i -> new Placement(ruled.items().get(i), layout.poses().get(i)))
                .toList();
        return new Marker(order, placements, ruled.lengths().upTo(new Length(layout.length())));
    }

    /** What has to be laid, whichever garments it is for. */
    private record Contour(Piece piece, boolean mirrored) {}

    private static List<Contour> contours(List<Item> items) {
        return items.stream()
                .map(item -> new Contour(item.piece(), item.mirrored()))
                .toList();
    }

    private static Layout layout(Marker marker, List<Item> items) {
        List<Placement> placements = marker.placements();
        if (!contours(placements.stream().map(Placement::item).toList()).equals(contours(items))) {
            throw new IllegalArgumentException("The stricter marker has other pieces, or in another order: "
                    + placements.size() + " for " + items.size() + ".");
        }
        return new Layout(
                placements.stream().map(Placement::pose).toList(),
                marker.piecesEnd().micrometres());
    }

    private static String whyNot(MarkerOrder order, Ruling.Task ruled, List<Integer> demands) {
        List<String> reasons = new ArrayList<>();
        for (int index : demands) {
            Piece piece = ruled.items().get(index).piece();
            Demand demand = ruled.task().demands().get(index);
            String reason = demand.domain().orientations().stream()
                                    .mapToLong(orientation -> across(orientation, demand))
                                    .min()
                                    .orElseThrow()
                            > ruled.task().height()
                    ? tooWide(order, piece, demand)
                    : "%s finds no place on %s: %s."
                            .formatted(named(piece), order.fabric().name(), inTheWay(order, demand));
            if (!reasons.contains(reason)) {
                reasons.add(reason);
            }
        }
        return reasons.isEmpty() ? noRoomTogether(order) : String.join(" ", reasons);
    }

    private static String inTheWay(MarkerOrder order, Demand demand) {
        return order.fabric().join().isPresent()
                ? "the selvedges meet in the middle, and nothing is cut across them. Lay this fabric in a single layer, or with one fold along it"
                : demand.domain().positions() instanceof PlacementDomain.Positions.Lattice
                        ? "where its match point meets the print there is no room for it. Take wider cloth, allow a larger tolerance, or leave its match point out"
                        : demand.domain().positions() instanceof PlacementDomain.Positions.Cells
                                ? "where it minds the motifs of the print there is no room for it. Take wider cloth, or let it mind fewer of them"
                                : "flaws, or what it is tied to, leave no room for it. Take other cloth, or tie it to less";
    }

    /** Each piece has a place by itself, but not all of them together: a fold across the cloth is no longer than it is wide. */
    private static String noRoomTogether(MarkerOrder order) {
        if (order.fabric().shade().isPresent()) {
            return "No layout of %s was found that keeps together what is to be of one shade (shade: %s). Allow more there, or take wider cloth."
                    .formatted(
                            order.fabric().name(),
                            ShadeWords.allowed(order.fabric().shade().get()));
        }
        return "The pieces on the fold of %s find no room side by side: it is %s wide. Lay fewer garments, or lay this fabric in a single layer."
                .formatted(
                        order.fabric().name(),
                        centimetres(order.fabric().cuttableWidth().micrometres()));
    }

    private static String tooWide(MarkerOrder order, Piece piece, Demand demand) {
        long least = demand.domain().orientations().stream()
                .mapToLong(orientation -> across(orientation, demand))
                .min()
                .orElseThrow();
        String wayOut = piece.strip()
                ? "Let it run the other way, or cut it in parts and join them."
                : "Take wider cloth, lay it in a single layer, or split the piece.";
        return "%s is %s across the fabric; the cuttable width of %s is %s. %s"
                .formatted(
                        named(piece),
                        centimetres(least),
                        order.fabric().name(),
                        centimetres(order.fabric().cuttableWidth().micrometres()),
                        wayOut);
    }

    private static long across(Orientation orientation, Demand demand) {
        Box box = orientation.apply(demand.outline()).box();
        return box.height();
    }

    private static String centimetres(long micrometres) {
        return String.format(java.util.Locale.ROOT, "%.1f cm (%.2f in)", micrometres / 1e4, micrometres / 25_400.0);
    }

    private static String named(Piece piece) {
        return piece.size().name().isEmpty()
                ? piece.name()
                : piece.name() + " " + piece.size().name();
    }
}
