package lengthwise.job;

/**
 * A job file that cannot be used, in one line for the maker: file, line, column and key; what was found, what is
 * allowed, and the nearest valid name.
 */
public final class JobException extends Complaint {
    private static final long serialVersionUID = 1;

    public JobException(String message) {
        super(message);
    }

    JobException(String message, Throwable cause) {
        super(message, cause);
    }
}
