package lengthwise.stash;

import lengthwise.job.Complaint;

/** What cannot be done with a stash, in one line for the maker, without the full stop: what was found, and what to do. */
public final class StashException extends Complaint {
    private static final long serialVersionUID = 1;

    public StashException(String message) {
        super(message);
    }

    StashException(String message, Throwable cause) {
        super(message, cause);
    }
}
