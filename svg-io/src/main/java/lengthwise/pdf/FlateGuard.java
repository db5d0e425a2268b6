package lengthwise.pdf;

import java.nio.charset.StandardCharsets;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import lengthwise.drawing.DrawingException;

/**
 * Refuses files that hold a little data that grows beyond measure when it is unpacked, before anything is unpacked to
 * memory: whatever stands between {@code stream} and {@code endstream} and begins like deflated data is run through.
 * Pictures are let be, for they are never unpacked.
 */
final class FlateGuard {
    private static final long MOST = 64L << 20;
    private static final int WORD = "stream".length();
    private static final int DICTIONARY = 2_000;

    private FlateGuard() {}

    static void check(String name, byte[] file) throws DrawingException {
        long left = 4 * MOST;
        for (int at = next(file, 0); at >= 0; at = next(file, at + WORD)) {
            int start = at + WORD;
            while (start < file.length && (file[start] == '\r' || file[start] == '\n')) {
                start++;
            }
            boolean deflated = start < file.length && (file[start] & 0x0f) == 8;
            if (deflated && !isPicture(file, at)) {
                long size = inflated(file, start, Math.min(MOST, left));
                left -= size;
                if (size >= MOST || left <= 0) {
                    throw new DrawingException(
                            name + ": what is packed in it is too large to be a pattern; export the lines alone.");
                }
            }
        }
    }

    private static int next(byte[] file, int from) {
        for (int i = from; i + WORD <= file.length; i++) {
            if (file[i] == 's'
                    && file[i + 1] == 't'
                    && file[i + 2] == 'r'
                    && file[i + 3] == 'e'
                    && file[i + 4] == 'a'
                    && file[i + 5] == 'm'
                    && (i < 3 || file[i - 1] != 'd')) {
                return i;
            }
        }
        return -1;
    }

    private static boolean isPicture(byte[] file, int at) {
        int from = Math.max(0, at - DICTIONARY);
        String before = new String(file, from, at - from, StandardCharsets.ISO_8859_1);
        return before.substring(Math.max(0, before.lastIndexOf(" obj"))).contains("/Image");
    }

    private static long inflated(byte[] file, int start, long most) {
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(file, start, file.length - start);
            byte[] chunk = new byte[1 << 16];
            long size = 0;
            while (!inflater.finished() && size < most) {
                int more = inflater.inflate(chunk);
                if (more == 0 && (inflater.needsInput() || inflater.needsDictionary())) {
                    break;
                }
                size += more;
            }
            return size;
        } catch (DataFormatException notDeflated) {
            return 0;
        } finally {
            inflater.end();
        }
    }
}
