package lengthwise.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.CutPiece;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Motif;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Repeat;
import lengthwise.model.Segment;
import lengthwise.model.Spread;

/**
 * A piece, or a mark of it, keeps off the motifs of the print that it is to keep off, and a mark lies on one of those that it is
 * to lie on. Every copy of a motif near to the piece is looked at as it is drawn, a round one by its equation. Through two
 * layers that meet in a fold at y = 0 this holds in both: what lies at y in the one is at −y of the opened cloth in the other.
 */
final class MindedMotifs implements PieceRule {
    /** A round motif is drawn with so many: of one that is 10 cm wide half a micrometre lacks. */
    private static final int CORNERS = 720;

    private final MarkerOrder order;
    private final Optional<Repeat> repeat;
    private final double tolerance;

    MindedMotifs(MarkerOrder order, Length tolerance) {
        this.order = order;
        this.repeat = order.fabric().repeatOnTable();
        this.tolerance = tolerance.micrometres();
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        return worst(placed, wanted, reading).isEmpty();
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        return worst(placed, wanted, reading).orElseThrow();
    }

    /** Returns the first motif that is not minded. */
    private Optional<Violation> worst(PlacedPiece placed, Wanted wanted, Reading reading) {
        if (repeat.isEmpty()) {
            return Optional.empty();
        }
        double allowed = tolerance + reading.deviation();
        for (Lying.MotifTie tie : order.lyingOf(wanted.name()).motifs()) {
            String name = tie.motif().name();
            if (tie.at().isEmpty()) {
                OptionalDouble over = over(placed.outline(), tie.motif(), (long) allowed);
                if (over.isPresent()) {
                    return Optional.of(new Violation.OverMotif(placed, "", name, over.getAsDouble()));
                }
                continue;
            }
            for (Point point : points(wanted, tie)) {
                Point at = reading.pose().apply(point);
                double within = leastOrMost(at, tie);
                String mark = tie.at().get().called();
                if (tie.on() && within < -allowed) {
                    return Optional.of(new Violation.BesideMotif(placed, mark, name, -within / 1000));
                }
                if (!tie.on() && within > allowed) {
                    return Optional.of(new Violation.OverMotif(placed, mark, name, within / 1000));
                }
            }
        }
        return Optional.empty();
    }

    /** Returns how deep a point lies in the motif, in the layer where that is worst. */
    private double leastOrMost(Point at, Lying.MotifTie tie) {
        double upper = depth(at, tie.motif());
        if (order.fabric().spread().form() != Spread.Form.FOLD_LENGTHWISE) {
            return upper;
        }
        double lower = depth(new Point(at.x(), -at.y()), tie.motif());
        return tie.on() ? Math.min(upper, lower) : Math.max(upper, lower);
    }

    /** Returns where a mark is as the piece is drawn; on one that is drawn as a half and opened, its mirror image too. */
    private List<Point> points(Wanted wanted, Lying.MotifTie tie) {
        List<Point> points = new ArrayList<>();
        Optional<Point> mark = wanted.piece().marks().at(tie.at().orElseThrow());
        Optional<Segment> fold = order.withAllFillers().stream()
                .flatMap(bundle -> bundle.pieces().stream())
                .map(CutPiece::piece)
                .filter(piece -> piece.name().equals(wanted.name())
                        && piece.size().name().equals(wanted.size()))
                .flatMap(piece -> piece.foldEdge().stream())
                .findFirst();
        if (mark.isPresent()) {
            points.add(mark.get());
            if (fold.isPresent() && !wanted.onFold()) {
                Point end = fold.get().from();
                Point there = mark.get();
                points.add(
                        end.y() == fold.get().to().y()
                                ? new Point(there.x(), 2 * end.y() - there.y())
                                : new Point(2 * end.x() - there.x(), there.y()));
            }
        }
        return points;
    }

    /** Returns how deep a point lies in any copy of a motif, negative by how far it is off the nearest. */
    private double depth(Point at, Motif motif) {
        double deepest = Double.NEGATIVE_INFINITY;
        for (Point copy : copies(new Box(at.x(), at.y(), at.x(), at.y()), motif)) {
            deepest = Math.max(deepest, depth(at, copy, motif));
        }
        return deepest;
    }

