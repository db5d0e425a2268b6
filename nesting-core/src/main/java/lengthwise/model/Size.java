package lengthwise.model;

/** A size by its name; pieces without sizes have {@link #ONE}. */
public record Size(String name) {
    /** The size of what comes in one size only. */
    public static final Size ONE = new Size("");
}
