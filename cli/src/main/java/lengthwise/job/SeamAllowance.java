package lengthwise.job;

import lengthwise.model.Length;

/** What has to be added to the outlines of a drawing to make them cut lines. */
public record SeamAllowance(Length toAdd) {
    /** The outlines are the cut lines. */
    public static final SeamAllowance INCLUDED = new SeamAllowance(Length.ZERO);
}
