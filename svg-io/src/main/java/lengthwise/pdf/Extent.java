package lengthwise.pdf;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.List;
import lengthwise.drawing.Chain;
import lengthwise.drawing.Painted;
import lengthwise.geometry.Point;

/** An upright rectangle, in millimetres. */
record Extent(double minX, double minY, double maxX, double maxY) {
    double width() {
        return maxX - minX;
    }

    double height() {
        return maxY - minY;
    }

    Extent grown(double by) {
        return new Extent(minX - by, minY - by, maxX + by, maxY + by);
    }

    Extent common(Extent other) {
        return new Extent(
                Math.max(minX, other.minX),
                Math.max(minY, other.minY),
                Math.min(maxX, other.maxX),
                Math.min(maxY, other.maxY));
    }

    boolean meets(Extent other) {
        return minX < other.maxX && other.minX < maxX && minY < other.maxY && other.minY < maxY;
    }

    /** Says whether a line of a path, or what it is clipped to, comes within the rectangle; what it encloses does not count. */
    boolean meets(Painted.Path path) {
        Extent wider = grown(path.line().map(Painted.Line::width).orElse(0.0) / 2);
        Rectangle2D room = new Rectangle2D.Double(wider.minX, wider.minY, wider.width(), wider.height());
        for (Chain chain : path.clip().isEmpty() ? path.chains() : path.clip()) {
            List<Point> points = chain.points();
            for (int i = 0; i < points.size(); i++) {
                Point from = points.get(i);
                Point to = points.get(i + 1 < points.size() ? i + 1 : chain.closed() ? 0 : i);
                if (room.intersectsLine(from.x() / 1000.0, from.y() / 1000.0, to.x() / 1000.0, to.y() / 1000.0)) {
                    return true;
                }
            }
        }
        return false;
    }

    static Extent of(Painted.Path path) {
        Around around = new Around();
        around.add(path);
        return around.extent();
    }

    /** Grows round what is added. */
    static final class Around {
        private double minX = Double.POSITIVE_INFINITY;
        private double minY = Double.POSITIVE_INFINITY;
        private double maxX = Double.NEGATIVE_INFINITY;
        private double maxY = Double.NEGATIVE_INFINITY;

        void add(Painted one, Typeface typeface) throws IOException {
            if (one instanceof Painted.Path path) {
                add(path);
            } else if (one instanceof Painted.Words words) {
                add(words, typeface);
            }
        }

        void add(Painted.Path path) {
            double half = path.line().map(Painted.Line::width).orElse(0.0) / 2;
            for (Chain chain : path.clip().isEmpty() ? path.chains() : path.clip()) {
                for (Point point : chain.points()) {
                    add(point.x() / 1000.0, point.y() / 1000.0, half);
                }
            }
        }

        private void add(Painted.Words words, Typeface typeface) throws IOException {
            double width = typeface.width(typeface.shown(words.words())) * words.size();
            double before = switch (words.anchor()) {
                case START -> 0;
                case MIDDLE -> -width / 2;
                case END -> -width;
            };
            double cos = StrictMath.cos(words.radians());
            double sin = StrictMath.sin(words.radians());
            for (double along : new double[] {before, before + width}) {
                for (double up : new double[] {-0.25 * words.size(), 0.8 * words.size()}) {
                    add(words.x() + cos * along + sin * up, words.y() + sin * along - cos * up, 0);
                }
            }
        }

        private void add(double x, double y, double half) {
            minX = Math.min(minX, x - half);
            minY = Math.min(minY, y - half);
            maxX = Math.max(maxX, x + half);
            maxY = Math.max(maxY, y + half);
        }

        /** Returns the rectangle; that of a point where nothing was added. */
        Extent extent() {
            return minX > maxX ? new Extent(0, 0, 0, 0) : new Extent(minX, minY, maxX, maxY);
        }
    }
}
