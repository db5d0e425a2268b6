package lengthwise.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;

/**
 * The judge of a marker: lists everything that is wrong with it. An empty list is the leave to cut.
 *
 * <p>It sees only the order and the outlines as they lie with their labels. What has to be there it works out from the
 * order itself; how a piece lies it reads from its outline. A marker of our own is judged exactly, to the micrometre; one
 * read back from a file to a tolerance.
 */
public final class MarkerCheck {
    /** How far a marker read back from a file may be off. */
    public static final Length OUTSIDE_TOLERANCE = Length.ofMillimetres(0.02);

    private final MarkerOrder order;
    private final Length tolerance;
    private final List<Wanted> wanted;
    private final List<Wanted> fillers;
    private final ShapeReader shapes;
    private final Tilts tilts;
    private final List<PieceRule> rules;

    MarkerCheck(MarkerOrder order, Length tolerance) {
        Fabric fabric = order.fabric();
        this.order = order;
        this.tolerance = tolerance;
        this.wanted = Wanted.of(order.bundles(), fabric);
        this.fillers = Wanted.of(order.fillers(), fabric);
        this.shapes = new ShapeReader(tolerance);
        this.tilts = new Tilts(order, tolerance);
        this.rules = List.of(
                new GrainLine(order),
                new TrueBias(),
                new UpEnd(fabric.direction()),
                new UpEndBelow(fabric.spread()),
                new HandLetter(fabric.spread()),
                new FoldEdge(fabric, tolerance),
                new BorderLine(order, tolerance),
                new PrintMatch(fabric, tolerance),
                new MindedMotifs(order, tolerance));
    }

    /** Returns what is wrong with a marker of our own, with no tolerance. */
    public static List<Violation> violations(Marker marker) {
        return violations(
                marker.order(),
                marker.placements().stream().map(PlacedPiece::of).toList(),
                marker.length(),
                Length.ZERO);
    }

    /**
     * Returns what is wrong with a marker from any source.
     *
     * @param pieces everything that is to be cut from it
     * @param length the marker's stated length
     * @param tolerance how far an outline may be off, and two may be into each other
     */
    public static List<Violation> violations(
            MarkerOrder order, List<PlacedPiece> pieces, Length length, Length tolerance) {
        return new MarkerCheck(order, tolerance).judge(pieces, length);
    }

    private List<Violation> judge(List<PlacedPiece> pieces, Length length) {
        List<Violation> violations = new ArrayList<>();
        List<Laid> known = onTheCloth(pieces, length, violations);
        violations.addAll(new Count(order.fabric().spread()).violations(withFillers(known), known));
        return violations;
    }

    /** Returns what lies there of the order; adds what is wrong, whatever else of the order is cut from other cloth. */
    List<Laid> onTheCloth(List<PlacedPiece> pieces, Length length, List<Violation> violations) {
        CuttableArea area = new CuttableArea(order, length, tolerance);
        SelvedgeJoin join = new SelvedgeJoin(order.fabric().join(), tolerance);
        Flaws flaws = new Flaws(order.fabric().flaws(), tolerance);
        ZoneBand zones = new ZoneBand(order, tolerance);
        ClothOnHand cloth = new ClothOnHand(order.fabric(), tolerance);
        violations.addAll(new Separation(order, tolerance).violations(pieces));
        violations.addAll(new WhereCut(order.cutAlready(), tolerance).violations(pieces));
        List<Laid> known = new ArrayList<>();
        for (PlacedPiece piece : pieces) {
            violations.addAll(area.violations(piece));
            violations.addAll(join.violations(piece));
            violations.addAll(zones.violations(piece));
            violations.addAll(flaws.violations(piece));
            violations.addAll(cloth.violations(piece));
            identified(piece, violations).map(laid -> ruled(laid, violations)).ifPresent(known::add);
        }
        violations.addAll(new WholeRepeat(order, tolerance).violations(known, length));
        violations.addAll(new MatchedPieces(order.fabric(), tolerance).violations(known));
        violations.addAll(new OneShade(order, tolerance).violations(known));
        violations.addAll(tilts.violations(known));
        return order.fabric().direction() == Direction.ONE_WAY_PER_GARMENT
                ? new GarmentDirection(new Count(order.fabric().spread()))
                        .settled(withFillers(known), known, violations)
                : known;
    }

    /** Returns what has to be there: all that is ordered, and of the fillers each of which some part is there. */
    private List<Wanted> withFillers(List<Laid> known) {
        Set<Integer> there = garments(known);
        return Stream.concat(
                        wanted.stream(),
                        fillers.stream()
                                .filter(one -> there.contains(one.garment().number())))
                .toList();
    }

    /** Returns the numbers of the garments, and of the fillers, of which something lies there. */
    static Set<Integer> garments(List<Laid> known) {
        return known.stream()
                .flatMap(laid -> laid.wanted().stream())
                .map(one -> one.garment().number())
                .collect(Collectors.toSet());
    }

    /** Returns what the garments need of this cloth, if all of it is cut from it. */
    List<Wanted> wanted() {
        return wanted;
    }

    /** Returns likewise what each filler is. */
    List<Wanted> fillers() {
        return fillers;
    }

    /** Finds out what a piece is in the order and how it lies. */
    private Optional<Laid> identified(PlacedPiece piece, List<Violation> violations) {
        List<Wanted> found = new ArrayList<>();
        for (int garment : piece.garments().stream().distinct().toList()) {
            List<Wanted> named = Stream.concat(wanted.stream(), fillers.stream())
                    .filter(one -> one.isNamed(piece, garment))
                    .toList();
            named.stream()
                    .filter(one -> !shapes.readings(piece.outline(), one.piece().outline())
                            .isEmpty())
                    .findFirst()
                    .or(() -> named.stream().findFirst())
                    .ifPresent(found::add);
        }
        if (found.isEmpty()
                || found.size() < piece.garments().stream().distinct().count()) {
            violations.add(new Violation.NotOrdered(piece));
        } else {
            CustomerName.violation(piece, found).ifPresent(violations::add);
        }
        return found.isEmpty() ? Optional.empty() : Optional.of(read(piece, found, violations));
    }

    private Laid read(PlacedPiece piece, List<Wanted> found, List<Violation> violations) {
        List<Reading> readings = List.of();
        for (Wanted one : found) {
            List<Reading> exact = shapes.readings(piece.outline(), one.piece().outline());
            if (exact.isEmpty()) {
                exact = shapes.tilted(piece.outline(), one.piece().outline(), tilts.degreesAllowed(one));
            }
            if (exact.isEmpty()) {
                ShapeReader.Finding finding = shapes.nearest(piece, one.piece().outline());
                violations.addAll(finding.violations());
                exact = finding.readings();
            }
            readings = readings.isEmpty() ? exact : readings;
        }
        return new Laid(piece, found, readings);
    }

    /** Applies the rules of single pieces in turn, each to the readings that kept those before it. */
    private Laid ruled(Laid laid, List<Violation> violations) {
        Laid narrowed = laid;
        Wanted first = laid.wanted().get(0);
        for (PieceRule rule : rules) {
            List<Reading> kept = narrowed.readings().stream()
                    .filter(reading -> rule.isKept(laid.placed(), first, reading))
                    .toList();
            if (kept.isEmpty()) {
                violations.add(
                        rule.violation(laid.placed(), first, narrowed.readings().get(0)));
            } else {
                narrowed = narrowed.readAs(kept);
            }
        }
        return narrowed;
    }
}
