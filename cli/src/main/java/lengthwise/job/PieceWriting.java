package lengthwise.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.job.JobPiece.MatchMark;
import lengthwise.model.GrainTolerance;
import lengthwise.model.Lying;
import lengthwise.model.MarkRef;
import lengthwise.model.MatchPoint.Partner;

/** Writes the pieces of a job file. */
final class PieceWriting {
    private final JobText text;
    private final LengthRuleWriting lengths;

    PieceWriting(JobText text) {
        this.text = text;
        this.lengths = new LengthRuleWriting(text);
    }

    String piece(JobPiece piece) {
        List<String> parts = new ArrayList<>();
        piece.strip().ifPresent(strip -> {
            parts.add("strip: {cut-width: %s, length: %s}"
                    .formatted(text.length(strip.cutWidth()), lengths.rule(strip.length())));
            strip.runs().ifPresent(runs -> parts.add("runs: " + Entry.word(runs)));
            strip.print().ifPresent(print -> parts.add("print: " + Entry.word(print)));
        });
        if (!piece.cut().isEmpty()) {
            parts.add("cut: "
                    + JobText.braces(piece.cut().stream()
                            .map(cut -> JobText.quoted(cut.role()) + ": " + cut.words())
                            .toList()));
        }
        piece.up().ifPresent(up -> parts.add("up: " + Entry.word(up)));
        piece.arrowMeans().ifPresent(meaning -> parts.add("arrow-means: " + Entry.word(meaning)));
        piece.drawn().ifPresent(hand -> parts.add("drawn: " + Entry.word(hand)));
        piece.matchPoint().ifPresent(match -> parts.add("match-point: " + matchPoint(match)));
        piece.gap().ifPresent(gap -> parts.add("gap: " + text.length(gap)));
        piece.filler().ifPresent(most -> parts.add("filler: {at-most: " + most + "}"));
        piece.lying().grain().ifPresent(grain -> parts.add("grain: " + Entry.word(grain)));
        piece.lying().tolerance().ifPresent(tolerance -> parts.add("grain-tolerance: " + tolerance(tolerance)));
        if (piece.lying().edgeOnSelvedge()) {
            parts.add("edge-on-selvedge: yes");
        }
        piece.lying().border().ifPresent(tie -> parts.add("border: " + tie(tie)));
        piece.lying().zone().ifPresent(zone -> parts.add("zone: " + JobText.quoted(zone)));
        motifs(piece, /* on= */ false).ifPresent(off -> parts.add("keep-off: " + off));
        motifs(piece, /* on= */ true).ifPresent(on -> parts.add("keep-on: " + on));
        return JobText.braces(parts);
    }

    private String tolerance(GrainTolerance tolerance) {
        return tolerance instanceof GrainTolerance.Deviation deviation
                ? text.length(deviation.over())
                : BigDecimal.valueOf(((GrainTolerance.Degrees) tolerance).degrees())
                                .toPlainString() + " deg";
    }

    private static String tie(Lying.Tie tie) {
        return switch (tie.kind()) {
            case LOWEST_POINT -> "hem";
            case NOTCH, DRILL_HOLE -> Entry.word(tie.kind()) + " " + tie.number();
        };
    }

    private String matchPoint(MatchMark match) {
        List<String> parts = new ArrayList<>(List.of("at: " + mark(match.at())));
        match.tolerance().ifPresent(most -> parts.add("tolerance: " + text.length(most)));
        match.along().ifPresent(axis -> parts.add("along: " + Entry.word(axis)));
        match.to()
                .ifPresent(to -> parts.add(
                        to instanceof Partner.Mate mate
                                ? "to: {piece: %s, at: %s}".formatted(JobText.quoted(mate.piece()), mark(mate.at()))
                                : "to: other-hand"));
        return JobText.braces(parts);
    }

    private Optional<String> motifs(JobPiece piece, boolean on) {
        List<String> motifs = piece.lying().motifs().stream()
                .filter(motif -> motif.on() == on)
                .map(motif -> "{motif: " + JobText.quoted(motif.motif())
                        + motif.at().map(at -> ", at: " + mark(at)).orElse("") + "}")
                .toList();
        return motifs.isEmpty() ? Optional.empty() : Optional.of("[" + String.join(", ", motifs) + "]");
    }

    private static String mark(MarkRef mark) {
        return Entry.word(mark.kind()) + " " + mark.number();
    }
}
