package lengthwise.workshop;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.model.Length;

/**
 * A stitch class of ISO 4915 and how much thread a seam of it takes, waste left out.
 *
 * <p>The ratios are those of a public document that quotes Carr and Latham and a thread maker; of the shares of the needle, that
 * of 301 and of 401 was read, the others are from memory. For other classes, such as 514 and 607, no figure was found.
 *
 * @param number of the class
 * @param ratio length of thread for each length of seam
 * @param needle the needles' share of it, where known; the rest is in loopers or the bobbin
 */
public record Stitch(int number, double ratio, OptionalDouble needle) {
    private static final List<Stitch> KNOWN = List.of(
            of(101, 4.0, 1),
            of(301, 2.5, 0.5),
            of(304, 7.0, 0.5),
            of(401, 5.5, 0.25),
            of(406, 18.0, 0.3),
            of(503, 12.0, 0.55),
            of(504, 14.0, 0.2),
            of(512, 18.0, 0.25),
            of(516, 20.0, 0.2),
            of(602, 25.0, 0.2),
            of(605, 28.0, 0.3),
            new Stitch(606, 32.0, OptionalDouble.empty()));

    private static Stitch of(int number, double ratio, double needle) {
        return new Stitch(number, ratio, OptionalDouble.of(needle));
    }

    /** Returns what is known of a class; empty where no figure is. */
    public static Optional<Stitch> of(int number) {
        return KNOWN.stream().filter(stitch -> stitch.number == number).findFirst();
    }

    /** Returns the numbers of the classes that a figure is known for. */
    public static List<Integer> known() {
        return KNOWN.stream().map(Stitch::number).toList();
    }

    /** Returns the thread that a seam takes, waste left out. */
    public Length thread(Length seam) {
        return seam.scaled(ratio);
    }

    /** Returns the part of it that runs through the needles, where known. */
    public Optional<Length> needleThread(Length seam) {
        return needle.isPresent() ? Optional.of(seam.scaled(ratio * needle.getAsDouble())) : Optional.empty();
    }
}
