package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.Shade;
import lengthwise.model.Shrinkage;

/** Writes the cloths of a job file. */
final class FabricWriting {
    private final JobText text;

    FabricWriting(JobText text) {
        this.text = text;
    }

    void write(JobFabric fabric) {
        text.line("  " + JobText.quoted(fabric.name()) + ":");
        text.line("    for: " + JobText.quoted(fabric.role()));
        text.line("    width: " + text.length(fabric.width()), "from selvedge to selvedge");
        fabric.unusableEdge().ifPresent(edge -> text.line("    unusable-edge: " + unusableEdge(edge)));
        fabric.direction()
                .ifPresent(direction -> text.line(
                        "    direction: " + Entry.word(direction), "either-way, one-way or one-way-per-garment"));
        fabric.pile().ifPresent(pile -> text.line("    pile: " + Entry.word(pile), "up or down the body"));
        fabric.mostStretch()
                .ifPresent(axis -> text.line("    most-stretch: " + Entry.word(axis), "lengthwise or crosswise"));
        fabric.rightSide().ifPresent(side -> text.line("    right-side: " + Entry.word(side), "outside or body"));
        fabric.repeat().ifPresent(repeat -> text.line("    repeat: " + new RepeatWriting(text).repeat(repeat)));
        fabric.shrinkage()
                .ifPresent(shrinkage ->
                        text.line("    shrinkage: " + shrinkage(shrinkage), "pre-wash, add-to-pieces or in-pattern"));
        List<String> spread = new ArrayList<>();
        JobSpread said = fabric.spread();
        said.form().ifPresent(form -> spread.add("form: " + Entry.word(form)));
        said.plies().ifPresent(plies -> spread.add("plies: " + plies));
        said.pliesRun().ifPresent(run -> spread.add("plies-run: " + Entry.word(run)));
        said.endAllowance().ifPresent(ends -> spread.add("end-allowance: {each-end: " + text.length(ends) + "}"));
        said.compare().ifPresent(form -> spread.add("compare: " + Entry.word(form)));
        if (!spread.isEmpty()) {
            text.line("    spread: " + JobText.braces(spread));
        }
        fabric.price().ifPresent(price -> text.line("    price: " + PriceText.print(price)));
        fabric.soldBy().ifPresent(step -> text.line("    sold-by: " + text.length(step), "the shop's step"));
        new BuyingWriting(text).write(fabric.buying());
        fabric.there()
                .ifPresent(there -> text.line(
                        there.corners().isEmpty()
                                ? "    length: " + text.length(there.length())
                                : "    outline: " + corners(there.corners()),
                        "what there is of it"));
        fabric.across()
                .border()
                .ifPresent(border -> text.line("    border: {from-selvedge: %s, selvedge: %s}"
                        .formatted(text.length(border.fromSelvedge()), Entry.word(border.selvedge()))));
        if (!fabric.across().zones().isEmpty()) {
            text.line("    zones: " + zones(fabric.across().zones()));
        }
        fabric.across().shade().ifPresent(shade -> text.line("    shade: " + shade(shade)));
        if (fabric.across().keepTogether()) {
            text.line("    keep-together: yes", "each garment from one piece of cloth");
        }
        if (!fabric.flaws().isEmpty()) {
            text.line("    flaws:");
            fabric.flaws().forEach(flaw -> text.line("      - " + flaw(flaw)));
        }
        fabric.cutAlready().ifPresent(cut -> text.line("    already-cut: " + cutAlready(cut)));
    }

    private String cutAlready(JobCutAlready cut) {
        List<String> parts = new ArrayList<>(List.of("marker: " + JobText.quoted(cut.marker())));
        cut.upTo().ifPresent(length -> parts.add("up-to: " + text.length(length)));
        if (!cut.numbers().isEmpty()) {
            parts.add("numbers: " + cut.numbers());
        }
        if (!cut.spoilt().isEmpty()) {
            parts.add("spoilt: " + cut.spoilt());
        }
        return JobText.braces(parts);
    }

    private String unusableEdge(UnusableEdge edge) {
        return edge.near().equals(edge.far())
                ? "{each-side: " + text.length(edge.near()) + "}"
                : "{near: " + text.length(edge.near()) + ", far: " + text.length(edge.far()) + "}";
    }

    private static String shrinkage(Shrinkage shrinkage) {
        return "{lengthwise: %s, crosswise: %s, handled: %s}"
                .formatted(
                        JobText.percent(shrinkage.lengthwise()),
                        JobText.percent(shrinkage.crosswise()),
                        Entry.word(shrinkage.handled()));
    }

    private String corners(List<JobFabric.Corner> corners) {
        return corners.stream()
                .map(corner -> "{from-start: %s, from-selvedge: %s}"
                        .formatted(text.length(corner.fromStart()), text.length(corner.fromSelvedge())))
                .collect(Collectors.joining(", ", "[", "]"));
    }

    private String flaw(Flaw flaw) {
        return "{from-start: %s, length: %s, from-selvedge: %s, width: %s}"
                .formatted(
                        text.length(flaw.fromStart()),
                        text.length(flaw.length()),
                        text.length(flaw.fromSelvedge()),
                        text.length(flaw.width()));
    }

    private String shade(Shade shade) {
        List<String> parts = new ArrayList<>();
        shade.lengthwise().ifPresent(length -> parts.add("lengthwise: " + text.length(length)));
        shade.crosswise().ifPresent(length -> parts.add("crosswise: " + text.length(length)));
        return JobText.braces(parts);
    }

    private String zones(List<JobFabric.Zone> zones) {
        return zones.stream()
                .map(zone -> "%s: {from-selvedge: %s, to: %s}"
                        .formatted(JobText.quoted(zone.name()), text.length(zone.from()), text.length(zone.to())))
                .collect(Collectors.joining(", ", "{", "}"));
    }
}
