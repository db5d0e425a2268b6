package lengthwise.drawing;

import java.util.List;
import java.util.Optional;

/**
 * Something to paint as it stands in a drawing, whatever the format of the file. Lengths are millimetres, colours
 * {@code 0xRRGGBB}, y runs down.
 */
public sealed interface Painted {
    /**
     * Chains, filled or drawn along.
     *
     * @param fill the colour of their inside
     * @param clip what it shows through; everything where there is none
     * @param mark what the file says it marks: "grain", "notch"; empty where it says nothing
     */
    record Path(List<Chain> chains, Optional<Integer> fill, Optional<Line> line, List<Chain> clip, String mark)
            implements Painted {
        public Path {
            chains = List.copyOf(chains);
            clip = List.copyOf(clip);
        }
    }

    /**
     * A line of lettering.
     *
     * @param x where its anchor stands, on the baseline
     * @param y likewise
     * @param size of the letters, from one line to the next where they are set tight
     * @param radians the direction of reading, from +x towards +y
     */
    record Words(String words, double x, double y, double size, double radians, Anchor anchor, boolean bold, int colour)
            implements Painted {
        /** Returns the same words at another place. */
        public Words at(double otherX, double otherY) {
            return new Words(words, otherX, otherY, size, radians, anchor, bold, colour);
        }
    }

    /** Which point of a line of lettering stands at its place. */
    enum Anchor {
        START,
        MIDDLE,
        END
    }

    /**
     * How a line is drawn.
     *
     * @param dashes lengths of dashes and gaps in turn; none for a whole line
     * @param opacity from 0 to 1
     */
    record Line(int colour, double width, List<Double> dashes, double opacity) {
        public Line {
            dashes = List.copyOf(dashes);
        }

        /** Returns a whole, opaque line. */
        public static Line of(int colour, double width) {
            return new Line(colour, width, List.of(), 1);
        }
    }
}
