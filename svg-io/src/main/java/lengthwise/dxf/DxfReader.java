package lengthwise.dxf;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import lengthwise.drawing.Chain;
import lengthwise.drawing.Drawing;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnShape;
import lengthwise.drawing.DrawnShape.FillRule;
import lengthwise.drawing.DrawnText;
import lengthwise.drawing.Group;
import lengthwise.drawing.Names;
import lengthwise.drawing.Pen;
import lengthwise.dxf.DxfFile.Block;
import lengthwise.dxf.DxfFile.Layer;
import lengthwise.dxf.DxfFile.Thing;
import lengthwise.dxf.SewnProducts.PieceTexts;
import lengthwise.dxf.SewnProducts.Statement;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;

/**
 * Draws what a DXF file holds, seen from above, in millimetres on a page that is as large as the drawing and a margin.
 * Blocks are drawn where they are inserted.
 *
 * <p>Reference: Autodesk, <i>DXF Reference</i>.
 */
final class DxfReader {
    private static final int MOST_POINTS = 1_000_000;
    private static final int MOST_DRAWN = 400_000;
    private static final int DEEPEST = 50;
    private static final long MARGIN = 10_000;
    private static final long HALF_CROSS = 1_500;

    private static final Pattern DASHED = Pattern.compile("(?i).*(dash|hidden|dot|center|phantom|divide|border).*");
    private static final Pattern DRILL = Pattern.compile("(?i).*(drill|punch).*");

    private final DxfFile file;
    private final boolean sewn;
    private final DrawingUnit unit;
    private final Pen.Budget budget;
    private final Set<String> warnings = new LinkedHashSet<>();
    private final Map<String, Integer> leftOut = new LinkedHashMap<>();
    private final Map<String, Group> layers = new HashMap<>();
    private final Set<String> inUse = new HashSet<>();
    private final List<Words> words = new ArrayList<>();
    private final List<Sheaf> sheaves = new ArrayList<>();
    private Sheaf sheaf = new Sheaf();
    private Optional<Point2D> origin = Optional.empty();
    private int groups;
    private int drawn;

    DxfReader(DxfFile file, OptionalDouble millimetresPerUnit) throws DrawingException {
        this.file = file;
        this.sewn = SewnProducts.isOne(file);
        this.unit = DrawingUnit.of(file, sewn ? SewnProducts.units(file) : Optional.empty(), millimetresPerUnit);
        this.budget = new Pen.Budget(file.name(), MOST_POINTS);
    }

    /** What holds a thing: where it is drawn, and how. */
    private record Setting(
            AffineTransform toPage,
            List<Group> groups,
            Optional<String> layer,
            boolean hidden,
            boolean reflected,
            int depth) {}

    /** Lettering to be placed once it is known where the page begins. */
    private record Words(Thing thing, Setting setting, Sheaf sheaf) {}

    Drawing draw() throws DrawingException {
        Setting page = new Setting(
                AffineTransform.getScaleInstance(unit.millimetres(), -unit.millimetres()),
                List.of(),
                Optional.empty(),
                false,
                false,
                0);
        draw(file.things(), page);
        sheaves.add(0, sheaf);
        drawBlocksThatNobodyInserts(page);
        for (Words each : words) {
            text(each.thing, each.setting, each.sheaf);
        }
        if (sewn && Sheaf.layApart(sheaves)) {
            warnings.add("Pieces lie on one another in the file; they are read apart.");
        }
        if (!file.complete()) {
            warnings.add("The file breaks off at line " + file.lastLine()
                    + "; what was not whole is left out. Export it again if a piece is missing.");
        }
        unit.warning().ifPresent(warnings::add);
        return onItsPage();
    }

    private Drawing onItsPage() {
        Box drawnBox = sheaves.stream()
                .flatMap(each -> each.box().stream())
                .reduce(Box::union)
                .orElse(new Box(0, 0, 0, 0));
        Point shift = new Point(MARGIN - drawnBox.minX(), MARGIN - drawnBox.minY());
        sheaves.forEach(each -> each.move(shift));
        List<String> notDrawn = new ArrayList<>();
        leftOut.forEach((what, times) -> notDrawn.add(times + " × " + what));
        return new Drawing(
                file.name(),
                List.of(new Box(0, 0, drawnBox.width() + 2 * MARGIN, drawnBox.height() + 2 * MARGIN)),
                unit.millimetres(),
                unit.stated(),
                sheaves.stream().flatMap(each -> each.shapes().stream()).toList(),
                sheaves.stream().flatMap(each -> each.texts().stream()).toList(),
                List.copyOf(warnings),
                notDrawn);
    }

