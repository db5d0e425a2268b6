package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SharedOrder;

/** The fabrics of a job of which several are for one purpose: their pieces may be cut from any of them. */
final class SharedCloth {
    /** What should be said alike of cloth that the pieces of one garment are cut from, by its key. */
    private static final Map<String, Function<JobFabric, Object>> ALIKE = alike();

    private final Job job;
    private final Orders.Complaints complaints;
    private final List<List<JobFabric>> purposes;

    SharedCloth(Job job, Orders.Complaints complaints) {
        this.job = job;
        this.complaints = complaints;
        this.purposes = List.copyOf(job.fabrics().stream()
                .collect(Collectors.groupingBy(JobFabric::role, LinkedHashMap::new, Collectors.toList()))
                .values());
    }

    private static Map<String, Function<JobFabric, Object>> alike() {
        Map<String, Function<JobFabric, Object>> alike = new LinkedHashMap<>();
        alike.put("direction", JobFabric::direction);
        alike.put("pile", JobFabric::pile);
        alike.put("most-stretch", JobFabric::mostStretch);
        alike.put("right-side", JobFabric::rightSide);
        alike.put("repeat", fabric -> fabric.repeat().isPresent());
        return alike;
    }

    private List<List<JobFabric>> shared() {
        return purposes.stream().filter(fabrics -> fabrics.size() > 1).toList();
    }

    /** What a piece is tied to on one cloth has to be on the others too: there it would lie anywhere. */
    void refuseUntied() throws JobException {
        for (List<JobFabric> fabrics : shared()) {
            refuseUntied(
                    fabrics,
                    "match-point",
                    "repeat",
                    piece -> piece.matchPoint().isPresent(),
                    fabric -> fabric.repeat().isPresent());
            refuseUntied(
                    fabrics,
                    "border",
                    "border",
                    piece -> piece.lying().border().isPresent(),
                    fabric -> fabric.across().border().isPresent());
            refuseUntied(
                    fabrics,
                    "motif",
                    "motifs",
                    piece -> !piece.lying().motifs().isEmpty(),
                    fabric -> fabric.repeat()
                            .filter(repeat -> !repeat.motifs().isEmpty())
                            .isPresent());
            refuseUntied(
                    fabrics,
                    "zone",
                    "zones",
                    piece -> piece.lying().zone().isPresent(),
                    fabric -> !fabric.across().zones().isEmpty());
        }
    }

    private void refuseUntied(
            List<JobFabric> fabrics,
            String pieceKey,
            String fabricKey,
            Predicate<JobPiece> isTied,
            Predicate<JobFabric> hasIt)
            throws JobException {
        String role = fabrics.get(0).role();
        for (JobPiece piece : job.pieces()) {
            boolean cutFrom = piece.cut().isEmpty()
                    || piece.cut().stream().anyMatch(cut -> cut.role().equals(role));
            if (!isTied.test(piece) || !cutFrom || fabrics.stream().noneMatch(hasIt)) {
                continue;
            }
            for (JobFabric fabric : fabrics) {
                if (!hasIt.test(fabric)) {
                    throw complaints.at(
                            "fabrics." + fabric.name(),
                            "%s has a %s, and may be cut from this as from the other cloth for %s; say its %s too, or leave this cloth out"
                                    .formatted(piece.name(), pieceKey, role, fabricKey));
                }
            }
        }
    }

    /** Returns what is said otherwise of one piece of cloth than of another for the same purpose, a sentence each. */
    List<String> differences() {
        List<String> differences = new ArrayList<>();
        for (List<JobFabric> fabrics : shared()) {
            List<String> keys = ALIKE.entrySet().stream()
                    .filter(key ->
                            fabrics.stream().map(key.getValue()).distinct().count() > 1)
                    .map(Map.Entry::getKey)
                    .toList();
            if (!keys.isEmpty()) {
                differences.add(
                        "%s are all for %s, and not the same is said of them: %s. If it is the same cloth, say it of each."
                                .formatted(
                                        fabrics.stream().map(JobFabric::name).collect(Collectors.joining(", ")),
                                        fabrics.get(0).role(),
                                        String.join(", ", keys)));
            }
        }
        return differences;
    }

    /** Returns the orders that several fabrics have together. */
    List<SharedOrder> orders(List<FabricOrder> orders) {
        List<SharedOrder> shared = new ArrayList<>();
        for (List<JobFabric> fabrics : shared()) {
            List<MarkerOrder> cloths = orders.stream()
                    .map(FabricOrder::order)
                    .filter(order -> order.fabric().role().equals(fabrics.get(0).role()))
                    .toList();
            if (cloths.size() > 1) {
                shared.add(new SharedOrder(
                        cloths,
                        fabrics.stream().anyMatch(fabric -> fabric.across().keepTogether())));
            }
        }
        return shared;
    }
}
