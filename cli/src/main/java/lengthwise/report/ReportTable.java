package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;

/** The short table of a run, for the terminal. */
public final class ReportTable {
    private static final List<String> HEADINGS =
            List.of("fabric", "marker", "", "width", "efficiency", "at least", "buy", "", "cost");
    private static final Length MILLIMETRE = Length.ofMillimetres(1);

    private ReportTable() {}

    /**
     * Returns a heading line and a line for each fabric, and a sentence a line where an order was shared out over pieces of
     * cloth, each ended by a line feed.
     */
    public static String of(Run run) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(HEADINGS);
        for (FabricRun fabricRun : run.fabrics()) {
            Fabric fabric = fabricRun.marker().order().fabric();
            Length length = fabricRun.marker().length();
            Length buy = run.toBuy(fabricRun);
            boolean there = fabric.onHand().isPresent();
            rows.add(List.of(
                    fabric.name(),
                    metres(length),
                    yards(length),
                    LengthWords.centimetres(fabric.cuttableWidth()) + " cm",
                    Figures.percent(fabricRun.marker().efficiency()),
                    metres(fabricRun.lowerBound().downTo(MILLIMETRE)),
                    there ? "on hand" : metres(buy.upTo(MILLIMETRE)),
                    there ? "" : LengthWords.yardsUp(buy),
                    run.cost(fabricRun).isPresent()
                            ? Figures.money(run.cost(fabricRun).getAsDouble())
                            : "-"));
        }
        return Columns.ofFigures(rows)
                + run.shared().stream()
                        .flatMap(shared -> SharedWords.of(shared, run).stream())
                        .map(sentence -> sentence + "\n")
                        .collect(Collectors.joining());
    }

    private static String metres(Length length) {
        return Figures.fixed(length.micrometres() / 1e6, 3) + " m";
    }

    private static String yards(Length length) {
        return Figures.fixed(length.micrometres() / 914_400.0, 2) + " yd";
    }
}
