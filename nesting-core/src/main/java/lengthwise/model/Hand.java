package lengthwise.model;

/** The side of the body that a cut piece belongs to, as worn. */
public enum Hand {
    LEFT("L"),
    RIGHT("R"),
    NONE("");

    private final String letter;

    Hand(String letter) {
        this.letter = letter;
    }

    /** Returns what is printed on the marker: L, R or nothing. */
    public String letter() {
        return letter;
    }

    public Hand other() {
        return switch (this) {
            case LEFT -> RIGHT;
            case RIGHT -> LEFT;
            case NONE -> NONE;
        };
    }
}
