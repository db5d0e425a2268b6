package lengthwise.job;

/**
 * A job file that cannot be used, in one line for the maker: file, line, column and key; what was found, what is
 * allowed, and the nearest valid name.
 */
public final class JobException extends Exception {
    private static final long serialVersionUID = 1;

    private final String message;

    public JobException(String message) {
        super(message);
        this.message = message;
    }

    JobException(String message, Throwable cause) {
        super(message, cause);
        this.message = message;
    }

    @Override
    public String getMessage() {
        return message;
    }
}
