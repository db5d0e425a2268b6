package lengthwise.drawing;

/** A drawing that cannot be read, in one sentence for the maker: the file, the place, what is wrong, what to do. */
public class DrawingException extends Exception {
    private static final long serialVersionUID = 1;

    public DrawingException(String message) {
        super(message);
    }

    public DrawingException(String message, Throwable cause) {
        super(message, cause);
    }
}
