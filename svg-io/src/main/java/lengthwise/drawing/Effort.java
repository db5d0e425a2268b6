package lengthwise.drawing;

/** Counts the work spent on a drawing, so that one made to be slow is refused after a bounded time. */
final class Effort {
    private static final long MOST = 300_000_000;

    private final String file;
    private long spent;

    Effort(String file) {
        this.file = file;
    }

    void spend(long steps) throws DrawingException {
        spent += steps;
        if (spent > MOST) {
            throw new DrawingException(file + ": the drawing is too intricate to be a pattern; "
                    + "remove textures and pictures drawn with lines, and try again.");
        }
    }
}