    private double depth(Point at, Point copy, Motif motif) {
        Repeat print = repeat.orElseThrow();
        Box place = motif.place().moved(copy);
        boolean along = print.lengthwise().micrometres() > 0;
        boolean across = print.crosswise().micrometres() > 0;
        if (motif.round()) {
            double x = (2.0 * at.x() - place.minX() - place.maxX()) / place.width();
            double y = (2.0 * at.y() - place.minY() - place.maxY()) / place.height();
            return (1 - Math.sqrt(x * x + y * y)) * Math.min(place.width(), place.height()) / 2;
        }
        double inX = along ? Math.min(at.x() - place.minX(), place.maxX() - at.x()) : Double.POSITIVE_INFINITY;
        double inY = across ? Math.min(at.y() - place.minY(), place.maxY() - at.y()) : Double.POSITIVE_INFINITY;
        return Math.min(inX, inY);
    }

    /** Returns how thick the part of a piece is that lies over a copy of a motif in either layer, in millimetres. */
    private OptionalDouble over(Outline outline, Motif motif, long allowed) {
        List<Outline> layers = new ArrayList<>(List.of(outline));
        if (order.fabric().spread().form() == Spread.Form.FOLD_LENGTHWISE) {
            layers.add(outline.mapped(point -> new Point(point.x(), -point.y())));
        }
        List<Double> over = new ArrayList<>();
        for (Outline layer : layers) {
            PlacedArea area = PlacedArea.of(layer);
            for (Point copy : copies(layer.box(), motif)) {
                Ring ring = drawn(motif, copy, layer.box());
                if (ring.box().overlaps(layer.box())) {
                    PlacedArea place = PlacedArea.of(Outline.of(ring));
                    if (area.overlaps(place, allowed)) {
                        over.add(area.overlap(place).millimetres());
                    }
                }
            }
        }
        return over.stream().mapToDouble(Double::doubleValue).max();
    }

    /** Returns a motif as a ring; of a stripe, as much of it as lies beside a box. */
    private Ring drawn(Motif motif, Point copy, Box beside) {
        Repeat print = repeat.orElseThrow();
        Box place = motif.place().moved(copy);
        boolean along = print.lengthwise().micrometres() > 0;
        boolean across = print.crosswise().micrometres() > 0;
        if (!motif.round()) {
            return new Box(
                            along ? place.minX() : beside.minX(),
                            across ? place.minY() : beside.minY(),
                            along ? place.maxX() : beside.maxX(),
                            across ? place.maxY() : beside.maxY())
                    .ring();
        }
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < CORNERS; i++) {
            double angle = 2 * Math.PI * i / CORNERS;
            corners.add(new Point(
                    (long) (0.5 * (place.minX() + place.maxX()) + 0.5 * place.width() * StrictMath.cos(angle)),
                    (long) (0.5 * (place.minY() + place.maxY()) + 0.5 * place.height() * StrictMath.sin(angle))));
        }
        return Ring.of(corners);
    }

    /** Returns the points of the print whose motif lies in a box or within a repeat of it. */
    private List<Point> copies(Box box, Motif motif) {
        Repeat print = repeat.orElseThrow();
        long along = print.lengthwise().micrometres();
        long across = print.crosswise().micrometres();
        Point origin = new Point(print.originX().micrometres(), print.originY().micrometres());
        Box near = motif.place().moved(origin);
        List<Point> copies = new ArrayList<>();
        long firstRow = across == 0 ? 0 : (box.minY() - near.maxY()) / across - 2;
        long lastRow = across == 0 ? 0 : (box.maxY() - near.minY()) / across + 2;
        for (long row = firstRow; row <= lastRow; row++) {
            long drop = print.halfDrop() && across > 0 && row % 2 != 0 ? along / 2 : 0;
            long first = along == 0 ? 0 : (box.minX() - near.maxX() - drop) / along - 2;
            long last = along == 0 ? 0 : (box.maxX() - near.minX() - drop) / along + 2;
            for (long column = first; column <= last; column++) {
                copies.add(origin.plus(new Point(column * along + drop, row * across)));
            }
        }
        return copies;
    }
}
