package lengthwise.model;

/** Whether print or pile gives the fabric an up and a down (the trade's three nap modes). */
public enum Direction {
    /** Every piece may lie either way round. */
    EITHER_WAY,
    /** Every piece lies with its up end to the fabric's up end. */
    ONE_WAY,
    /** All pieces of one garment lie the same way; the next garment may be turned. */
    ONE_WAY_PER_GARMENT
}
