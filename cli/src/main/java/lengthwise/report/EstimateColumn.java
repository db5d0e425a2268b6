package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import lengthwise.Estimate.Cloth;
import lengthwise.Estimate.Laid;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;

/**
 * One figure of each width of an estimate, in metric and in inches or yards; the second is empty where the figure has no
 * unit of length.
 */
record EstimateColumn(String heading, Function<Laid, String> metric, Function<Laid, String> imperial) {
    /** Returns the columns of a fabric; what is nothing, or not known, in every width has none. */
    static List<EstimateColumn> of(Cloth cloth) {
        List<Laid> laid = cloth.laid();
        List<EstimateColumn> columns = new ArrayList<>();
        columns.add(length("marker", each -> each.marker().length()));
        columns.add(new EstimateColumn(
                "at least",
                each -> LengthWords.metricDown(each.lowerBound()),
                each -> LengthWords.inchesDown(each.lowerBound())));
        columns.add(plain("used", each -> Figures.percent(each.efficiency())));
        columns.add(length(
                "+ more plies",
                each -> each.purchase().marker().minus(each.marker().length())));
        columns.add(length("+ ends", each -> each.purchase().ends()));
        columns.add(length("+ wash", each -> each.purchase().shrinkage()));
        columns.add(length("+ squaring", each -> each.purchase().squaring()));
        columns.add(length("+ flaws", each -> each.purchase().flaws()));
        columns.add(length("+ shop's step", each -> each.purchase().rounding()));
        columns.removeIf(column -> column.heading.startsWith("+")
                && laid.stream().allMatch(each -> column.metric.apply(each).equals(nothing())));
        columns.add(new EstimateColumn(
                "= buy",
                each -> LengthWords.metricUp(each.purchase().buy()),
                each -> LengthWords.yardsUp(each.purchase().buy())));
        if (laid.stream().anyMatch(each -> each.purchase().cost().isPresent())) {
            columns.add(plain("cost", EstimateColumn::cost));
        }
        if (laid.stream().anyMatch(each -> each.fabric().buying().weight().isPresent())) {
            columns.add(new EstimateColumn(
                    "weight",
                    each -> kilograms(each) + " kg",
                    each -> Figures.fixed(grams(each) / GRAMS_A_POUND, 2) + " lb"));
        }
        return columns;
    }

    /** 1 lb = 0.45359237 kg exactly (International Yard and Pound Agreement, 1959). */
    private static final double GRAMS_A_POUND = 453.592_37;

    static String cost(Laid laid) {
        return laid.purchase().cost().isPresent()
                ? Figures.money(laid.purchase().cost().getAsDouble())
                : "-";
    }

    private static String kilograms(Laid laid) {
        return Figures.fixed(grams(laid) / 1_000, 2);
    }

    private static double grams(Laid laid) {
        return laid.fabric().buying().grams(laid.purchase().buy(), laid.width()).orElse(0);
    }

    private static String nothing() {
        return LengthWords.metric(Length.ZERO);
    }

    private static EstimateColumn length(String heading, Function<Laid, Length> value) {
        return new EstimateColumn(
                heading,
                laid -> LengthWords.metric(value.apply(laid)),
                laid -> LengthWords.inches(value.apply(laid), 8));
    }

    private static EstimateColumn plain(String heading, Function<Laid, String> value) {
        return new EstimateColumn(heading, value, laid -> "");
    }

    /** Returns the figure in one unit system, for a table that has room for one. */
    String in(boolean inches, Laid laid) {
        String second = imperial.apply(laid);
        return inches && !second.isEmpty() ? second : metric.apply(laid);
    }
}
