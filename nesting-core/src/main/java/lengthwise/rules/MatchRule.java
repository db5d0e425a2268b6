package lengthwise.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.model.Axis;
import lengthwise.model.Fabric;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.MatchPoint;
import lengthwise.model.MatchPoint.Partner;
import lengthwise.model.Piece;
import lengthwise.model.Repeat;
import lengthwise.model.Spread;
import lengthwise.rules.PlacementDomain.Positions.Lattice;

/**
 * Match points: a piece meets the print, or two of one garment lie alike in it.
 *
 * <p>Pieces that are matched to each other form a group. Every member gets a point of its own, its anchor, such that all
 * anchors have to fall alike: that takes the way from mark to mark into the piece, and one lattice for all is left. Where a
 * member is fixed the lattice is the print's; else it may be moved as a whole, and the search finds out where to. The way
 * from mark to mark turns with the piece, so all members lie at the same turn.
 *
 * <p>Each of two matched pieces may be off by half of what is allowed between them.
 */
final class MatchRule {
    private final List<Item> items;
    private final Fabric fabric;
    private final Map<Integer, Lattice> lattices = new TreeMap<>();
    private final List<List<Integer>> groups = new ArrayList<>();
    private final List<Bond> phases = new ArrayList<>();

    private MatchRule(List<Item> items, Fabric fabric) {
        this.items = items;
        this.fabric = fabric;
    }

    static MatchRule of(List<Item> items, Fabric fabric) throws RefusedException {
        MatchRule rule = new MatchRule(items, fabric);
        Optional<Repeat> repeat = fabric.repeatOnTable();
        if (repeat.isPresent()) {
            rule.match(repeat.get());
        }
        return rule;
    }

    /** Returns where a match point lets an item lie. */
    Optional<Lattice> lattice(int item) {
        return Optional.ofNullable(lattices.get(item));
    }

    /**
     * Returns the turns and flips at which a piece may lie that is matched to another: along the grain, and through layers
     * face to face with the same face up.
     */
    List<Orientation> alike(int item, List<Orientation> orientations) {
        if (!isInGroup(item)) {
            return orientations;
        }
        return orientations.stream()
                .filter(way -> way.turn().quarters() % 2 == 0)
                .filter(way -> !(fabric.spread().mirrors() && way.flipped()))
                .toList();
    }

    /** Returns the groups whose lattice the search may move. */
    List<Bond> phases() {
        return List.copyOf(phases);
    }

    /**
     * Returns what has to lie at one turn: what a garment's direction binds, and what is matched to each other and could lie
     * at several turns.
     */
    List<Bond> sameTurn(List<Bond> directions, List<Demand> demands) {
        List<List<Integer>> sets = new ArrayList<>();
        directions.forEach(bond -> sets.add(((Bond.SameTurn) bond).members()));
        for (List<Integer> group : groups) {
            if (group.stream().anyMatch(member -> turns(demands.get(member)) > 1)) {
                List<List<Integer>> met = sets.stream()
                        .filter(set -> !Collections.disjoint(set, group))
                        .toList();
                sets.removeAll(met);
                sets.add(Stream.concat(met.stream(), Stream.of(group))
                        .flatMap(List::stream)
                        .distinct()
                        .toList());
            }
        }
        return sets.stream().map(set -> (Bond) new Bond.SameTurn(set)).toList();
    }

    private static long turns(Demand demand) {
        return demand.domain().orientations().stream()
                .map(Orientation::turn)
                .distinct()
                .count();
    }

    /** Says whether the search may move the lattice of an item. */
    boolean hasFreePhase(int item) {
        return phases.stream().anyMatch(phase -> phase.members().contains(item));
    }

    private boolean isInGroup(int item) {
        return groups.stream().anyMatch(group -> group.contains(item));
    }

    /** Two points of two items that have to fall alike. */
    private record Tie(int one, Point oneAt, int other, Point otherAt, boolean mirrored, MatchPoint match) {
        Tie reversed() {
            return new Tie(other, otherAt, one, oneAt, mirrored, match);
        }
    }

