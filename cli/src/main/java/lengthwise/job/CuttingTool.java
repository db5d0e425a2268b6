package lengthwise.job;

import lengthwise.model.Length;

/**
 * What the pieces are cut with: how far apart they lie, and how many plies it cuts at once, where the job does not say. Common
 * practice, no source, but for the straight knife.
 */
public enum CuttingTool {
    /** 2 to 5 mm. */
    SCISSORS(3, 2),
    /** 2 to 5 mm. */
    ROTARY_CUTTER(3, 2),
    /** 2 to 3 mm. 5 to 20 plies of coating, more of thinner cloth: Industrial Cutting of Textile Materials, p. 51. */
    STRAIGHT_KNIFE(3, 20),
    /** A plotter that cuts one ply: up to 2 mm; with 0 pieces may share a line. */
    KNIFE_PLOTTER(2, 1),
    /** It burns 0.2 to 1 mm away on each side of its line. */
    LASER(2, 1);

    private final int millimetres;
    private final int plies;

    CuttingTool(int millimetres, int plies) {
        this.millimetres = millimetres;
        this.plies = plies;
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

    int plies() {
        return plies;
    }

    Length gap() {
        return Length.ofMillimetres(millimetres);
    }
}
