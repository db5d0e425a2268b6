package lengthwise.job;

/** What the arrow drawn on a piece means. */
public enum ArrowMeaning {
    /** The grain line: it lies parallel to the selvedge. */
    GRAIN,
    /** The direction of greatest stretch, round the body: it lies along the fabric's greatest stretch. */
    STRETCH
}