    /** A file of blocks alone is a library of pieces. */
    private void drawBlocksThatNobodyInserts(Setting page) throws DrawingException {
        boolean empty = sheaves.stream().allMatch(each -> each.shapes().isEmpty());
        if (!empty || file.things().stream().anyMatch(thing -> thing.kind().equals("INSERT"))) {
            return;
        }
        for (Block block : file.blocks().values()) {
            if (!block.name().startsWith("*") && !block.things().isEmpty()) {
                warnings.add("The file inserts no block; its blocks are read as they are.");
                drawPiece(block, page);
            }
        }
    }

    private void draw(List<Thing> things, Setting setting) throws DrawingException {
        for (Thing thing : things) {
            count(thing);
            switch (thing.kind()) {
                case "LINE", "LWPOLYLINE", "POLYLINE", "CIRCLE", "ARC", "ELLIPSE", "SPLINE" -> shape(thing, setting);
                case "INSERT" -> insert(thing, setting);
                case "TEXT", "ATTRIB", "MTEXT" -> words.add(new Words(thing, setting, sheaf));
                case "POINT" -> point(thing, setting);
                case "ATTDEF", "VIEWPORT" -> {
                    // Forms to fill in, and windows on the drawing.
                }
                default -> leaveOut(Shown.of(thing.kind()) + ", which is no line");
            }
        }
    }

    private void count(Thing thing) throws DrawingException {
        if (++drawn > MOST_DRAWN) {
            throw new DrawingException(
                    file.name() + ", line " + thing.line() + ": blocks repeat so much that the drawing"
                            + " grows beyond " + MOST_DRAWN + " things; export the pattern's own layers alone.");
        }
    }

    private void leaveOut(String what) {
        leftOut.merge(what, 1, Integer::sum);
    }

    private static String place(Thing thing) {
        return "line " + thing.line();
    }

    /** Things on layer 0 lie on the layer of what inserts them. */
    private static String layer(Thing thing, Setting setting) {
        return thing.layer().equals("0") ? setting.layer.orElse("0") : thing.layer();
    }

    private boolean isHidden(Entity entity, String layer, Setting setting) throws DrawingException {
        boolean off = file.layer(layer)
                .filter(known -> known.hidden() || known.frozen())
                .isPresent();
        return off || setting.hidden || entity.whole(60) == 1 || entity.whole(67) == 1;
    }

    /** Returns whether a thing is drawn mirrored by its extrusion; empty if it stands at a slant in space. */
    private static Optional<Boolean> mirrored(Entity entity) throws DrawingException {
        double up = entity.number(230, 1);
        double aside = Math.hypot(entity.number(210, 0), entity.number(220, 0));
        return aside > 1e-6 * Math.abs(up) || up == 0 ? Optional.empty() : Optional.of(up < 0);
    }

    private void shape(Thing thing, Setting setting) throws DrawingException {
        Entity entity = file.entity(thing);
        List<Entity> vertices = thing.kind().equals("POLYLINE") ? file.parts(thing, "VERTEX") : List.of();
        Optional<Boolean> mirrored = mirrored(entity);
        if (mirrored.isEmpty()) {
            warnings.add("The " + thing.kind() + " on " + place(thing)
                    + " does not lie flat in the drawing and is left out; draw it seen from above.");
            return;
        }
        String layer = layer(thing, setting);
        boolean hidden = isHidden(entity, layer, setting);
        EntityPen pen = new EntityPen(
                placed(setting, vertices.isEmpty() ? entity : vertices.get(0), hidden), mirrored.get(), budget);
        try {
            if (!draw(entity, vertices, mirrored.get(), pen)) {
                return;
            }
        } catch (Pen.TooFarException e) {
            warnings.add("The %s on %s is left out: %s; move the pattern together."
                    .formatted(thing.kind(), place(thing), e.getMessage()));
            return;
        }
        List<Chain> chains = pen.chains();
        if (!chains.isEmpty()) {
            sheaf.add(shape(chains, layer, setting, !hidden, isDashed(entity, layer), place(thing)));
        }
    }

    private boolean draw(Entity entity, List<Entity> vertices, boolean mirrored, EntityPen pen)
            throws DrawingException {
        switch (entity.kind()) {
            case "LINE" -> pen.line(entity);
            case "LWPOLYLINE" -> pen.lightPolyline(entity);
            case "POLYLINE" -> {
                if ((entity.whole(70) & (16 | 64)) != 0) {
                    leaveOut("POLYLINE that is a mesh");
                    return false;
                }
                pen.polyline(entity, vertices);
            }
            case "CIRCLE" -> pen.circle(entity);
            case "ARC" -> pen.arc(entity);
            case "ELLIPSE" -> pen.ellipse(entity, mirrored);
            default -> {
                return spline(entity, pen);
            }
        }
        return true;
    }

