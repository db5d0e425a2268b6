package lengthwise.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import lengthwise.Estimate.InWidth;
import lengthwise.Estimate.Laid;
import lengthwise.Estimate.NotLaid;
import lengthwise.MarkerMaking;
import lengthwise.WiderCloth;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.job.FabricOrder;
import lengthwise.job.JobException;
import lengthwise.job.JobReader;
import lengthwise.job.Orders;
import lengthwise.model.Fabric;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;
import lengthwise.report.Chart.Cell;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;

/** Works out one cell of a chart, with one worker. */
final class ChartWork {
    /** Vertices nearer than this are not seen apart in a small picture. */
    private static final double SEEN_APART = 4_000;

    private ChartWork() {}

    /**
     * Returns what the cell holds.
     *
     * @throws IOException if the drawings cannot be laid down for reading
     * @throws Estimating.RejectedException if the marker does not pass the check
     */
    static Cell of(ChartTask task, BooleanSupplier cancelled) throws IOException, Estimating.RejectedException {
        Path folder = Files.createTempDirectory("lengthwise-cell");
        try {
            MarkerOrder order = order(task, folder);
            Search search = Search.of(stop(task), task.seed(), 1).cancelledBy(cancelled);
            InWidth found = Estimating.inWidth(order, MarkerMaking.make(order, search, (marker, progress) -> {}));
            return found instanceof Laid laid ? cell(laid) : Cell.none(((NotLaid) found).reason());
        } catch (JobException unusable) {
            return Cell.none(String.valueOf(unusable.getMessage()));
        } finally {
            delete(folder);
        }
    }

    private static MarkerOrder order(ChartTask task, Path folder) throws IOException, JobException {
        for (Map.Entry<String, String> drawing : task.drawings().entrySet()) {
            Path file = folder.resolve(drawing.getKey()).normalize();
            Path parent = file.getParent();
            if (parent == null || !file.startsWith(folder)) {
                throw new JobException(drawing.getKey() + " lies outside the folder of its job.");
            }
            Files.createDirectories(parent);
            Files.write(file, Base64.getDecoder().decode(drawing.getValue()));
        }
        Orders orders = Orders.of(JobReader.read(folder.resolve("job.yaml"), task.job()));
        MarkerOrder whole = orders.fabrics().stream()
                .map(FabricOrder::order)
                .filter(order -> order.fabric().name().equals(task.fabric()))
                .findFirst()
                .orElseThrow(() -> new JobException("Nothing is cut from " + task.fabric() + "."));
        return whole.forGarments(new HashSet<>(task.garments())).withFillers(List.of());
    }

    private static StopRule stop(ChartTask task) {
        StopRule time = StopRule.elapsed(Duration.ofMillis(Math.max(1, Math.round(task.seconds() * 1000))));
        if (task.iterations() == 0) {
            return time;
        }
        StopRule rounds = StopRule.iterations(task.iterations());
        return task.seconds() == 0 ? rounds : rounds.or(time);
    }

    private static Cell cell(Laid laid) {
        Marker marker = laid.marker();
        Fabric fabric = laid.fabric();
        Point corner = new Point(
                fabric.spread().startAllowance().micrometres(),
                fabric.edgesOnTable().near().micrometres());
        return new Cell(
                marker.length(),
                laid.lowerBound(),
                laid.purchase().needed(),
                marker.efficiency(),
                fabric.cuttableWidth(),
                fabric.spread().onTable(marker.length()),
                fabric.laidWidth(),
                WiderCloth.canTake(marker),
                Optional.empty(),
                marker.placements().stream()
                        .map(Placement::outline)
                        .map(outline -> path(outline, corner))
                        .toList(),
                "");
    }

    private static String path(Outline outline, Point corner) {
        StringBuilder data = new StringBuilder();
        Stream.concat(Stream.of(outline.shell()), outline.holes().stream()).forEach(ring -> append(data, ring, corner));
        return data.toString();
    }

    private static void append(StringBuilder data, Ring ring, Point corner) {
        Point last = ring.vertex(0);
        data.append('M').append(millimetres(last, corner));
        for (int i = 1; i < ring.size(); i++) {
            if (ring.vertex(i).distance(last) >= SEEN_APART) {
                last = ring.vertex(i);
                data.append('L').append(millimetres(last, corner));
            }
        }
        data.append('Z');
    }

    private static String millimetres(Point point, Point corner) {
        return Math.floorDiv(point.x() + corner.x() + 500, 1000) + " "
                + Math.floorDiv(point.y() + corner.y() + 500, 1000);
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }
}
