package lengthwise.solver;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * The arrangements that attempts at one length ended in, the least overlap first. The next attempt starts from one of
 * the better ones, disturbed, and not from wherever the last one strayed to (J. Gardeyn, G. Vanden Berghe, T. Wauters,
 * arXiv 2509.13329, 2025).
 */
final class Attempts {
    private static final int MOST = 20;

    private final List<Arrangement.Snapshot> ended = new ArrayList<>();

    void clear() {
        ended.clear();
    }

    void add(Arrangement.Snapshot snapshot) {
        int at = 0;
        while (at < ended.size() && ended.get(at).total <= snapshot.total) {
            at++;
        }
        ended.add(at, snapshot);
        if (ended.size() > MOST) {
            ended.remove(MOST);
        }
    }

    /** Returns one of them, a better one more often. */
    Arrangement.Snapshot pick(SplittableRandom random) {
        double likely = random.nextDouble() * random.nextDouble();
        return ended.get((int) (likely * ended.size()));
    }
}
