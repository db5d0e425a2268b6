package lengthwise.rules;

/** Thrown inside this package where two rules contradict; {@link Ruling} turns it into an answer. */
final class RefusedException extends Exception {
    private static final long serialVersionUID = 1;

    RefusedException(String reason) {
        super(reason);
    }
}
