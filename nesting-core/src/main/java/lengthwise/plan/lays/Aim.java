package lengthwise.plan.lays;

/** What a plan should have least of. */
public enum Aim {
    /** As little fabric as can be, and of such plans one of few lays. */
    FABRIC,
    /** As few lays as can be, and of such plans one that takes little fabric. */
    LAYS
}
