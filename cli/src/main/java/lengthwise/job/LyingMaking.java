package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lengthwise.model.Fabric;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;

/** What the job says of how pieces lie, tied to a selvedge, a border, a zone or motifs or a little off their grain, made out for one fabric. */
final class LyingMaking {
    private LyingMaking() {}

    /**
     * Returns an order with how those of its pieces lie that are tied to its fabric; one without border, zones or motifs
     * ties none to them.
     */
    static MarkerOrder tied(MarkerOrder order, Job job, JobFabric said, Orders.Complaints complaints)
            throws JobException {
        Fabric fabric = order.fabric();
        Set<String> cut = order.withAllFillers().stream()
                .flatMap(bundle -> bundle.pieces().stream())
                .map(piece -> piece.piece().name())
                .collect(Collectors.toSet());
        Map<String, Lying> lying = new LinkedHashMap<>();
        for (JobPiece piece : job.pieces()) {
            if (!cut.contains(piece.name())) {
                continue;
            }
            Lying how = new Lying(
                    piece.lying().edgeOnSelvedge(),
                    piece.lying()
                            .border()
                            .flatMap(at -> said.across()
                                    .border()
                                    .map(border -> new Lying.Border(
                                            at, border.selvedge(), FabricMaking.line(fabric, border)))),
                    zone(piece, said, fabric, complaints),
                    piece.lying().tolerance(),
                    motifs(piece, said, fabric, complaints));
            if (!how.equals(Lying.ANYWHERE)) {
                lying.put(piece.name(), how);
            }
        }
        return order.withLying(lying);
    }

    private static Optional<Lying.Zone> zone(
            JobPiece piece, JobFabric said, Fabric fabric, Orders.Complaints complaints) throws JobException {
        List<JobFabric.Zone> zones = said.across().zones();
        if (piece.lying().zone().isEmpty() || zones.isEmpty()) {
            return Optional.empty();
        }
        String name = piece.lying().zone().get();
        Optional<JobFabric.Zone> found =
                zones.stream().filter(zone -> zone.name().equals(name)).findFirst();
        if (found.isEmpty()) {
            throw complaints.at(
                    "pieces." + piece.name() + ".zone",
                    "%s has no zone %s; it has %s"
                            .formatted(
                                    said.name(),
                                    name,
                                    zones.stream().map(JobFabric.Zone::name).collect(Collectors.joining(", "))));
        }
        return found.map(zone -> FabricMaking.zone(fabric, zone));
    }

    private static List<Lying.MotifTie> motifs(
            JobPiece piece, JobFabric said, Fabric fabric, Orders.Complaints complaints) throws JobException {
        List<JobFabric.PrintMotif> there =
                said.repeat().map(JobFabric.PrintRepeat::motifs).orElse(List.of());
        List<Lying.MotifTie> ties = new ArrayList<>();
        if (!there.isEmpty()) {
            for (JobPiece.MotifMark mark : piece.lying().motifs()) {
                JobFabric.PrintMotif motif = there.stream()
                        .filter(one -> one.name().equals(mark.motif()))
                        .findFirst()
                        .orElseThrow(() -> complaints.at(
                                key(piece, mark),
                                "the print of %s has no motif %s; it has %s"
                                        .formatted(
                                                said.name(),
                                                mark.motif(),
                                                there.stream()
                                                        .map(JobFabric.PrintMotif::name)
                                                        .collect(Collectors.joining(", ")))));
                ties.add(new Lying.MotifTie(FabricMaking.motif(fabric, motif), mark.on(), mark.at()));
            }
        }
        return ties;
    }

    private static String key(JobPiece piece, JobPiece.MotifMark mark) {
        return "pieces." + piece.name() + (mark.on() ? ".keep-on" : ".keep-off");
    }

    /** A key that no fabric answers to would be passed over in silence. */
    static void refuseUntied(Job job, Orders.Complaints complaints) throws JobException {
        for (JobPiece piece : job.pieces()) {
            if (piece.lying().border().isPresent()
                    && job.fabrics().stream()
                            .allMatch(fabric -> fabric.across().border().isEmpty())) {
                throw complaints.at(
                        "pieces." + piece.name() + ".border",
                        "no fabric has a border; say under it border: {from-selvedge: 4 cm, selvedge: near}");
            }
            if (piece.lying().zone().isPresent()
                    && job.fabrics().stream()
                            .allMatch(fabric -> fabric.across().zones().isEmpty())) {
                throw complaints.at(
                        "pieces." + piece.name() + ".zone",
                        "no fabric has zones; say under it zones: {%s: {from-selvedge: 0 cm, to: 30 cm}}"
                                .formatted(piece.lying().zone().get()));
            }
            for (JobPiece.MotifMark mark : piece.lying().motifs()) {
                if (job.fabrics().stream()
                        .flatMap(fabric -> fabric.repeat().stream())
                        .allMatch(repeat -> repeat.motifs().isEmpty())) {
                    throw complaints.at(
                            key(piece, mark),
                            "no fabric has motifs; say under its repeat motifs: {%s: {lengthwise: 8 cm, crosswise: 5 cm, radius: 3 cm}}"
                                    .formatted(mark.motif()));
                }
            }
        }
    }
}
