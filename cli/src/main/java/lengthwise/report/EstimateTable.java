package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.Estimate;
import lengthwise.Estimate.Cloth;
import lengthwise.Estimate.InWidth;
import lengthwise.Estimate.Laid;

/** An estimate as text for the terminal. */
public final class EstimateTable {
    private EstimateTable() {}

    /** Returns a table for each fabric, and one of what each garment costs; each line is ended by a line feed. */
    public static String of(Estimate estimate) {
        StringBuilder text = new StringBuilder();
        for (Cloth cloth : estimate.fabrics()) {
            text.append(cloth.name()).append(", for ").append(cloth.role()).append("\n");
            text.append(Columns.ofFigures(rows(cloth, estimate.inches())));
            EstimateWords.about(cloth, estimate)
                    .forEach(sentence -> text.append(sentence).append('\n'));
            text.append('\n');
        }
        text.append(EstimateWords.garmentsHeading(estimate)).append('\n');
        text.append(Columns.ofFigures(EstimateWords.garments(estimate)));
        return text.toString();
    }

    private static List<List<String>> rows(Cloth cloth, boolean inches) {
        List<EstimateColumn> columns = EstimateColumn.of(cloth);
        List<String> headings = new ArrayList<>(List.of("width"));
        columns.forEach(column -> headings.add(column.heading()));
        headings.add("");
        List<List<String>> rows = new ArrayList<>(List.of(headings));
        Optional<Laid> cheapest = cloth.cheapest();
        for (InWidth width : cloth.widths()) {
            Optional<Laid> laid =
                    Optional.of(width).filter(Laid.class::isInstance).map(Laid.class::cast);
            List<String> row = new ArrayList<>(List.of(EstimateWords.width(width.width(), inches)));
            columns.forEach(
                    column -> row.add(laid.map(each -> column.in(inches, each)).orElse("")));
            row.add(laid.isEmpty() ? "no marker" : cheapest.equals(laid) ? "cheapest" : "");
            rows.add(row);
        }
        return rows;
    }
}
