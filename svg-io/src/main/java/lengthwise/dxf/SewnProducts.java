package lengthwise.dxf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lengthwise.drawing.DrawingException;
import lengthwise.dxf.DxfFile.Block;
import lengthwise.dxf.DxfFile.Thing;

/**
 * Knows drawings of sewn products: a block for each piece, the layers numbered after ASTM D6673, and texts such as
 * "Piece Name: front". The words before the colon are from memory of the standard.
 */
final class SewnProducts {
    private static final Pattern STATEMENT = Pattern.compile(
            "\\s*(piece name|size|quantity|style name|sample size|units|material|category|creation date|creation time"
                    + "|author|grade rule table|product|version|astm[^:]*|aama[^:]*)\\s*:\\s*(.*)",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern WHOLE_NUMBER = Pattern.compile("0*([1-9]\\d{0,2})");

    private SewnProducts() {}

    /** What such a text states: {@code key} in small letters. */
    record Statement(String key, String value) {
        static Optional<Statement> of(String words) {
            Matcher matcher = STATEMENT.matcher(words);
            return matcher.matches()
                    ? Optional.of(new Statement(
                            matcher.group(1).toLowerCase(java.util.Locale.ROOT),
                            matcher.group(2).strip()))
                    : Optional.empty();
        }
    }

    /** What is said about a piece. */
    record PieceTexts(Optional<String> name, Optional<String> size, Optional<String> quantity) {
        /** Returns how often it is cut, as lettering says it. */
        Optional<String> cut() {
            return quantity.map(WHOLE_NUMBER::matcher).filter(Matcher::matches).map(number -> "cut " + number.group(1));
        }
    }

    /**
     * Says whether a file is such a drawing: a block holds a boundary and a text that names the piece; or nothing lies on
     * other layers, turn and curve points are points, notches and
     * grain lines are no outlines, and either a block holds a boundary or a text names a piece. Layers named 1, 2, 3 may be
     * sizes as well.
     */
    static boolean isOne(DxfFile file) throws DrawingException {
        for (Block each : file.blocks().values()) {
            if (each.things().stream().anyMatch(SewnProducts::isBoundary) && namesAPiece(file, each.things())) {
                return true;
            }
        }
        boolean block = false;
        for (Block each : file.blocks().values()) {
            for (Thing thing : each.things()) {
                if (!fits(thing)) {
                    return false;
                }
                block |= isBoundary(thing);
            }
        }
        for (Thing thing : file.things()) {
            if (!fits(thing)) {
                return false;
            }
        }
        return block || namesAPiece(file, file.things());
    }

    private static boolean namesAPiece(DxfFile file, List<Thing> things) throws DrawingException {
        for (Statement statement : statements(file, things)) {
            if (statement.key.equals("piece name")) {
                return true;
            }
        }
        return false;
    }

    static boolean isBoundary(Thing thing) {
        return thing.layer().equals(ApparelLayer.BOUNDARY.number())
                && Stream.of("POLYLINE", "LWPOLYLINE", "LINE", "ARC", "SPLINE", "CIRCLE", "ELLIPSE")
                        .anyMatch(thing.kind()::equals);
    }

    private static boolean fits(Thing thing) {
        boolean point = thing.kind().equals("POINT") || thing.kind().endsWith("TEXT");
        boolean line = point || thing.kind().endsWith("LINE");
        return switch (thing.layer()) {
            case "2", "3" -> point;
            case "4", "7" -> line && !thing.closed();
            // What is inserted lies on the layers of its parts.
            case "0", "12", "84", "85", "86", "87" -> true;
            default ->
                ApparelLayer.of(thing.layer()).isPresent() || thing.kind().equals("INSERT");
        };
    }

    static List<Statement> statements(DxfFile file, List<Thing> things) throws DrawingException {
        List<Statement> found = new ArrayList<>();
        for (Thing thing : things) {
            if (thing.kind().equals("TEXT")) {
                Statement.of(DxfText.plain(file.entity(thing).text(1))).ifPresent(found::add);
            }
        }
        return found;
    }

    static PieceTexts pieceTexts(DxfFile file, Block block) throws DrawingException {
        List<Statement> said = statements(file, block.things());
        return new PieceTexts(value(said, "piece name"), value(said, "size"), value(said, "quantity"));
    }

    /** Returns METRIC or ENGLISH, where said. */
    static Optional<String> units(DxfFile file) throws DrawingException {
        return value(statements(file, file.things()), "units");
    }

    private static Optional<String> value(List<Statement> said, String key) {
        return said.stream()
                .filter(statement -> statement.key.equals(key) && !statement.value.isEmpty())
                .map(Statement::value)
                .findFirst();
    }
}
