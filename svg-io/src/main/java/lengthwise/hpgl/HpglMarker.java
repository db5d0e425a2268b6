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
 * Writes a marker for a pen plotter: pen 1 draws what is cut, pen 2 marks, pen 3 letters. Absolute coordinates in plotter
 * units of 0.025 mm, from the start of the drawing and its far edge, so that nothing is mirrored on machines whose second
 * axis points up. The length runs along the roll.
 *
 * <p>Commands: IN, PS, PA, SP, PU, PD, PG and no others. Letters are drawn as lines, not by LB: they look the same on every
 * machine, whatever its character set, and no name on a piece can be taken for a command.
 *
 * <p>References: Hewlett-Packard, <i>PCL 5 Printer Language Technical Reference Manual Part II</i>, pages 17-20 and 19-16
 * (the plotter unit; IN, SP, PU, PD); PA, and what PS and PG do, from memory of HP-GL/2.
 */
public final class HpglMarker {
    /** Micrometres to a plotter unit. */
    static final long UNIT = 25;

    /** The largest coordinate of HP-GL/2 in plotter units, from memory: 2²³ − 1, nearly 210 m. */
    private static final long LARGEST = (1 << 23) - 1;

    /** The largest of many older plotters, from memory: 819 mm. */
    public static final Length OLD_LARGEST = new Length(32_767 * UNIT);

    private HpglMarker() {}

    /** Which of the plotter's axes runs along the roll. */
    public enum Axis {
        X,
        Y
    }

    /**
     * Returns the text of the file, in ASCII. It was read back, and every line found where it should be.
     *
     * @param split how the marker is split along its length, if it is
     * @throws DrawingException if the marker is too long to be said in plotter units
     */
    public static String of(MarkerDrawing marker, Optional<Frames> split, Axis alongRoll) throws DrawingException {
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
            long along = units(frame.to() - frame.from());
            if (along > LARGEST) {
                throw new DrawingException(
                        "The marker is too long for one plot; split it in frames, as with --frame \"2 m\".");
            }
            pages.add(turned);
            page(turned, alongRoll == Axis.X ? along : units(width), alongRoll == Axis.X ? units(width) : along, text);
        }
        String written = text.toString();
        verify(pages, HpglReader.pages(written));
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

    private static void page(List<Stroke> strokes, long sizeX, long sizeY, StringBuilder text) {
        text.append("PS").append(sizeX).append(',').append(sizeY).append(";PA;\n");
        int pen = 0;
        for (Stroke stroke : strokes) {
            if (stroke.pen().number() != pen) {
                pen = stroke.pen().number();
                text.append("PU;SP").append(pen).append(";\n");
            }
            for (int i = 0; i < stroke.points().size(); i++) {
                text.append(i == 0 ? "PU" : i == 1 ? ";PD" : ",");
                text.append(units(stroke.points().get(i).x())).append(',');
                text.append(units(stroke.points().get(i).y()));
            }
            text.append(";\n");
        }
        text.append("PU;SP0;PG;\n");
    }

    private static long units(long micrometres) {
        return Math.floorDiv(micrometres + UNIT / 2, UNIT);
    }

    /** What is written wrong would be cut wrong: better none at all. */
    private static void verify(List<List<Stroke>> meant, List<List<Stroke>> read) {
        boolean same = meant.size() == read.size();
        for (int page = 0; same && page < meant.size(); page++) {
            same = isSame(meant.get(page), read.get(page));
        }
        if (!same) {
            throw new IllegalStateException("The plot reads back as another drawing than the one meant.");
        }
    }

    private static boolean isSame(List<Stroke> meant, List<Stroke> read) {
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
                if (2 * Math.abs(should.get(k).x() - is.get(k).x()) > UNIT
                        || 2 * Math.abs(should.get(k).y() - is.get(k).y()) > UNIT) {
                    return false;
                }
            }
        }
        return true;
    }
}
