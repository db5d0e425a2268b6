package lengthwise.report;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.GrainLine;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Marker;
import lengthwise.model.Piece;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.SpreadWords;
import lengthwise.svg.MarkerPicture;
import lengthwise.svg.Markup;

/**
 * The page for the maker who pins her own paper pieces: a picture with numbers, and for each piece in laying order how
 * far both ends of its grain line are from the selvedge, or from the fold, and from the cut end of the fabric.
 */
final class PlacementSheet {
    private final Run run;
    private final Marker marker;
    private final Fabric fabric;
    private final Point corner;
    private final Page page;
    private final Markup html;

    private PlacementSheet(Run run, FabricRun fabricRun) {
        this.run = run;
        marker = fabricRun.marker();
        fabric = marker.order().fabric();
        corner = new Point(
                fabric.spread().startAllowance().micrometres(),
                fabric.edgesOnTable().near().micrometres());
        page = new Page("Placement sheet: " + fabric.name() + ", " + run.job());
        html = page.content();
    }

    /** Returns the text of the page. */
    static String of(Run run, FabricRun fabricRun) {
        return new PlacementSheet(run, fabricRun).write();
    }

    private String write() {
        html.element("h1", fabric.name())
                .element("p", "Placement sheet · " + run.job(), "class", "quiet")
                .line();
        MarkerPicture.draw(html, marker, 75);
        Length clothLength = fabric.spread().onTable(marker.length());
        String edge = SpreadWords.nearEdge(fabric.spread());
        html.element(
                "p",
                "Lay out %s of cloth, %s wide%s. %s"
                        .formatted(
                                LengthWords.both(clothLength),
                                LengthWords.both(fabric.laidWidth()),
                                fabric.widthKept() == 1 ? "" : " after washing",
                                howToLay()));
        html.element(
                "p",
                ("Measure to both ends of the grain line: \"from the %s\" across the cloth, from its very edge; \"from the"
                                + " start\" along it, from the cut end. Where both distances from the %s are equal, the"
                                + " piece lies on grain. \"Turned over\" means the drawn side down. A strip"
                                + " is measured along its middle, from end to end. The first end is the one nearer the start of the"
                                + " cloth; check a few with a tape before you cut.")
                        .formatted(edge, edge));
        List<StraightBlock> blocks = StraightBlock.on(marker);
        if (!blocks.isEmpty()) {
            html.element("h3", "Straight-cut blocks");
            Page.list(html, "ul", blocks.stream().map(StraightBlock::sentence).toList());
            html.element("p", StraightBlock.howToCut(blocks));
        }
        html.line().open("table", "class", "sheet").line().open("thead").line();
        html.open("tr");
        List<Placement> placements = marker.inLayingOrder();
        List<Column> columns = columns(placements);
        html.element("th", "no.", "rowspan", "3");
        for (Column column : columns) {
            html.element("th", column.heading, "rowspan", "3");
        }
        html.element("th", "from the " + edge, "class", "over", "colspan", "4");
        html.element("th", "from the start", "class", "over", "colspan", "4")
                .close()
                .line();
        html.open("tr");
        for (String end : List.of("first end", "other end", "first end", "other end")) {
            html.element("th", end, "class", "over", "colspan", "2");
        }
        html.close().line();
        html.open("tr");
        for (int i = 0; i < 4; i++) {
            html.element("th", "cm", "class", "number end").element("th", "in", "class", "number");
        }
        html.close().line().close().line().open("tbody").line();
        for (int i = 0; i < placements.size(); i++) {
            row(i + 1, placements.get(i), columns);
        }
        html.close().line().close().line();
        return page.text();
    }

    private String howToLay() {
        return switch (fabric.spread().form()) {
            case SINGLE_LAYER -> "One layer, right side up.";
            case FOLD_LENGTHWISE ->
                "Fold it lengthwise, right sides together, the fold away from you as in the picture. Cut every piece"
                        + " through both layers, and never along the fold.";
            default ->
                "%s. %s"
                        .formatted(
                                capitalised(SpreadWords.heading(fabric.spread())), SpreadWords.layers(fabric.spread()));
        };
    }

