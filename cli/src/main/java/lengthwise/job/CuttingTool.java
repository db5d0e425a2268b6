package lengthwise.job;

import lengthwise.model.Length;

/** What the pieces are cut with: how far apart they lie where the job does not say. Common practice, no source. */
public enum CuttingTool {
    /** 2 to 5 mm. */
    SCISSORS(3),
    /** 2 to 5 mm. */
    ROTARY_CUTTER(3),
    /** 2 to 3 mm. */
    STRAIGHT_KNIFE(3),
    /** A plotter that cuts one ply: up to 2 mm; with 0 pieces may share a line. */
    KNIFE_PLOTTER(2),
    /** It burns 0.2 to 1 mm away on each side of its line. */
    LASER(2);

    private final int millimetres;

    CuttingTool(int millimetres) {
        this.millimetres = millimetres;
    }

    String called() {
        return switch (this) {
            case SCISSORS -> "scissors";
            case ROTARY_CUTTER -> "a rotary cutter";
            case STRAIGHT_KNIFE -> "a straight knife";
            case KNIFE_PLOTTER -> "a knife plotter";
            case LASER -> "a laser";
        };
    }

    Length gap() {
        return Length.ofMillimetres(millimetres);
    }
}
