package lengthwise.report;

import java.util.List;
import lengthwise.svg.Markup;

/** Where blades, needles and lasers come in. Planning aids, all of it: manuals, codes and trained people go first. */
final class Cautions {
    private Cautions() {}

    /** Writes the section, once a page, last but for how the page was made. */
    static void write(Markup html) {
        html.open("section", "class", "together").line().element("h2", "Take care");
        Page.list(
                html,
                "ul",
                List.of(
                        "These figures are for planning. Print a page and measure it, and cut a sample first: cloth cut"
                                + " wrong is gone.",
                        "Blades: close or lock a rotary cutter after every cut, keep fingers behind the ruler's edge, cut"
                                + " away from yourself, wear shoes.",
                        "Electric knives: guard down to just above the cloth, the other hand out of the blade's way, cable"
                                + " off the table, never left running; gloves only of the kind that the machine's maker names.",
                        "Needles and pins: count them, and keep them out of the path of any blade.",
                        "Lasers: never on PVC or vinyl, which gives off hydrogen chloride. Elastane, nylon and polyester"
                                + " melt, may burn and give off harmful fumes: extraction on, fire watch, never left alone.",
                        "The machine's manual, local codes and trained people go before anything said here."));
        html.close().line();
    }
}
