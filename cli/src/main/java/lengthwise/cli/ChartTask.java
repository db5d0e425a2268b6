package lengthwise.cli;

import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * One cell of a chart, whole in itself: it can be worked out wherever the program is, and the same task has the same key.
 *
 * @param version of Lengthwise that asks
 * @param job text of a job file
 * @param drawings content of each drawing, in base 64, by its path beside the job file
 * @param fabric name of the one that is laid
 * @param garments numbers of those that are laid
 * @param seconds time for the search; 0 where rounds alone count
 * @param iterations rounds of the search; 0 where time alone counts
 */
record ChartTask(
        String version,
        String job,
        Map<String, String> drawings,
        String fabric,
        List<Integer> garments,
        double seconds,
        long iterations,
        long seed)
        implements Serializable {
    ChartTask {
        drawings = Map.copyOf(drawings);
        garments = List.copyOf(garments);
    }

    static String encoded(byte[] drawing) {
        return Base64.getEncoder().encodeToString(drawing);
    }

    /** Returns 64 hexadecimal digits that are the same for the same task alone (SHA-256). */
    String key() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String part : List.of(
                    version, job, fabric, garments.toString(), Double.toString(seconds), iterations + " " + seed)) {
                add(digest, part);
            }
            new TreeMap<>(drawings).forEach((path, content) -> {
                add(digest, path);
                add(digest, content);
            });
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException every) {
            // every Java has it
            throw new IllegalStateException(every);
        }
    }

    private static void add(MessageDigest digest, String part) {
        byte[] bytes = part.getBytes(StandardCharsets.UTF_8);
        digest.update((bytes.length + ":").getBytes(StandardCharsets.UTF_8));
        digest.update(bytes);
    }
}
