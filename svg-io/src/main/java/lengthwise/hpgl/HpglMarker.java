package lengthwise.hpgl;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lengthwise.drawing.DrawingException;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Length;
import lengthwise.svg.MarkerDrawing;

/**
 * Writes a marker for a pen plotter: pen 1 draws what is cut, pen 2 marks, pen 3 letters. Absolute coordinates from the
 * start of the drawing and its far edge, so that nothing is mirrored on machines whose second axis points up. The length runs
 * along the roll.
 *
 * <p>Commands: IN, PS, IP, SC, PA, SP, PU, PD, PG and no others. Letters are drawn as lines, not by LB: they look the same on
 * every machine, whatever its character set, and no name on a piece can be taken for a command.
 *
 * <p>References: Hewlett-Packard, <i>PCL 5 Printer Language Technical Reference Manual Part II</i>, pages 17-20 and 19-16
 * (the plotter unit; IN, SP, PU, PD); PA, IP, SC, and what PS and PG do, from memory of HP-GL/2.
 */
public final class HpglMarker {
    /** Micrometres to a plotter unit. */
    static final long PLOTTER_UNIT = 25;

    /** The side of the square that the scale is stated by, in micrometres. */
    static final long SCALED_SQUARE = 100_000;

    /** The largest coordinate of HP-GL/2 from memory: 2²³ − 1, nearly 84 m in hundredths of a millimetre. */
    private static final long LARGEST = (1 << 23) - 1;

    /** The largest of many older plotters in plotter units, from memory: 819 mm. */
    public static final Length OLD_LARGEST = new Length(32_767 * PLOTTER_UNIT);

    private HpglMarker() {}

    /** Which of the plotter's axes runs along the roll. */
    public enum Axis {
        X,
        Y
    }

    /** What the coordinates count. */
    public enum Coordinates {
        /** Hundredths of a millimetre, a scale that HP-GL/2 is told by IP and SC. */
        SCALED(10),
        /** Plotter units of 0.025 mm, for machines that pass over SC. */
        PLOTTER_UNITS(PLOTTER_UNIT);

        /** In micrometres. */
        final long unit;

        Coordinates(long unit) {
            this.unit = unit;
        }

        long units(long micrometres) {
            return Math.floorDiv(micrometres + unit / 2, unit);
        }
    }

    /**
     * Returns the text of the file, in ASCII. It was read back, and every line found where it should be.
     *
     * @param split how the marker is split along its length, if it is
     * @throws DrawingException if the marker is too long to be said in these coordinates
     */
    public static String of(MarkerDrawing marker, Optional<Frames> split, Axis alongRoll, Coordinates coordinates)
            throws DrawingException {
        List<Stroke> strokes = PlotDrawing.of(marker);
        Box box = strokes.stream().map(Stroke::box).reduce(Box::union).orElseThrow();
        long width = box.height();
        Point corner = new Point(box.minX(), box.minY());
        List<Frames.Frame> frames = Frames.of(
                strokes.stream().map(stroke -> stroke.movedBack(corner)).toList(), box.width(), width, split);
        StringBuilder text = new StringBuilder("IN;\n");
        List<List<Stroke>> pages = new ArrayList<>();
        for (Frames.Frame frame : frames) {
            List<Stroke> turned = turned(frame, width, alongRoll);
            long along = frame.to() - frame.from();
            if (coordinates.units(along) > LARGEST) {
                throw new DrawingException(
                        "The marker is too long for one plot; split it in frames, as with --frame \"2 m\".");
            }
            pages.add(turned);
            text.append(head(alongRoll == Axis.X ? along : width, alongRoll == Axis.X ? width : along, coordinates));
            page(turned, coordinates, text);
        }
        String written = text.toString();
        verify(pages, HpglReader.pages(written), coordinates);
        return written;
    }

    /** Returns how long the longest plot of a file is, and so its largest coordinate. */
    public static Length longestPlot(MarkerDrawing marker, Optional<Frames> split) {
        Length whole = marker.length().plus(new Length(PlotDrawing.HEAD));
        return split.filter(frames -> frames.longest().compareTo(whole) < 0)
                .map(Frames::longest)
                .orElse(whole);
    }

    /** Returns the strokes of a frame as the plotter's axes have them, sorted by pen. */
    private static List<Stroke> turned(Frames.Frame frame, long width, Axis alongRoll) {
        return frame.strokes().stream()
                .sorted(Comparator.comparing(Stroke::pen))
                .map(stroke -> new Stroke(
                        stroke.pen(),
                        stroke.points().stream()
                                .map(point -> alongRoll == Axis.X
                                        ? new Point(point.x() - frame.from(), width - point.y())
                                        : new Point(point.y(), point.x() - frame.from()))
                                .toList()))
                .toList();
    }

    /** A page has its size in plotter units; that takes back the scale, so each page states it. */
    private static String head(long sizeX, long sizeY, Coordinates coordinates) {
        String scale = switch (coordinates) {
            case SCALED -> {
                long square = Coordinates.PLOTTER_UNITS.units(SCALED_SQUARE);
                long side = coordinates.units(SCALED_SQUARE);
                yield "IP0,0," + square + "," + square + ";SC0," + side + ",0," + side + ";";
            }
            case PLOTTER_UNITS -> "";
        };
        return "PS" + Coordinates.PLOTTER_UNITS.units(sizeX) + "," + Coordinates.PLOTTER_UNITS.units(sizeY) + ";"
                + scale + "PA;\n";
    }

    private static void page(List<Stroke> strokes, Coordinates coordinates, StringBuilder text) {
        int pen = 0;
        for (Stroke stroke : strokes) {
            if (stroke.pen().number() != pen) {
                pen = stroke.pen().number();
                text.append("PU;SP").append(pen).append(";\n");
            }
            for (int i = 0; i < stroke.points().size(); i++) {
                text.append(i == 0 ? "PU" : i == 1 ? ";PD" : ",");
                text.append(coordinates.units(stroke.points().get(i).x())).append(',');
                text.append(coordinates.units(stroke.points().get(i).y()));
            }
            text.append(";\n");
        }
        text.append("PU;SP0;PG;\n");
    }

    /** What is written wrong would be cut wrong: better none at all. */
    private static void verify(List<List<Stroke>> meant, List<List<Stroke>> read, Coordinates coordinates) {
        boolean same = meant.size() == read.size();
        for (int page = 0; same && page < meant.size(); page++) {
            same = isSame(meant.get(page), read.get(page), coordinates.unit);
        }
        if (!same) {
            throw new IllegalStateException("The plot reads back as another drawing than the one meant.");
        }
    }

    private static boolean isSame(List<Stroke> meant, List<Stroke> read, long unit) {
        if (meant.size() != read.size()) {
            return false;
        }
        for (int i = 0; i < meant.size(); i++) {
            List<Point> should = meant.get(i).points();
            List<Point> is = read.get(i).points();
            if (meant.get(i).pen() != read.get(i).pen() || should.size() != is.size()) {
                return false;
            }
            for (int k = 0; k < is.size(); k++) {
                if (2 * Math.abs(should.get(k).x() - is.get(k).x()) > unit
                        || 2 * Math.abs(should.get(k).y() - is.get(k).y()) > unit) {
                    return false;
                }
            }
        }
        return true;
    }
}
