package lengthwise.cli;

/** How a command ended. The numbers are documented in {@code --help} and do not change. */
public enum ExitCode {
    DONE(0, "done"),
    OUR_FAULT(1, "a fault of Lengthwise"),
    WRONG_USE(2, "wrong use of the command line"),
    BAD_INPUT(3, "bad input: a job, drawing or marker that cannot be used, or a question to answer"),
    NO_MARKER(4, "no marker is possible; the reason is said"),
    CHECK_FAILED(5, "the check found something wrong with a marker"),
    INTERRUPTED(130, "interrupted; the best marker so far was written");

    private final int number;
    private final String meaning;

    ExitCode(int number, String meaning) {
        this.number = number;
        this.meaning = meaning;
    }

    public int number() {
        return number;
    }

    String meaning() {
        return meaning;
    }
}
