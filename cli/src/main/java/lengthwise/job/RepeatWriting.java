package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import lengthwise.job.JobFabric.PrintMotif;
import lengthwise.job.JobFabric.PrintRepeat;
import lengthwise.model.Length;

/** Writes the print of a cloth of a job file. */
final class RepeatWriting {
    private final JobText text;

    RepeatWriting(JobText text) {
        this.text = text;
    }

    String repeat(PrintRepeat repeat) {
        List<String> parts = new ArrayList<>();
        if (!repeat.lengthwise().equals(Length.ZERO)) {
            parts.add("lengthwise: " + text.length(repeat.lengthwise()));
        }
        if (!repeat.crosswise().equals(Length.ZERO)) {
            parts.add("crosswise: " + text.length(repeat.crosswise()));
        }
        if (repeat.halfDrop()) {
            parts.add("half-drop: yes");
        }
        if (repeat.mirrored()) {
            parts.add("mirrored: yes");
        }
        if (repeat.uneven()) {
            parts.add("uneven: yes");
        }
        if (!repeat.fromStart().equals(Length.ZERO) || !repeat.fromSelvedge().equals(Length.ZERO)) {
            parts.add("origin: {from-start: %s, from-selvedge: %s}"
                    .formatted(text.length(repeat.fromStart()), text.length(repeat.fromSelvedge())));
        }
        if (!repeat.motifs().isEmpty()) {
            parts.add("motifs: "
                    + JobText.braces(repeat.motifs().stream()
                            .map(motif -> JobText.quoted(motif.name()) + ": " + motif(motif, repeat))
                            .toList()));
        }
        repeat.image().ifPresent(image -> parts.add("image: " + JobText.quoted(image)));
        return JobText.braces(parts);
    }

    private String motif(PrintMotif motif, PrintRepeat repeat) {
        List<String> parts = new ArrayList<>();
        if (!repeat.lengthwise().equals(Length.ZERO)) {
            parts.add("lengthwise: " + text.length(motif.lengthwise()));
        }
        if (!repeat.crosswise().equals(Length.ZERO)) {
            parts.add("crosswise: " + text.length(motif.crosswise()));
        }
        if (motif.round()) {
            parts.add("radius: " + text.length(new Length(motif.length().micrometres() / 2)));
            return JobText.braces(parts);
        }
        if (!repeat.lengthwise().equals(Length.ZERO)) {
            parts.add("length: " + text.length(motif.length()));
        }
        if (!repeat.crosswise().equals(Length.ZERO)) {
            parts.add("width: " + text.length(motif.width()));
        }
        return JobText.braces(parts);
    }
}
