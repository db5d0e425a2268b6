package lengthwise.stash;

/** What cannot be done with a stash, in one line for the maker: what was found, and what to do. */
public final class StashException extends Exception {
    private static final long serialVersionUID = 1;

    private final String message;

    public StashException(String message) {
        super(message);
        this.message = message;
    }

    StashException(String message, Throwable cause) {
        super(message, cause);
        this.message = message;
    }

    @Override
    public String getMessage() {
        return message;
    }
}
