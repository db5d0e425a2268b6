package lengthwise.job;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * Finds the name that was probably meant.
 *
 * <p>Distance: letters put in, left out, changed or swapped with their neighbour (optimal string alignment; F. J.
 * Damerau, "A technique for computer detection and correction of spelling errors", Communications of the ACM 7, 1964).
 */
public final class Spelling {
    /** Longer words are never typed as keys; comparing them would only cost time. */
    private static final int LONGEST = 60;

    private Spelling() {}

    /** Returns the valid name nearest to what was found, if it is near enough to be a slip. */
    public static Optional<String> nearest(String found, Collection<String> valid) {
        String word = plain(found);
        String best = "";
        int least = Integer.MAX_VALUE;
        for (String name : valid) {
            int allowed = Math.max(1, Math.min(word.length(), name.length()) / 3);
            int distance = word.length() > LONGEST || name.length() > LONGEST
                    ? Integer.MAX_VALUE
                    : distance(word, plain(name));
            if (distance <= allowed && distance < least) {
                best = name;
                least = distance;
            }
        }
        return least == Integer.MAX_VALUE ? Optional.empty() : Optional.of(best);
    }

    /** Capitals, spaces and underscores are no mistakes worth counting. */
    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
    }

    static int distance(String a, String b) {
        int[][] cost = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    cost[i][j] = i + j;
                    continue;
                }
                int changed = cost[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                cost[i][j] = Math.min(changed, 1 + Math.min(cost[i - 1][j], cost[i][j - 1]));
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped) {
                    cost[i][j] = Math.min(cost[i][j], 1 + cost[i - 2][j - 2]);
                }
            }
        }
        return cost[a.length()][b.length()];
    }
}
