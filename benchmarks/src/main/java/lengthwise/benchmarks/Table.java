package lengthwise.benchmarks;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Tables for reading: our densities beside published ones, or two files of runs side by side. */
final class Table {
    /** Medians that differ by less (points of density) are called the same. */
    private static final double SAME = 0.05;

    private Table() {}

    /** Returns the median and spread of each instance beside the published figures. */
    static String beside(List<Row> rows) {
        StringBuilder table = new StringBuilder();
        table.append(line(
                "%-16s %5s %6s %7s %7s %7s %9s | %7s %7s %7s %7s",
                "instance",
                "runs",
                "legal",
                "lowest",
                "median",
                "highest",
                "first s",
                "2012",
                "<2025",
                "2025",
                "best"));
        byInstance(rows).forEach((instance, runs) -> {
            List<Double> densities = runs.stream().map(Row::density).sorted().toList();
            Published published =
                    Published.of(instance).orElse(new Published(Double.NaN, Double.NaN, Double.NaN, Double.NaN));
            table.append(line(
                    "%-16s %5d %6d %7.2f %7.2f %7.2f %9.3f | %7s %7s %7s %7s",
                    instance,
                    runs.size(),
                    runs.stream().filter(Row::legal).count(),
                    densities.get(0),
                    median(densities),
                    densities.get(densities.size() - 1),
                    median(runs.stream().map(Row::firstLegalSeconds).sorted().toList()),
                    cell(published.entry()),
                    cell(published.before()),
                    cell(published.average()),
                    cell(published.best())));
        });
        table.append("""
                Density in %. Published: 2012 = average of Leung et al.; <2025 = best known before 2025; 2025 = average of 100
                runs of 20 minutes, Gardeyn, Vanden Berghe, Wauters, arXiv 2509.13329v1; best = best known. Jigsaws: by
                construction.
                """);
        return table.toString();
    }

    /** Returns for each instance in both files whether the second is better, the same or worse, by the median. */
    static String compared(List<Row> before, List<Row> after) {
        StringBuilder table = new StringBuilder();
        table.append(
                line("%-16s %5s %5s %8s %8s %8s  %s", "instance", "A", "B", "median A", "median B", "B - A", "B is"));
        Map<String, List<Row>> later = byInstance(after);
        List<String> verdicts = new ArrayList<>();
        byInstance(before).forEach((instance, a) -> {
            List<Row> b = later.getOrDefault(instance, List.of());
            if (!b.isEmpty()) {
                double medianA = median(a.stream().map(Row::density).sorted().toList());
                double medianB = median(b.stream().map(Row::density).sorted().toList());
                String verdict = verdict(medianB - medianA);
                verdicts.add(verdict);
                table.append(line(
                        "%-16s %5d %5d %8.2f %8.2f %+8.2f  %s%s",
                        instance,
                        a.size(),
                        b.size(),
                        medianA,
                        medianB,
                        medianB - medianA,
                        verdict,
                        b.stream().allMatch(Row::legal) ? "" : ", NOT ALL LEGAL"));
            }
        });
        Map<String, Long> counts = verdicts.stream().collect(Collectors.groupingBy(v -> v, Collectors.counting()));
        table.append(line(
                "%d instances: %d better, %d the same (less than %.2f points), %d worse",
                verdicts.size(),
                counts.getOrDefault("better", 0L),
                counts.getOrDefault("same", 0L),
                SAME,
                counts.getOrDefault("worse", 0L)));
        return table.toString();
    }

    private static String verdict(double difference) {
        return Math.abs(difference) < SAME ? "same" : difference > 0 ? "better" : "worse";
    }

    private static Map<String, List<Row>> byInstance(List<Row> rows) {
        return rows.stream().collect(Collectors.groupingBy(Row::instance, LinkedHashMap::new, Collectors.toList()));
    }

    /** Returns the middle of sorted values, or the mean of the two in the middle. */
    static double median(List<Double> sorted) {
        int n = sorted.size();
        return (sorted.get((n - 1) / 2) + sorted.get(n / 2)) / 2;
    }

    private static String cell(double value) {
        return Double.isNaN(value) ? "-" : String.format(Locale.ROOT, "%.2f", value);
    }

    private static String line(String format, Object... values) {
        return String.format(Locale.ROOT, format, values) + "\n";
    }
}
