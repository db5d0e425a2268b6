package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import lengthwise.model.MatchPoint.Partner;

/** Looks at how the parts of a job go together. */
final class JobChecks {
    private final Job job;
    private final Places places;
    private final List<String> warnings = new ArrayList<>();

    JobChecks(Job job, Places places) throws JobException {
        this.job = job;
        this.places = places;
        refuseSizesThatAreNotDrawn();
        for (JobPiece piece : job.pieces()) {
            if (piece.strip().isPresent()) {
                refuseMissingMeasures(
                        "the strip " + piece.name(),
                        "pieces." + piece.name() + ".strip.length",
                        piece.strip().get().length());
            }
            warnOfMatchPointWithoutRepeat(piece);
            refuseMatchingInARing(piece);
            refuseMatchedFiller(piece);
        }
        for (JobSewing.Keyed keyed : job.sewing().rules()) {
            refuseMissingMeasures("sewing." + keyed.key(), "sewing." + keyed.key(), keyed.rule());
        }
        refuseThreadWithoutSeams();
        warnOfFabricsNotCutFrom();
    }

    private void refuseThreadWithoutSeams() throws JobException {
        if (job.sewing().thread().isPresent() && job.sewing().seams().isEmpty()) {
            throw places.complaint(
                    "sewing.thread",
                    "there is no seam to sew with it; write seams: {side: {stitch: 504, length: 18 cm}}");
        }
    }

    List<String> warnings() {
        return warnings;
    }

    /** Where every drawing says its size, no drawing has to be read to know which sizes there are. */
    private void refuseSizesThatAreNotDrawn() throws JobException {
        if (job.drawings().isEmpty()
                || job.drawings().stream().anyMatch(drawing -> drawing.size().isEmpty())) {
            return;
        }
        TreeSet<String> drawn = new TreeSet<>();
        job.drawings().forEach(drawing -> drawn.add(drawing.size().orElseThrow()));
        for (int i = 0; i < job.order().size(); i++) {
            String size = job.order().get(i).size().name();
            if (!drawn.contains(size)) {
                throw places.complaint(
                        "order[" + (i + 1) + "].size",
                        "found %s; the sizes drawn are %s%s"
                                .formatted(
                                        size.isEmpty() ? "no size" : Quote.of(size),
                                        String.join(", ", drawn),
                                        Entry.meant(size, drawn)));
            }
        }
    }

    private void refuseMissingMeasures(String what, String key, LengthRule length) throws JobException {
        Map<String, LengthRule> stated = job.sewing().stated();
        for (int i = 0; i < job.order().size(); i++) {
            OrderLine line = job.order().get(i);
            Optional<String> lacking = length.lacking(line, stated);
            if (lacking.isPresent()) {
                throw places.complaint("order[" + (i + 1) + "]", "%s %s".formatted(what, lacking.get()));
            }
            if (!length.isKnown(stated)) {
                continue;
            }
            try {
                length.lengthFor(line, stated);
            } catch (JobException nothing) {
                throw places.complaint(key, "for order[%d] %s %s".formatted(i + 1, what, nothing.getMessage()));
            }
        }
    }

    private void warnOfMatchPointWithoutRepeat(JobPiece piece) {
        boolean repeats = job.fabrics().stream()
                .filter(fabric -> piece.cut().isEmpty()
                        || piece.cut().stream().anyMatch(cut -> cut.role().equals(fabric.role())))
                .anyMatch(fabric -> fabric.repeat().isPresent());
        if (piece.matchPoint().isPresent() && !repeats) {
            warn(
                    "pieces." + piece.name() + ".match-point",
                    "none of the fabrics it is cut from has a repeat, so the match point changes nothing");
        }
    }

    /** Each of the pieces would wait for the other to be laid; one of them must have no match point. */
    private void refuseMatchingInARing(JobPiece piece) throws JobException {
        List<String> followed = new ArrayList<>(List.of(piece.name()));
        Optional<String> next = mate(piece);
        while (next.isPresent() && !followed.contains(next.get())) {
            followed.add(next.get());
            next = job.piece(next.get()).flatMap(JobChecks::mate);
        }
        if (next.isPresent() && next.get().equals(piece.name())) {
            throw places.complaint(
                    "pieces." + piece.name() + ".match-point.to",
                    followed.size() == 1
                            ? "%s cannot be matched to itself; for left and right write to: other-hand"
                                    .formatted(piece.name())
                            : "%s and %s are matched to each other in a ring; leave the match point of one of them out"
                                    .formatted(piece.name(), followed.get(followed.size() - 1)));
        }
    }

    /** Only pieces of one garment are matched to each other, and a filler belongs to none. */
    private void refuseMatchedFiller(JobPiece piece) throws JobException {
        Optional<String> mate = mate(piece);
        boolean mateIsFiller =
                mate.flatMap(job::piece).flatMap(JobPiece::filler).isPresent();
        if (mate.isPresent() && (mateIsFiller || piece.filler().isPresent())) {
            throw places.complaint(
                    "pieces." + piece.name() + ".match-point.to",
                    "%s is a filler and belongs to no garment, so that it has no %s to be matched to; leave to out, or leave filler out"
                            .formatted(
                                    mateIsFiller ? mate.get() : piece.name(),
                                    mateIsFiller ? piece.name() : mate.get()));
        }
    }

    private static Optional<String> mate(JobPiece piece) {
        return piece.matchPoint()
                .flatMap(JobPiece.MatchMark::to)
                .filter(Partner.Mate.class::isInstance)
                .map(to -> ((Partner.Mate) to).piece());
    }

    private void warnOfFabricsNotCutFrom() {
        for (JobFabric fabric : job.fabrics()) {
            boolean cutFrom = job.pieces().stream()
                    .flatMap(piece -> piece.cut().stream())
                    .anyMatch(cut -> cut.role().equals(fabric.role()));
            if (!cutFrom && job.pieces().stream().anyMatch(piece -> !piece.cut().isEmpty())) {
                warn(
                        "fabrics." + fabric.name(),
                        "no piece listed under pieces is cut from it (it is for %s)".formatted(fabric.role()));
            }
        }
    }

    private void warn(String key, String what) {
        warnings.add(places.complaint(key, what).getMessage());
    }
}
