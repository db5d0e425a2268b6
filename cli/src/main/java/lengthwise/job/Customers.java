package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lengthwise.job.OrderLine.Measure;
import lengthwise.model.Length;
import lengthwise.workshop.MadeToMeasure;
import lengthwise.workshop.SizeChoice;

/** Says for each customer of a job what is made for her, and why so. */
public final class Customers {
    private Customers() {}

    /**
     * Returns the order lines that name a customer, in their order.
     *
     * @throws JobException in one clause, without a place, if a strip comes to nothing; what a job file holds does not
     */
    public static List<MadeToMeasure> of(Job job) throws JobException {
        List<MadeToMeasure> made = new ArrayList<>();
        int next = 1;
        for (OrderLine line : job.order()) {
            int first = next;
            next += line.make();
            if (line.customer().isPresent()) {
                made.add(new MadeToMeasure(
                        line.customer().get(),
                        IntStream.range(first, next).boxed().toList(),
                        line.size(),
                        why(job, line),
                        cutTo(job, line)));
            }
        }
        return made;
    }

    private static String why(Job job, OrderLine line) {
        Map<String, Length> body =
                line.measures().stream().collect(Collectors.toMap(Measure::name, Measure::length, (a, b) -> a));
        Optional<SizeChoice> choice = job.sizes().map(table -> table.choose(body));
        if (choice.isEmpty() || choice.get().findings().isEmpty()) {
            return "";
        }
        String words = choice.get().words();
        return choice.get().size().equals(Optional.of(line.size())) ? words : "as ordered; " + words;
    }

    private static List<MadeToMeasure.CutTo> cutTo(Job job, OrderLine line) throws JobException {
        List<MadeToMeasure.CutTo> cut = new ArrayList<>();
        for (JobPiece piece : job.pieces()) {
            if (piece.strip().isPresent() && !piece.strip().get().length().isFixed()) {
                cut.add(new MadeToMeasure.CutTo(
                        piece.name(), piece.strip().get().length().lengthFor(line)));
            }
        }
        return cut;
    }
}