    private boolean spline(Entity spline, EntityPen pen) throws DrawingException {
        if (pen.spline(spline)) {
            return true;
        }
        boolean fitted = spline.has(11) && !spline.has(10);
        warnings.add("The spline on line " + spline.line()
                + (fitted
                        ? " has fit points only, so its shape is not known"
                        : " has knots, weights and points that make no curve")
                + "; it is left out. Turn it into a polyline in the drawing.");
        leaveOut(fitted ? "spline with fit points only" : "spline that is none");
        return false;
    }

    private DrawnShape shape(
            List<Chain> chains, String layer, Setting setting, boolean visible, boolean dashed, String place) {
        return new DrawnShape(
                names(layer),
                groups(layer, setting),
                chains,
                FillRule.NONZERO,
                visible,
                false,
                dashed,
                false,
                false,
                setting.reflected,
                place);
    }

    /** What a thing is follows from its layer: by number in a drawing of sewn products, else by the layer's name. */
    private Names names(String layer) {
        Optional<String> word = sewn
                ? ApparelLayer.of(layer).map(ApparelLayer::word).filter(w -> !w.isEmpty())
                : Optional.of(layer).filter(name -> !name.equals("0"));
        return new Names(Optional.empty(), Optional.empty(), word.stream().toList());
    }

    private List<Group> groups(String layer, Setting setting) {
        if (sewn || layer.equals("0")) {
            return setting.groups;
        }
        Group own = layers.computeIfAbsent(layer, name -> named(name, true));
        List<Group> all = new ArrayList<>(List.of(own));
        all.addAll(setting.groups);
        return all;
    }

    private Group named(String label, boolean layer) {
        return new Group(groups++, new Names(Optional.of(label), Optional.empty(), List.of()), layer);
    }

    private boolean isDashed(Entity entity, String layer) {
        String lineType = entity.text(6);
        if (lineType.isEmpty() || lineType.equalsIgnoreCase("BYLAYER")) {
            lineType = file.layer(layer).map(Layer::lineType).orElse("");
        }
        return DASHED.matcher(lineType).matches();
    }

    /** The page begins near the first line that shows, for far from their origin numbers are too large for the grid. */
    private AffineTransform placed(Setting setting, Entity first, boolean hidden) throws DrawingException {
        if (origin.isEmpty() && !hidden && first.has(10)) {
            Point2D at = setting.toPage.transform(new Point2D.Double(first.number(10, 0), first.number(20, 0)), null);
            if (Math.abs(at.getX()) < 1e12 && Math.abs(at.getY()) < 1e12) {
                origin = Optional.of(new Point2D.Double(Math.rint(at.getX()), Math.rint(at.getY())));
            }
        }
        AffineTransform placed = origin.map(at -> AffineTransform.getTranslateInstance(-at.getX(), -at.getY()))
                .orElseGet(AffineTransform::new);
        placed.concatenate(setting.toPage);
        return placed;
    }

    private void text(Thing thing, Setting setting, Sheaf into) throws DrawingException {
        Entity entity = file.entity(thing);
        String layer = layer(thing, setting);
        AffineTransform toPage = placed(setting, entity, true);
        if (!thing.kind().equals("MTEXT") && mirrored(entity).orElse(false)) {
            toPage.scale(-1, 1);
        }
        List<Lettering.Line> lines =
                thing.kind().equals("MTEXT") ? Lettering.several(entity, toPage) : Lettering.single(entity, toPage);
        boolean hidden = isHidden(entity, layer, setting);
        for (Lettering.Line line : lines) {
            if (sewn && Statement.of(line.words()).isPresent()) {
                if (setting.depth == 0) {
                    leaveOut("text about the style: \"" + Shown.of(line.words()) + "\"");
                }
                continue;
            }
            into.add(new DrawnText(
                    line.words(),
                    line.middle(),
                    line.radians(),
                    Names.NONE,
                    groups(layer, setting),
                    !hidden,
                    place(thing)));
        }
    }

    private void point(Thing thing, Setting setting) throws DrawingException {
        String layer = layer(thing, setting);
        Optional<ApparelLayer> known = sewn ? ApparelLayer.of(layer) : Optional.empty();
        boolean drill = known.map(ApparelLayer.DRILL_HOLES::equals)
                .orElseGet(() -> !sewn && DRILL.matcher(layer).matches());
        boolean notch = known.filter(ApparelLayer::isNotch).isPresent();
        if (!drill && !notch) {
            if (known.filter(k -> k == ApparelLayer.TURN_POINTS || k == ApparelLayer.CURVE_POINTS)
                    .isEmpty()) {
                leaveOut("point");
            }
            return;
        }
        Entity entity = file.entity(thing);
        boolean hidden = isHidden(entity, layer, setting);
        Point2D at = placed(setting, entity, hidden)
                .transform(new Point2D.Double(entity.number(10, 0), entity.number(20, 0)), null);
        if (!(Math.abs(at.getX()) < 1e6 && Math.abs(at.getY()) < 1e6)) {
            leaveOut("point far away");
            return;
        }
        Point point = new Point(StrictMath.round(at.getX() * 1000), StrictMath.round(at.getY() * 1000));
        DrawnShape mark = shape(drill ? cross(point) : List.of(), layer, setting, !hidden, false, place(thing));
        if (drill) {
            sheaf.add(mark);
        } else {
            sheaf.addNotch(mark, point);
        }
    }

