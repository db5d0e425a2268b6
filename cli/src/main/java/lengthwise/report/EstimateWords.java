package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.Estimate;
import lengthwise.Estimate.Cloth;
import lengthwise.Estimate.Laid;
import lengthwise.Estimate.NotLaid;
import lengthwise.Estimate.OrderedSize;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.plan.GarmentShares;

/** What an estimate says in sentences, and what each garment costs. */
final class EstimateWords {
    private EstimateWords() {}

    /** Returns what is to be known of the widths of a fabric, a sentence each. */
    static List<String> about(Cloth cloth, Estimate estimate) {
        List<String> sentences = new ArrayList<>();
        cloth.widths().stream()
                .filter(NotLaid.class::isInstance)
                .map(NotLaid.class::cast)
                .forEach(none -> sentences.add("%s wide there is no marker. %s"
                        .formatted(width(none.width(), estimate.inches()), none.reason())));
        cloth.laid().stream()
                .mapToDouble(Laid::uncertainty)
                .max()
                .ifPresent(most -> sentences.add(uncertainty(most, estimate.quick())));
        cloth.laid()
                .forEach(laid -> laid.cutDownTo()
                        .ifPresent(to -> sentences.add("%s wide, %s"
                                .formatted(width(laid.width(), estimate.inches()), cutDown(to, estimate.inches())))));
        if (cloth.isLongerSomewhere()) {
            sentences.add(A_WIDER_ONE_IS_LONGER);
        }
        return sentences;
    }

    /** Where a wider cloth is longer though nobody could say that it need be. */
    static final String A_WIDER_ONE_IS_LONGER =
            "A wider one came out longer: what is at its far edge lies farther from its near edge, so it is another cloth, and"
                    + " what lies on the narrower one does not lie on it.";

    /** Returns the rest of a sentence on cloth that is laid as narrower cloth. */
    static String cutDown(Length to, boolean inches) {
        return "cut it down to %s before it is laid, along the selvedge without a border: as it is, with its folds, its print or"
                        .formatted(width(to, inches))
                + " its border elsewhere, it would take more.";
    }

    private static String uncertainty(double most, boolean quick) {
        return most == 0
                ? "No marker can be shorter than these."
                : "%s a longer search may find shorter markers, by at most %s; none is shorter than \"at least\"."
                        .formatted(
                                quick ? "A quick estimate:" : "Each is a marker that was found and checked;",
                                Figures.percent(most));
    }

    /** Returns a width as it is asked for in a shop: in the maker's own units, and in the other ones. */
    static String width(Length width, boolean inches) {
        String metric = centimetres(width);
        String imperial = LengthWords.inches(width, 8);
        return inches ? imperial + " (" + metric + ")" : metric + " (" + imperial + ")";
    }

    static String centimetres(Length width) {
        return LengthWords.centimetres(width).replaceFirst("\\.0$", "") + " cm";
    }

    static String garmentsHeading(Estimate estimate) {
        return estimate.fabrics().stream().allMatch(cloth -> cloth.cheapest().isPresent())
                ? "Each garment, on the cheapest widths"
                : "Each garment, on the cheapest width, or where no price is known, on that of the least length";
    }

    /**
     * Returns a heading and a row for each line of the order: what one of its garments takes of each fabric and costs. Ends,
     * waste and the shop's step are shared by the area of the pieces.
     */
    static List<List<String>> garments(Estimate estimate) {
        List<Laid> chosen = chosen(estimate);
        boolean priced = chosen.stream().anyMatch(laid -> laid.purchase().cost().isPresent());
        List<GarmentShares> shares = chosen.stream()
                .map(laid -> GarmentShares.of(laid.marker().order()))
                .toList();
        List<List<String>> rows = new ArrayList<>();
        List<String> headings = new ArrayList<>(List.of("size", "make"));
        chosen.forEach(laid -> headings.add(laid.fabric().name() + ", " + width(laid.width(), estimate.inches())));
        if (priced) {
            headings.add("cost each");
            headings.add("cost of all");
        }
        rows.add(headings);
        double whole = 0;
        for (OrderedSize line : estimate.lines()) {
            List<String> row = new ArrayList<>(List.of(line.words(), Integer.toString(line.make())));
            double cost = 0;
            for (int i = 0; i < chosen.size(); i++) {
                double share = shares.get(i).of(line.garment());
                row.add(LengthWords.both(chosen.get(i).purchase().buy().scaled(share)));
                cost += share * chosen.get(i).purchase().cost().orElse(0);
            }
            whole += cost * line.make();
            if (priced) {
                row.add(Figures.money(cost));
                row.add(Figures.money(cost * line.make()));
            }
            rows.add(row);
        }
        List<String> sum = new ArrayList<>(List.of(
                "all",
                Integer.toString(
                        estimate.lines().stream().mapToInt(OrderedSize::make).sum())));
        chosen.forEach(laid -> sum.add(LengthWords.toBuy(laid.purchase().buy())));
        if (priced) {
            sum.add("");
            sum.add(Figures.money(whole));
        }
        rows.add(sum);
        return rows;
    }

    /** Returns the width that counts of each fabric that can be laid. */
    static List<Laid> chosen(Estimate estimate) {
        return estimate.fabrics().stream()
                .map(Cloth::chosen)
                .flatMap(Optional::stream)
                .toList();
    }
}
