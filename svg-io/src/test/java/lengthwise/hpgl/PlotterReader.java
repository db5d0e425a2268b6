package lengthwise.hpgl;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * A plotter as a reader, written from the description of the commands alone: two letters, numbers, a semicolon; blanks
 * and line ends do not count. It knows relative and absolute moves, and draws in millimetres at 40 units each (trade
 * figure: 1 plotter unit is 0.025 mm, PCL 5 Printer Language Technical Reference Manual Part II, pages 17-20 and 19-16).
 */
final class PlotterReader {
    private static final double UNITS = 40;

    /** What was drawn on each sheet, until the paper was moved on. */
    final List<Page> pages = new ArrayList<>();

    final List<double[]> sizes = new ArrayList<>();

    private Page page = new Page(new TreeMap<>());
    private List<double[]> line = List.of();
    private double x;
    private double y;
    private int pen;
    private boolean down;
    private boolean relative;
    /** Scaling points P1 and P2 in plotter units, and the user units that lie there: x1, y1, x2, y2 and x1, x2, y1, y2. */
    private double[] points = {};

    private double[] scale = {};

    /** For each pen the lines it drew: points of x and y, in millimetres. */
    record Page(TreeMap<Integer, List<List<double[]>>> byPen) {
        List<List<double[]>> lines(int pen) {
            return byPen.getOrDefault(pen, List.of());
        }
    }

    PlotterReader(String text) {
        int at = 0;
        while (at < text.length()) {
            if (Character.isWhitespace(text.charAt(at)) || text.charAt(at) == ';') {
                at++;
                continue;
            }
            String command = text.substring(at, at + 2);
            at += 2;
            int end = at;
            while (end < text.length() && text.charAt(end) != ';' && !Character.isLetter(text.charAt(end))) {
                end++;
            }
            obey(command, numbers(text.substring(at, end)));
            at = end;
        }
    }

    private static double[] numbers(String text) {
        String plain = text.strip();
        if (plain.isEmpty()) {
            return new double[0];
        }
        String[] parts = plain.split("[,\\s]+", -1);
        double[] numbers = new double[parts.length];
        for (int i = 0; i < parts.length; i++) {
            numbers[i] = Integer.parseInt(parts[i]);
        }
        return numbers;
    }

    private void obey(String command, double[] numbers) {
        switch (command) {
            case "IN" -> {
                pen = 0;
                down = false;
                relative = false;
            }
            case "PS" -> {
                scale = new double[0];
                sizes.add(new double[] {numbers[0] / UNITS, numbers[1] / UNITS});
            }
            case "IP" -> points = numbers;
            case "SC" -> scale = numbers;
            case "PA" -> relative = false;
            case "PR" -> relative = true;
            case "SP" -> {
                down = false;
                pen = numbers.length == 0 ? 0 : (int) numbers[0];
            }
            case "PU" -> {
                down = false;
                go(numbers);
            }
            case "PD" -> {
                if (!down) {
                    line = new ArrayList<>(List.of(new double[] {x, y}));
                    page.byPen.computeIfAbsent(pen, any -> new ArrayList<>()).add(line);
                }
                down = true;
                go(numbers);
            }
            case "PG" -> {
                pages.add(page);
                page = new Page(new TreeMap<>());
                down = false;
            }
            default -> throw new IllegalArgumentException("No plotter knows " + command);
        }
    }

    private void go(double[] numbers) {
        for (int i = 0; i + 1 < numbers.length; i += 2) {
            x = plotterUnits(numbers[i], 0) / UNITS + (relative ? x : 0);
            y = plotterUnits(numbers[i + 1], 1) / UNITS + (relative ? y : 0);
            if (down) {
                line.add(new double[] {x, y});
            }
        }
    }

    /** Returns where a coordinate along one axis lies between the scaling points, if there is a scale. */
    private double plotterUnits(double user, int axis) {
        if (scale.length == 0) {
            return user;
        }
        double share = (user - scale[2 * axis]) / (scale[2 * axis + 1] - scale[2 * axis]);
        double from = relative ? 0 : points[axis];
        return from + share * (points[2 + axis] - points[axis]);
    }
}