    private static List<Chain> cross(Point at) {
        Point along = new Point(HALF_CROSS, 0);
        Point across = new Point(0, HALF_CROSS);
        return List.of(
                new Chain(List.of(at.minus(along), at.plus(along)), false),
                new Chain(List.of(at.minus(across), at.plus(across)), false));
    }

    private void insert(Thing thing, Setting setting) throws DrawingException {
        Optional<Block> block = file.block(thing.name());
        if (block.isEmpty()) {
            warnings.add("The block \"" + Shown.of(thing.name()) + "\" on " + place(thing)
                    + " is left out; the file does not have it.");
            return;
        }
        Entity entity = file.entity(thing);
        Optional<Boolean> mirrored = mirrored(entity);
        if (mirrored.isEmpty()) {
            warnings.add("The block on " + place(thing)
                    + " does not lie flat in the drawing and is left out; draw it seen from above.");
            return;
        }
        if (setting.depth == DEEPEST) {
            throw new DrawingException(file.name() + ", " + place(thing) + ": blocks are nested more than " + DEEPEST
                    + " deep; explode them.");
        }
        String key = DxfFile.key(thing.name());
        if (!inUse.add(key)) {
            warnings.add("The block \"" + Shown.of(thing.name()) + "\" on " + place(thing)
                    + " holds itself; that is left out.");
            return;
        }
        AffineTransform first = new AffineTransform(setting.toPage);
        if (mirrored.get()) {
            first.scale(-1, 1);
        }
        first.translate(entity.number(10, 0), entity.number(20, 0));
        first.rotate(Math.toRadians(entity.number(50, 0)));
        int columns = Math.max(1, entity.whole(70));
        int rows = Math.max(1, entity.whole(71));
        String layer = layer(thing, setting);
        boolean hidden = isHidden(entity, layer, setting);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                count(thing);
                AffineTransform map = new AffineTransform(first);
                map.translate(column * entity.number(44, 0), row * entity.number(45, 0));
                map.scale(entity.number(41, 1), entity.number(42, 1));
                boolean flipped = map.getDeterminant() > 0;
                Setting inside =
                        new Setting(map, setting.groups, Optional.of(layer), hidden, flipped, setting.depth + 1);
                drawBlock(block.get(), inside);
            }
        }
        inUse.remove(key);
    }

    private void drawBlock(Block block, Setting setting) throws DrawingException {
        boolean piece = sewn && setting.depth == 1 && block.things().stream().anyMatch(SewnProducts::isBoundary);
        if (piece) {
            drawPiece(block, setting);
        } else {
            List<Group> groups = new ArrayList<>(setting.groups);
            if (!block.name().startsWith("*")) {
                groups.add(named(block.name(), false));
            }
            draw(block.things(), within(block, setting, groups));
        }
    }

    /** Draws a block that is a piece, in a sheaf of its own, named by its texts. */
    private void drawPiece(Block block, Setting setting) throws DrawingException {
        Sheaf outer = sheaf;
        sheaf = new Sheaf();
        sheaves.add(sheaf);
        PieceTexts texts = SewnProducts.pieceTexts(file, block);
        List<Group> groups = new ArrayList<>(setting.groups);
        texts.size().ifPresent(size -> groups.add(named("Size " + size, true)));
        groups.add(named(texts.name().orElse(block.name()), false));
        draw(block.things(), within(block, setting, groups));
        sheaf.finishNotches().forEach((what, times) -> leftOut.merge(what, times, Integer::sum));
        texts.cut().ifPresent(words -> sheaf.letter(words, groups));
        if (texts.quantity().isPresent() && texts.cut().isEmpty()) {
            warnings.add(
                    "The quantity \"%s\" of \"%s\" is no whole number and is not read; say in the job how it is cut."
                            .formatted(
                                    Shown.of(texts.quantity().get()),
                                    Shown.of(texts.name().orElse(block.name()))));
        }
        sheaf = outer;
    }

    private static Setting within(Block block, Setting setting, List<Group> groups) {
        AffineTransform map = new AffineTransform(setting.toPage);
        map.translate(-block.baseX(), -block.baseY());
        return new Setting(
                map, List.copyOf(groups), setting.layer, setting.hidden, setting.reflected, Math.max(1, setting.depth));
    }
}
