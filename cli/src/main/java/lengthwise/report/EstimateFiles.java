package lengthwise.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.Estimate;
import lengthwise.Estimate.Cloth;
import lengthwise.Estimate.InWidth;
import lengthwise.Estimate.Laid;
import lengthwise.Estimate.NotLaid;
import lengthwise.Estimate.OrderedSize;
import lengthwise.model.Length;
import lengthwise.plan.GarmentShares;
import lengthwise.plan.Purchase;

/** The files of an estimate: a page, a table for a spreadsheet, and the same for machines. */
public final class EstimateFiles {
    /** The version of the layout of {@code estimate.json}; it changes when a reader of the old one would go wrong. */
    private static final int VERSION = 1;

    private static final List<String> CSV_HEADINGS = List.of(
            "fabric",
            "for",
            "width_mm",
            "cuttable_width_mm",
            "marker_mm",
            "lower_bound_mm",
            "efficiency",
            "laid_mm",
            "ends_mm",
            "shrinkage_mm",
            "squaring_mm",
            "flaws_mm",
            "rounding_mm",
            "buy_mm",
            "cost",
            "weight_g",
            "cheapest",
            "note");

    private EstimateFiles() {}

    /** Writes them; every text is complete before the first file is replaced. */
    public static void write(Estimate estimate, Path folder) throws IOException {
        String page = EstimateHtml.of(estimate);
        String csv = csv(estimate);
        String json = json(estimate);
        WholeFile.write(folder.resolve("estimate.html"), page);
        WholeFile.write(folder.resolve("estimate.csv"), csv);
        WholeFile.write(folder.resolve("estimate.json"), json);
    }

    /** Returns a line for each width of each fabric. */
    static String csv(Estimate estimate) {
        List<List<String>> rows = new ArrayList<>(List.of(CSV_HEADINGS));
        for (Cloth cloth : estimate.fabrics()) {
            Optional<Laid> cheapest = cloth.cheapest();
            for (InWidth width : cloth.widths()) {
                List<String> row = new ArrayList<>(List.of(cloth.name(), cloth.role(), millimetres(width.width())));
                if (width instanceof Laid laid) {
                    Purchase purchase = laid.purchase();
                    row.add(millimetres(laid.fabric().cuttableWidth()));
                    row.add(millimetres(laid.marker().length()));
                    row.add(millimetres(laid.lowerBound()));
                    row.add(Figures.fixed(laid.efficiency(), 6));
                    for (Length part : List.of(
                            purchase.marker(),
                            purchase.ends(),
                            purchase.shrinkage(),
                            purchase.squaring(),
                            purchase.flaws(),
                            purchase.rounding(),
                            purchase.buy())) {
                        row.add(millimetres(part));
                    }
                    row.add(number(purchase.cost(), 2));
                    row.add(number(grams(laid), 1));
                    row.add(cheapest.filter(laid::equals).isPresent() ? "yes" : "");
                    row.add(laid.cutDownTo()
                            .map(to -> "cut down to %s mm before it is laid".formatted(millimetres(to)))
                            .orElse(""));
                } else {
                    while (row.size() < CSV_HEADINGS.size() - 1) {
                        row.add("");
                    }
                    row.add(((NotLaid) width).reason());
                }
                rows.add(row);
            }
        }
        return Csv.of(rows);
    }

    private static String millimetres(Length length) {
        return Figures.fixed(length.millimetres(), 3);
    }

    private static String number(OptionalDouble value, int digits) {
        return value.isPresent() ? Figures.fixed(value.getAsDouble(), digits) : "";
    }

    private static OptionalDouble grams(Laid laid) {
        return laid.fabric().buying().grams(laid.purchase().buy(), laid.width());
    }

    /** Returns the text of {@code estimate.json}. */
    public static String json(Estimate estimate) {
        return JsonText.of(json -> {
            json.count("version", VERSION);
            json.text("lengthwise", estimate.version());
            json.text("job", estimate.job());
            json.yes("quick", estimate.quick());
            json.yes("reproducible", estimate.reproducible());
            json.objects("fabrics", estimate.fabrics(), cloth -> {
                json.text("name", cloth.name());
                json.text("role", cloth.role());
                Optional<Laid> cheapest = cloth.cheapest();
                json.objects("widths", cloth.widths(), width -> {
                    json.length("width_mm", width.width());
                    if (width instanceof Laid laid) {
                        laid(json, laid, cheapest.filter(laid::equals).isPresent());
                    } else {
                        json.text("no_marker", ((NotLaid) width).reason());
                    }
                });
            });
            garments(json, estimate);
            json.texts("warnings", estimate.warnings());
        });
    }

    private static void laid(JsonText json, Laid laid, boolean cheapest) throws IOException {
        Purchase purchase = laid.purchase();
        json.length("cuttable_width_mm", laid.fabric().cuttableWidth());
        if (laid.cutDownTo().isPresent()) {
            json.length("cut_down_to_mm", laid.cutDownTo().get());
        }
        json.length("length_mm", laid.marker().length());
        json.length("lower_bound_mm", laid.lowerBound());
        json.number("may_be_shorter_by", laid.uncertainty(), 6);
        json.number("efficiency", laid.efficiency(), 6);
        json.length("marker_mm", purchase.marker());
        json.length("ends_mm", purchase.ends());
        json.length("shrinkage_mm", purchase.shrinkage());
        json.length("squaring_mm", purchase.squaring());
        json.length("flaws_mm", purchase.flaws());
        json.length("rounding_mm", purchase.rounding());
        json.length("buy_mm", purchase.buy());
        json.number("cost", purchase.cost(), 2);
        json.number("weight_g", grams(laid), 1);
        json.yes("cheapest", cheapest);
    }

    private static void garments(JsonText json, Estimate estimate) throws IOException {
        List<Laid> chosen = EstimateWords.chosen(estimate);
        List<GarmentShares> shares = chosen.stream()
                .map(laid -> GarmentShares.of(laid.marker().order()))
                .toList();
        json.objects("garments", estimate.lines(), line -> {
            json.text("size", line.words());
            json.count("make", line.make());
            json.number("cost_each", cost(line, chosen, shares), 2);
            json.objects("takes", chosen, laid -> {
                double share = shares.get(chosen.indexOf(laid)).of(line.garment());
                json.text("fabric", laid.fabric().name());
                json.length("width_mm", laid.width());
                json.length("length_mm", laid.purchase().buy().scaled(share));
            });
        });
    }

    private static OptionalDouble cost(OrderedSize line, List<Laid> chosen, List<GarmentShares> shares) {
        double cost = 0;
        for (int i = 0; i < chosen.size(); i++) {
            OptionalDouble whole = chosen.get(i).purchase().cost();
            if (whole.isEmpty()) {
                return whole;
            }
            cost += shares.get(i).of(line.garment()) * whole.getAsDouble();
        }
        return OptionalDouble.of(cost);
    }
}
