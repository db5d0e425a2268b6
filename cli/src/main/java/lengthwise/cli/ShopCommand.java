package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import lengthwise.Estimate.InWidth;
import lengthwise.Estimate.Laid;
import lengthwise.Estimate.NotLaid;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.job.FabricOrder;
import lengthwise.job.Job;
import lengthwise.job.JobException;
import lengthwise.job.Orders;
import lengthwise.job.Shopping;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.plan.Purchase;
import lengthwise.report.ShoppingFiles;
import lengthwise.solver.Search;
import lengthwise.workshop.ShoppingList;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes what a job has to be bought for: one shops before one cuts, so the list needs no marker that is kept. */
@Command(
        name = "shop",
        mixinStandardHelpOptions = true,
        description = {
            "Writes a shopping list: fabrics, elastic, thread, bindings, labels, rounded up to what shops sell, and what it costs.",
            "The job says what garments are sewn with (sewing:); how much cloth they take is that of markers made for it."
        })
final class ShopCommand implements Callable<Integer> {
    private static final double QUICK_SECONDS_A_FABRIC = 2;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "JOB", description = "a job file (.yaml)")
    private Path input;

    @Option(names = "--quick", description = "two seconds for each fabric: the lengths may be longer than need be")
    private boolean quick;

    @Option(names = "--json", description = "write shopping.json to stdout in place of the table")
    private boolean json;

    @Option(
            names = "--out",
            paramLabel = "FOLDER",
            description = "write shopping.html, .csv, .json and .txt there (default: no files)")
    private @Nullable Path out;

    @Mixin
    private SearchOptions searching;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    ShopCommand() {}

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        refuseWrongUse();
        return JobAnswer.to(input, err, file -> shop(file.job(), Orders.of(file), err));
    }

    private void refuseWrongUse() {
        searching.refuseWrongUse();
        JobAnswer.refuseWrongFiles("A shopping list", input, out, searching);
        if (quick && (searching.seconds != null || searching.iterations != null)) {
            throw searching.wrong("--quick says how long; leave --seconds and --iterations out, or --quick.");
        }
    }

    private ExitCode shop(Job job, Orders orders, PrintWriter err)
            throws JobException, IOException, Estimating.RejectedException {
        orders.refuseShared("A shopping list by itself");
        // What is wrong with the list shows before the search.
        Shopping.of(job, orders.edges(), List.of(), Version.number());
        searching.warnings(orders.warnings()).forEach(warning -> err.println("warning: " + warning));
        try (Interrupt interrupt = Interrupt.listen()) {
            List<MarkerOrder> bought = orders.fabrics().stream()
                    .map(FabricOrder::order)
                    .filter(order -> order.fabric().onHand().isEmpty())
                    .toList();
            Double seconds = quick ? Double.valueOf(QUICK_SECONDS_A_FABRIC * bought.size()) : searching.seconds;
            Budget budget = Budget.forEach(bought, seconds, searching.iterations, InstantSource.system());
            List<Shopping.Cloth> cloths = new ArrayList<>();
            for (FabricOrder fabric : orders.fabrics()) {
                Fabric cloth = fabric.order().fabric();
                if (!bought.contains(fabric.order())) {
                    cloths.add(new Shopping.Cloth(cloth, Purchase.of(Length.ZERO, Length.ZERO, cloth)));
                    continue;
                }
                MarkerOrder order = fabric.order().withFillers(List.of());
                InWidth answer = Estimating.inWidth(order, make(order, budget, interrupt, err));
                if (answer instanceof NotLaid none) {
                    err.println("lengthwise: " + none.reason());
                    return ExitCode.NO_MARKER;
                }
                cloths.add(new Shopping.Cloth(cloth, ((Laid) answer).purchase()));
            }
            ShoppingList list = Shopping.of(job, orders.edges(), cloths, Version.number());
            PrintWriter stdout = spec.commandLine().getOut();
            stdout.print(json ? ShoppingFiles.json(list) : ShoppingFiles.text(list));
            stdout.flush();
            if (out != null) {
                ShoppingFiles.write(list, out);
                err.println("Written to " + out + ": see shopping.html.");
            }
            return interrupt.isRequested() ? ExitCode.INTERRUPTED : ExitCode.DONE;
        }
    }

    private MarkerAnswer make(MarkerOrder order, Budget budget, Interrupt interrupt, PrintWriter err) {
        ProgressLine line =
                new ProgressLine(err, ProgressLine.onTerminal(), order.fabric().name(), InstantSource.system());
        line.start();
        Search search = budget.next(order, searching.seed, searching.workers).cancelledBy(interrupt::isRequested);
        MarkerAnswer answer = MarkerMaking.make(
                order,
                search.watchedBy(event -> line.event(event, search)),
                (marker, progress) -> line.better(marker.length(), marker.efficiency()));
        line.done(answer instanceof MarkerAnswer.Made && !interrupt.isRequested());
        return answer;
    }
}