    private static String capitalised(String capitals) {
        return capitals.charAt(0) + capitals.substring(1).toLowerCase(Locale.ROOT);
    }

    /** A column of words before the distances. */
    private record Column(String heading, Function<Placement, String> words) {}

    /** Sizes and hands have no column where there are none. */
    private List<Column> columns(List<Placement> placements) {
        Column size =
                new Column("size", placement -> placement.item().piece().size().name());
        Column hand = new Column("hand", placement -> Hands.of(placement.item(), marker.order()));
        return Stream.of(
                        new Column(
                                "piece", placement -> placement.item().piece().name()),
                        size,
                        new Column("garment", PlacementSheet::garments),
                        hand,
                        new Column(
                                "how it lies",
                                placement -> howItLies(placement)
                                        + (marker.order().cutAlready().holds(placement) ? "; cut already" : "")))
                .filter(column -> !(column.equals(size) || column.equals(hand))
                        || placements.stream()
                                .anyMatch(placement ->
                                        !column.words.apply(placement).isEmpty()))
                .toList();
    }

    private static String garments(Placement placement) {
        return Garment.called(placement.item().garments());
    }

    private void row(int number, Placement placement, List<Column> columns) {
        Segment line = GrainLine.middleOfStrip(placement).orElseGet(() -> GrainLine.of(placement));
        List<Point> ends = Stream.of(line.from(), line.to())
                .sorted(Comparator.comparingLong(Point::x).thenComparingLong(Point::y))
                .toList();
        html.open("tr");
        html.element("td", Integer.toString(number), "class", "number");
        columns.forEach(column -> html.element("td", column.words.apply(placement)));
        for (Point end : ends) {
            distance(new Length(end.y() + corner.y()));
        }
        for (Point end : ends) {
            distance(new Length(end.x() + corner.x()));
        }
        html.close().line();
    }

    private void distance(Length length) {
        String inches = LengthWords.inches(length, 16);
        html.element("td", LengthWords.centimetres(length), "class", "number end");
        html.element("td", inches.substring(0, inches.length() - 3), "class", "number");
    }

    /** Which face is up and where the up end, or else the head of the grain line, points in the picture. */
    private static String howItLies(Placement placement) {
        Piece piece = placement.item().piece();
        String face = placement.pose().orientation().flipped() ? "turned over" : "as drawn";
        if (piece.turning() == Piece.Turning.ON_BIAS) {
            Point own = piece.upEnd().orElse(new Point(1, 1));
            Point line = placement.pose().orientation().apply(own);
            String end = piece.up().isPresent() ? ", up " : " ";
            return (piece.strip() ? "" : face + ", ") + "on the bias" + end + diagonal(line);
        }
        if (piece.upEnd().isPresent()) {
            Point up = placement.pose().orientation().apply(piece.upEnd().get());
            return face + ", up " + arrow(up);
        }
        Optional<Segment> drawn = piece.marks().grainLine();
        if (drawn.isPresent()) {
            Segment line = GrainLine.of(placement);
            return face + ", arrow " + arrow(line.to().minus(line.from()));
        }
        return piece.strip() ? runs(placement) : face;
    }

    private static String runs(Placement placement) {
        Segment middle = GrainLine.middleOfStrip(placement).orElseGet(() -> GrainLine.of(placement));
        Point along = middle.to().minus(middle.from());
        return Math.abs(along.x()) >= Math.abs(along.y()) ? "runs ↔" : "runs ↕";
    }

    private static String diagonal(Point direction) {
        return direction.x() >= 0 ? (direction.y() >= 0 ? "↘" : "↗") : (direction.y() >= 0 ? "↙" : "↖");
    }

    private static String arrow(Point direction) {
        if (Math.abs(direction.x()) >= Math.abs(direction.y())) {
            return direction.x() >= 0 ? "→" : "←";
        }
        return direction.y() >= 0 ? "↓" : "↑";
    }
}
