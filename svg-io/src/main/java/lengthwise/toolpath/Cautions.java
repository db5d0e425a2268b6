package lengthwise.toolpath;

import java.util.List;

/** What stands on everything that machines cut by. */
public final class Cautions {
    private Cautions() {}

    /** Returns a sentence each. */
    public static List<String> forCutting() {
        return List.of(
                "Blades, needles and lasers injure: the machine's manual, local safety and fire codes and trained people go first.",
                "Elastane, nylon and polyester give off harmful fumes when cut with heat, and PVC must never be: ask for the cloth's data sheet, extract the fumes, never leave a laser alone.",
                "Cut a test square first, and measure it.");
    }
}
