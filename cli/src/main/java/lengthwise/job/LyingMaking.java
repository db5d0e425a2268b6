package lengthwise.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lengthwise.model.Fabric;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;

/** What the job says of how pieces lie, tied to a selvedge, a border or a zone or a little off their grain, made out for one fabric. */
final class LyingMaking {
    private LyingMaking() {}

    /**
     * Returns an order with how those of its pieces lie that are tied to the edges of its fabric; a fabric without border or
     * zones ties none to them.
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
                    piece.lying().tolerance());
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
        }
    }
}
