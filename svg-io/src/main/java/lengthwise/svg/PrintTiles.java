package lengthwise.svg;

import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.PrintPicture;
import lengthwise.model.Repeat;
import lengthwise.model.Spread;

/**
 * Draws the print itself on the cloth: the picture of one repeat, once in the file, comes again as the repeat does, its top
 * towards the end of the marker. On cloth that is folded lengthwise it is seen from behind, as it lies.
 */
final class PrintTiles {
    private static final String SHOWN = "0.55";

    private final Repeat repeat;
    private final PrintPicture picture;
    private final boolean folded;
    private final Point corner;
    private final Markup svg;

    private PrintTiles(Repeat repeat, PrintPicture picture, boolean folded, Point corner, Markup svg) {
        this.repeat = repeat;
        this.picture = picture;
        this.folded = folded;
        this.corner = corner;
        this.svg = svg;
    }

    /** Says whether the print is drawn: there is a picture of it, and it is known where in it the upper layer lies. */
    static boolean isShown(Fabric fabric) {
        return switch (fabric.spread().form()) {
            case SINGLE_LAYER, FOLD_LENGTHWISE, PLIES_FACE_UP ->
                fabric.repeat().flatMap(Repeat::picture).isPresent();
            case FOLD_CROSSWISE, SELVEDGES_TO_MIDDLE, TUBE, PLIES_FACE_TO_FACE -> false;
        };
    }

    /** Draws the print over the cloth. */
    static void draw(Marker marker, Point corner, Length clothLength, Length clothWidth, Markup svg) {
        Fabric fabric = marker.order().fabric();
        if (isShown(fabric)) {
            Repeat repeat = fabric.repeatOnTable().orElseThrow();
            boolean folded = fabric.spread().form() == Spread.Form.FOLD_LENGTHWISE;
            new PrintTiles(repeat, repeat.picture().orElseThrow(), folded, corner, svg).draw(clothLength, clothWidth);
        }
    }

    private void draw(Length clothLength, Length clothWidth) {
        long along = repeat.lengthwise().micrometres();
        long across = repeat.crosswise().micrometres();
        Point origin = corner.plus(
                new Point(repeat.originX().micrometres(), repeat.originY().micrometres()));
        Point first = folded ? origin.minus(new Point(0, across)) : origin;
        svg.open("defs").line();
        svg.open(
                "pattern",
                "id",
                "print-0",
                "patternUnits",
                "userSpaceOnUse",
                "width",
                Millimetres.of(along),
                "height",
                Millimetres.of(repeat.halfDrop() ? 2 * across : across),
                "patternTransform",
                moved(first));
        // a quarter turn, so that the picture's top comes ahead; folded it is mirrored besides
        svg.empty(
                "image",
                "width",
                Millimetres.of(across),
                "height",
                Millimetres.of(along),
                "preserveAspectRatio",
                "none",
                "transform",
                folded
                        ? "matrix(0 -1 -1 0 %s %s)".formatted(Millimetres.of(along), Millimetres.of(across))
                        : "matrix(0 1 -1 0 %s 0)".formatted(Millimetres.of(along)),
                "xmlns:xlink",
                "http://www.w3.org/1999/xlink",
                "xlink:href",
                "data:" + picture.mediaType() + ";base64," + picture.base64());
        svg.close().line();
        if (repeat.halfDrop()) {
            svg.empty(
                            "pattern",
                            "id",
                            "print-1",
                            "xmlns:xlink",
                            "http://www.w3.org/1999/xlink",
                            "xlink:href",
                            "#print-0",
                            "patternTransform",
                            moved(first.plus(new Point(along / 2, across))))
                    .line();
        }
        svg.close().line();
        for (int column = 0; column < (repeat.halfDrop() ? 2 : 1); column++) {
            svg.empty(
                            "rect",
                            "data-area",
                            "print",
                            "width",
                            Millimetres.of(clothLength.micrometres()),
                            "height",
                            Millimetres.of(clothWidth.micrometres()),
                            "fill",
                            "url(#print-" + column + ")",
                            "opacity",
                            SHOWN)
                    .line();
        }
    }

    private static String moved(Point by) {
        return "translate(%s %s)".formatted(Millimetres.of(by.x()), Millimetres.of(by.y()));
    }
}
