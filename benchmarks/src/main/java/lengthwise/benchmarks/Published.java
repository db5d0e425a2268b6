package lengthwise.benchmarks;

import java.util.Map;
import java.util.Optional;

/**
 * Published densities in per cent.
 *
 * <p>Source: J. Gardeyn, G. Vanden Berghe, T. Wauters, arXiv 2509.13329v1 (2025), Tables 2 and 3. The average is over 100
 * runs of 20 minutes with three threads on an AMD Ryzen 9 7950X. For shapes0, shapes1, shapes2, fu, jakobs1 and jakobs2 the
 * strip was widened there by 0.01 %, since its collision test never accepts contact.
 *
 * @param entry average of S. C. H. Leung, Y. Lin, D. Zhang 2012, as quoted there
 * @param before best known before 2025, as quoted there
 * @param average of the 2025 paper
 * @param best best known: best of the 100 runs, or older
 */
record Published(double entry, double before, double average, double best) {
    private static final Map<String, Published> TABLE = Map.ofEntries(
            Map.entry("albano", new Published(87.38, 89.58, 89.47, 89.82)),
            // shapes2 of the papers
            Map.entry("blaz", new Published(82.55, 84.84, 84.68, 86.23)),
            Map.entry("dagli", new Published(86.27, 89.51, 89.26, 90.17)),
            // jigsaws: 100 % by construction; no averages known
            Map.entry("dighe1", new Published(Double.NaN, 100, Double.NaN, 100)),
            Map.entry("dighe2", new Published(Double.NaN, 100, Double.NaN, 100)),
            Map.entry("fu", new Published(90.00, 92.41, 92.24, 92.41)),
            Map.entry("jakobs1", new Published(88.35, 89.09, 89.09, 89.26)),
            Map.entry("jakobs2", new Published(80.97, 87.73, 84.77, 87.73)),
            Map.entry("mao", new Published(82.57, 86.05, 86.14, 86.87)),
            Map.entry("marques", new Published(88.32, 91.02, 90.93, 92.02)),
            Map.entry("shapes0", new Published(66.85, 68.79, 68.60, 69.98)),
            Map.entry("shapes1", new Published(74.24, 76.73, 75.69, 76.73)),
            Map.entry("shirts", new Published(87.20, 88.96, 89.66, 90.92)),
            Map.entry("swim", new Published(74.10, 75.94, 78.26, 79.83)),
            Map.entry("trousers", new Published(88.29, 91.06, 91.73, 92.62)));

    private static final Published CUT_FROM_A_RECTANGLE = new Published(Double.NaN, 100, Double.NaN, 100);

    static Optional<Published> of(String instance) {
        return instance.startsWith("jigsaw:")
                ? Optional.of(CUT_FROM_A_RECTANGLE)
                : Optional.ofNullable(TABLE.get(instance));
    }
}
