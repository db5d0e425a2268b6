package lengthwise.job;

/** What keeps a maker from going on, in one line for her: where, what was found, and what to do. */
public abstract class Complaint extends Exception {
    private static final long serialVersionUID = 1;

    private final String message;

    protected Complaint(String message) {
        super(message);
        this.message = message;
    }

    protected Complaint(String message, Throwable cause) {
        super(message, cause);
        this.message = message;
    }

    @Override
    public String getMessage() {
        return message;
    }
}
