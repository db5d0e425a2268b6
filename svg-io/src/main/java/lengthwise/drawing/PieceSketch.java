package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Segment;

/** A piece while it is being recognised: its cut line, and what is found on it. */
final class PieceSketch {
    private final Contour cutLine;
    private final List<Ring> holes = new ArrayList<>();
    private final List<Segment> notches = new ArrayList<>();
    private final List<Point> drillHoles = new ArrayList<>();
    private final List<List<Point>> sewLines = new ArrayList<>();
    private final List<List<Point>> innerLines = new ArrayList<>();
    private final List<String> lettering = new ArrayList<>();
    private Optional<Arrow> arrow = Optional.empty();
    private Optional<Segment> foldEdge = Optional.empty();
    private String name = "";
    private boolean mirrored;

    PieceSketch(Contour cutLine) {
        this.cutLine = cutLine;
    }

    Contour cutLine() {
        return cutLine;
    }

    String name() {
        return name;
    }

    void name(String name) {
        this.name = name;
    }

    Optional<String> size() {
        return cutLine.size();
    }

    void mirrored(boolean mirrored) {
        this.mirrored = mirrored;
    }

    List<Ring> holes() {
        return holes;
    }

    List<Segment> notches() {
        return notches;
    }

    List<Point> drillHoles() {
        return drillHoles;
    }

    List<List<Point>> sewLines() {
        return sewLines;
    }

    List<List<Point>> innerLines() {
        return innerLines;
    }

    List<String> lettering() {
        return lettering;
    }

    Optional<Arrow> arrow() {
        return arrow;
    }

    void arrow(Arrow found) {
        arrow = Optional.of(found);
    }

    Optional<Segment> foldEdge() {
        return foldEdge;
    }

    void foldEdge(Segment edge) {
        foldEdge = Optional.of(edge);
    }

    Outline outline() {
        return new Outline(cutLine.ring(), holes);
    }

    /** Returns name and size for a sentence: {@code 'cup' (size M)}. */
    String spoken() {
        return "'" + name + "'" + size().map(size -> " (size " + size + ")").orElse("");
    }

    DrawnPiece piece() {
        return new DrawnPiece(
                name,
                size(),
                outline(),
                mirrored,
                arrow,
                foldEdge,
                notches,
                drillHoles,
                sewLines,
                innerLines,
                lettering);
    }
}