    private void match(Repeat repeat) throws RefusedException {
        Map<Integer, List<Tie>> ties = new HashMap<>();
        for (Tie tie : ties(repeat)) {
            ties.computeIfAbsent(tie.one, i -> new ArrayList<>()).add(tie);
            ties.computeIfAbsent(tie.other, i -> new ArrayList<>()).add(tie.reversed());
        }
        List<Integer> fixedFirst = IntStream.range(0, items.size())
                .filter(i -> isFixed(i) || ties.containsKey(i))
                .boxed()
                .sorted((a, b) -> Boolean.compare(!isFixed(a), !isFixed(b)))
                .toList();
        Map<Integer, Point> anchors = new HashMap<>();
        for (int item : fixedFirst) {
            if (!anchors.containsKey(item)) {
                group(item, ties, anchors, repeat);
            }
        }
    }

    private boolean isFixed(int item) {
        return items.get(item).piece().matchPoint().filter(MatchPoint::isFixed).isPresent();
    }

    private List<Tie> ties(Repeat repeat) throws RefusedException {
        List<Tie> ties = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            Optional<MatchPoint> match = items.get(i).piece().matchPoint();
            if (match.isPresent() && match.get().to().isPresent()) {
                if (match.get().to().get() instanceof Partner.Mate mate) {
                    ties.addAll(toMate(i, match.get(), mate));
                } else {
                    ties.addAll(toOtherHand(i, match.get(), repeat));
                }
            }
        }
        return ties;
    }

    private List<Tie> toMate(int item, MatchPoint match, Partner.Mate mate) throws RefusedException {
        Piece piece = items.get(item).piece();
        List<Integer> mates = IntStream.range(0, items.size())
                .filter(j -> items.get(j).piece().name().equals(mate.piece()) && shareGarment(item, j))
                .boxed()
                .toList();
        if (mates.isEmpty()) {
            throw new RefusedException(
                    "%s is matched to %s, and %s is not cut from %s: match it to a piece that is, or leave its match point out."
                            .formatted(SpreadRule.named(piece), mate.piece(), mate.piece(), fabric.name()));
        }
        List<Integer> ofItsHand = mates.stream()
                .filter(j -> hand(item) == Hand.NONE || hand(j) == Hand.NONE || hand(item) == hand(j))
                .toList();
        List<Tie> ties = new ArrayList<>();
        for (int j : ofItsHand.isEmpty() ? mates : ofItsHand) {
            Piece other = items.get(j).piece();
            refuseFreerMate(piece, match, other);
            Point at = other.marks()
                    .at(mate.at())
                    .orElseThrow(() -> new RefusedException(
                            "%s is matched to %s of %s, and there is no such mark on it: draw it, or name another."
                                    .formatted(
                                            SpreadRule.named(piece), mate.at().called(), SpreadRule.named(other))));
            ties.add(new Tie(item, match.at(), j, at, /* mirrored= */ false, match));
        }
        return ties;
    }

    /** A piece that is itself matched one way only has no place the other way that another could be matched to. */
    private void refuseFreerMate(Piece piece, MatchPoint match, Piece mate) throws RefusedException {
        for (Axis axis : Axis.values()) {
            boolean bound = match.holds(axis)
                    && fabric.repeat().orElseThrow().along(axis).micrometres() > 0;
            if (bound && mate.matchPoint().filter(its -> !its.holds(axis)).isPresent()) {
                throw new RefusedException(
                        "%s is matched to %s %s, and %s itself is not matched that way: give both match points the same along."
                                .formatted(
                                        SpreadRule.named(piece),
                                        SpreadRule.named(mate),
                                        axis == Axis.LENGTHWISE ? "lengthwise" : "crosswise",
                                        SpreadRule.named(mate)));
            }
        }
    }

    private List<Tie> toOtherHand(int item, MatchPoint match, Repeat repeat) throws RefusedException {
        Piece piece = items.get(item).piece();
        boolean acrossToo = match.holds(Axis.CROSSWISE) && repeat.crosswise().micrometres() > 0;
        if (acrossToo && !repeat.mirrored()) {
            throw new RefusedException(
                    ("Is the print of %s its own mirror image? The left and the right %s are matched to each other: say mirrored:"
                                    + " yes in its repeat, with the origin on the motif's middle, or match them along: lengthwise.")
                            .formatted(fabric.name(), SpreadRule.named(piece)));
        }
        if (fabric.spread().mirrors()) {
            PositionRule.refuseHiddenPrint(piece, fabric);
            // cut together, one in each layer, they are mirrored about the fold
            long off = acrossToo ? offInLowerLayer(repeat) : 0;
            if (Math.abs(off) > match.tolerance().micrometres()) {
                throw besideThePrint(piece, off);
            }
            return List.of();
        }
        List<Integer> others = IntStream.range(0, items.size())
                .filter(j -> items.get(j).piece().equals(piece) && shareGarment(item, j))
                .filter(j -> hand(item) != Hand.NONE && hand(j) == hand(item).other())
                .boxed()
                .toList();
        if (others.isEmpty()) {
            throw new RefusedException(
                    "%s is matched to its other hand, and there is none on %s: cut it as a pair, or match it to another piece."
                            .formatted(SpreadRule.named(piece), fabric.name()));
        }
        return others.stream()
                .filter(j -> j > item)
                .map(j -> new Tie(item, match.at(), j, match.at(), acrossToo, match))
                .toList();
    }

    private Hand hand(int item) {
        return items.get(item).hand();
    }

    private boolean shareGarment(int one, int other) {
        return one != other
                && !Collections.disjoint(
                        items.get(one).garments(), items.get(other).garments());
    }

    /** Gives every item that hangs together with a first one its anchor, and all of them their lattice. */
    private void group(int first, Map<Integer, List<Tie>> ties, Map<Integer, Point> anchors, Repeat repeat)
            throws RefusedException {
        List<Integer> members = new ArrayList<>();
        List<Integer> mirrored = new ArrayList<>();
        long share = Long.MAX_VALUE;
        Deque<Integer> open = new ArrayDeque<>(List.of(first));
        anchors.put(first, anchor(first, ties));
        while (!open.isEmpty()) {
            int item = open.remove();
            members.add(item);
            for (Tie tie : ties.getOrDefault(item, List.of())) {
                share = Math.min(share, tie.match.tolerance().micrometres() / 2);
                boolean turned = mirrored.contains(item) != tie.mirrored;
                Point anchor = anchorOfOther(tie, Objects.requireNonNull(anchors.get(item)));
                if (!anchors.containsKey(tie.other)) {
                    refuseOtherPlace(tie, anchor, first, repeat);
                    anchors.put(tie.other, anchor);
                    open.add(tie.other);
                    if (turned) {
                        mirrored.add(tie.other);
                    }
                } else if (mirrored.contains(tie.other) != turned
                        || !isSamePlace(anchor, anchors.get(tie.other), tie.match, repeat)) {
                    throw contradiction(tie.one, tie.other);
                }
            }
        }
        boolean fixed = isFixed(first);
        for (int member : members) {
            lattices.put(member, lattice(member, Objects.requireNonNull(anchors.get(member)), share, fixed, repeat));
        }
        if (members.size() > 1) {
            groups.add(List.copyOf(members));
            if (!fixed) {
                phases.add(new Bond.SamePhase(members, mirrored));
            }
        }
    }

    private Point anchor(int item, Map<Integer, List<Tie>> ties) {
        return items.get(item)
                .piece()
                .matchPoint()
                .map(MatchPoint::at)
                .orElseGet(() -> Objects.requireNonNull(ties.get(item)).get(0).oneAt);
    }

    /** The anchor of the other is as far from its mark as that of the one from its own, seen in the cloth. */
    private Point anchorOfOther(Tie tie, Point anchor) {
        Point way = tie.oneAt.minus(anchor);
        boolean flipped = (isFlipped(tie.one) != isFlipped(tie.other)) != tie.mirrored;
        return tie.otherAt.minus(flipped ? new Point(way.x(), -way.y()) : way);
    }

    private boolean isFlipped(int item) {
        return !fabric.spread().mirrors() && items.get(item).mirrored();
    }

    /** A fixed item that hangs together with another fixed one must come to the same place in the print. */
    private void refuseOtherPlace(Tie tie, Point anchor, int first, Repeat repeat) throws RefusedException {
        Optional<MatchPoint> match = items.get(tie.other).piece().matchPoint().filter(MatchPoint::isFixed);
        if (match.isPresent() && !isSamePlace(anchor, match.get().at(), tie.match, repeat)) {
            throw contradiction(first, tie.other);
        }
    }

    /** Says whether it is the same to the print which of two points is the anchor, but for half a micrometre. */
    private static boolean isSamePlace(Point anchor, Point other, MatchPoint match, Repeat repeat) {
        Point off = bare(Optional.of(match), other, repeat).off(anchor.minus(other));
        return Math.abs(off.x()) <= 1 && Math.abs(off.y()) <= 1;
    }

    private RefusedException contradiction(int one, int other) {
        return new RefusedException(
                "The match points of %s and %s contradict each other on %s: they hang together, and the print would have to lie in two ways. Leave one of them out."
                        .formatted(
                                SpreadRule.named(items.get(one).piece()),
                                SpreadRule.named(items.get(other).piece()),
                                fabric.name()));
    }

    private Lattice lattice(int item, Point anchor, long share, boolean fixed, Repeat repeat) throws RefusedException {
        Lattice bare = bare(items.get(item).piece().matchPoint(), anchor, repeat);
        long off = fixed && bare.stepY() > 0 ? offInLowerLayer(repeat) : 0;
        long tolerance = share;
        if (isFixed(item)) {
            Piece piece = items.get(item).piece();
            long own = piece.matchPoint().orElseThrow().tolerance().micrometres() - (Math.abs(off) + 1) / 2;
            if (own < 0) {
                throw besideThePrint(piece, off);
            }
            tolerance = Math.min(share, own);
        }
        return new Lattice(
                anchor,
                new Point(repeat.originX().micrometres(), repeat.originY().micrometres() - off / 2),
                bare.stepX(),
                bare.stepY(),
                repeat.halfDrop(),
                tolerance);
    }

    /** The lattice of the print from the origin, its steps only along the axes that a match point holds. */
    private static Lattice bare(Optional<MatchPoint> match, Point anchor, Repeat repeat) {
        boolean along = match.isEmpty() || match.get().holds(Axis.LENGTHWISE);
        boolean across = match.isEmpty() || match.get().holds(Axis.CROSSWISE);
        return new Lattice(
                anchor,
                Point.ORIGIN,
                along ? repeat.lengthwise().micrometres() : 0,
                across ? repeat.crosswise().micrometres() : 0,
                repeat.halfDrop(),
                0);
    }

    /**
     * Returns how far, across the cloth, the print of one layer is off that of the other where the cloth is folded
     * lengthwise: y counts from the fold, so that a point of the print at y lies at −y in the other layer.
     */
    private long offInLowerLayer(Repeat repeat) {
        long period = repeat.crosswise().micrometres() * (repeat.halfDrop() ? 2 : 1);
        // with a fold on both sides nothing is matched through the layers at all
        if (fabric.spread().form() != Spread.Form.FOLD_LENGTHWISE || period == 0) {
            return 0;
        }
        long apart = 2 * repeat.originY().micrometres();
        return apart - period * Math.floorDiv(2 * apart + period, 2 * period);
    }

    private RefusedException besideThePrint(Piece piece, long off) {
        return new RefusedException(("%s has a match point, and folded lengthwise the print of one layer of %s lies"
                        + " %s mm off that of the other, crosswise. Lay this fabric in a single layer, or fold it"
                        + " where a point of the print lies on the fold and say that with origin.")
                .formatted(SpreadRule.named(piece), fabric.name(), new Length(Math.abs(off)).millimetres()));
    }
}
