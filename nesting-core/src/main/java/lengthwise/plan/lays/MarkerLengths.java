package lengthwise.plan.lays;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.model.Length;

/**
 * What is known of the lengths of markers: those that were laid, and from them a guess at the others. A marker's length is
 * taken for a straight line over the net length of its garments (their area over the cuttable width), fitted to the markers
 * laid by least squares; it rises no slower than the net length, and begins no lower than nothing.
 */
final class MarkerLengths {
    private final List<Length> net;
    private final Length ends;
    private final boolean never;
    private final Map<List<Integer>, Length> laid = new LinkedHashMap<>();

    /**
     * Knows nothing yet.
     *
     * @param net length of a garment of each size: its area over the cuttable width
     * @param ends what a ply has beyond its marker
     * @param never whether the guess must not be shorter than a marker that was laid: where a table limits the plies
     */
    MarkerLengths(List<Length> net, Length ends, boolean never) {
        this.net = List.copyOf(net);
        this.ends = ends;
        this.never = never;
    }

    void add(List<Integer> ratio, Length marker) {
        laid.put(List.copyOf(ratio), marker);
    }

    boolean knows(List<Integer> ratio) {
        return laid.containsKey(ratio);
    }

    /** Returns the length of a ply for a size ratio whose marker was laid, ends included. */
    Optional<Length> ply(List<Integer> ratio) {
        return Optional.ofNullable(laid.get(ratio)).map(ends::plus);
    }

    /** Returns the guess. */
    PlyLength guess() {
        double n = laid.size();
        double x = 0;
        double y = 0;
        double xx = 0;
        double xy = 0;
        for (Map.Entry<List<Integer>, Length> marker : laid.entrySet()) {
            double of = net(marker.getKey());
            double is = (double) marker.getValue().micrometres();
            x += of;
            y += is;
            xx += of * of;
            xy += of * is;
        }
        double spread = n * xx - x * x;
        double slope = spread > 1e-9 * xx * n ? (n * xy - x * y) / spread : xy / xx;
        double once = (y - slope * x) / n;
        if (slope < 1) {
            slope = 1;
            once = (y - x) / n;
        }
        if (once < 0) {
            once = 0;
            slope = Math.max(1, xy / xx);
        }
        double most = never ? most(slope) : 0;
        double rate = slope;
        return new PlyLength(
                ends.plus(new Length((long) Math.ceil(Math.max(once, most)))),
                net.stream()
                        .map(length -> new Length((long) Math.ceil(rate * length.micrometres())))
                        .toList());
    }

    /** Returns what a marker has beyond its garments at the very most. */
    private double most(double slope) {
        return laid.entrySet().stream()
                .mapToDouble(marker -> marker.getValue().micrometres() - slope * net(marker.getKey()))
                .max()
                .orElse(0);
    }

    private double net(List<Integer> ratio) {
        double sum = 0;
        for (int size = 0; size < ratio.size(); size++) {
            sum += (double) ratio.get(size) * net.get(size).micrometres();
        }
        return sum;
    }
}
