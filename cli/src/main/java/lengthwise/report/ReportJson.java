package lengthwise.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.FabricRun;
import lengthwise.Filling;
import lengthwise.Run;
import lengthwise.SharedRun;
import lengthwise.geometry.Box;
import lengthwise.model.CutOut;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.Placement;
import lengthwise.model.SpreadWords;
import lengthwise.plan.Leftovers;
import lengthwise.plan.Purchase;
import lengthwise.plan.Waste;
import lengthwise.workshop.MadeToMeasure;
import lengthwise.workshop.StashDraw;

/**
 * The report for machines, as {@code docs/report-json.md} describes it. Lengths are exact to the micrometre; nothing in
 * it depends on the clock.
 */
final class ReportJson {
    /** The version of the layout; it changes when a reader of the old one would go wrong. */
    static final int VERSION = 1;

    private final StringWriter text = new StringWriter();
    private final JsonGenerator json;

    private ReportJson() throws IOException {
        json = new JsonFactory().createGenerator(text);
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        json.setPrettyPrinter(
                new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter));
    }

    /**
     * Returns the text of the file.
     *
     * @param names of the fabrics' files, without their endings
     */
    static String of(Run run, List<String> names) {
        try {
            ReportJson report = new ReportJson();
            report.write(run, names);
            report.json.close();
            return report.text + "\n";
        } catch (IOException e) {
            // A string writer does not fail.
            throw new UncheckedIOException(e);
        }
    }

    private void write(Run run, List<String> names) throws IOException {
        json.writeStartObject();
        json.writeNumberField("version", VERSION);
        json.writeStringField("lengthwise", run.version());
        json.writeStringField("job", run.job());
        json.writeNumberField("seed", run.seed());
        json.writeNumberField("workers", run.workers());
        json.writeBooleanField("reproducible", run.reproducible());
        json.writeArrayFieldStart("fabrics");
        for (int i = 0; i < names.size(); i++) {
            fabric(run, run.fabrics().get(i), names.get(i));
        }
        json.writeEndArray();
        cost(ReportHtml.cost(run));
        shared(run);
        strings("warnings", run.warnings());
        customers(run);
        if (run.shopping().isPresent()) {
            json.writeObjectFieldStart("shopping");
            ShoppingFiles.members(new JsonText(json), run.shopping().get());
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private void shared(Run run) throws IOException {
        if (run.shared().isEmpty()) {
            return;
        }
        json.writeArrayFieldStart("shared");
        for (SharedRun shared : run.shared()) {
            json.writeStartObject();
            json.writeStringField("role", shared.purpose());
            json.writeBooleanField("garments_kept_together", shared.keepsGarments());
            json.writeArrayFieldStart("cloths");
            for (Fabric cloth : shared.cloths()) {
                cloth(cloth, SharedRun.of(cloth, run));
            }
            json.writeEndArray();
            length("buy_mm", shared.purchase(run).map(Purchase::buy).orElse(Length.ZERO));
            if (shared.alone().isPresent()) {
                length("buy_without_cloth_on_hand_mm", shared.alone().get().buy());
                length("saved_mm", shared.saved(run).orElseThrow());
            }
            Optional<Double> saved = SharedWords.savedCost(shared, run);
            if (saved.isPresent()) {
                number("saved_cost", saved.get(), 2);
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void cloth(Fabric cloth, Optional<FabricRun> run) throws IOException {
        json.writeStartObject();
        json.writeStringField("name", cloth.name());
        if (cloth.onHand().isPresent()) {
            length("on_hand_mm", cloth.onHand().get().length());
        }
        json.writeNumberField(
                "contours", run.map(cut -> cut.marker().placements().size()).orElse(0));
        if (run.isPresent()) {
            length("laid_length_mm", cloth.spread().onTable(run.get().marker().length()));
            number("share_in_pieces", SharedWords.share(run.get()), 6);
        }
        json.writeEndObject();
    }

    private void customers(Run run) throws IOException {
        json.writeArrayFieldStart("customers");
        for (MadeToMeasure made : run.customers()) {
            json.writeStartObject();
            json.writeStringField("customer", made.customer());
            json.writeArrayFieldStart("garments");
            for (int garment : made.garments()) {
                json.writeNumber(garment);
            }
            json.writeEndArray();
            json.writeStringField("size", made.size().name());
            json.writeStringField("why", made.why());
            json.writeArrayFieldStart("cut_to");
            for (MadeToMeasure.CutTo cut : made.cut()) {
                json.writeStartObject();
                json.writeStringField("piece", cut.piece());
                number("length_mm", cut.length().millimetres(), 3);
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void fabric(Run whole, FabricRun run, String name) throws IOException {
        Marker marker = run.marker();
        Fabric fabric = marker.order().fabric();
        Purchase purchase = run.purchase();
        Waste waste = Waste.of(marker, purchase);
        json.writeStartObject();
        json.writeStringField("name", fabric.name());
        json.writeStringField("role", fabric.role());
        json.writeStringField("marker", name + ".svg");
        json.writeStringField("placement_sheet", name + "-placement.html");
        json.writeStringField("spread", SpreadWords.key(fabric.spread()));
        json.writeNumberField("layers", fabric.spread().layers());
        json.writeStringField("direction", word(fabric.direction().name()));
        json.writeStringField(
                "pile", fabric.pile().map(pile -> word(pile.name())).orElse(""));
        length("length_mm", marker.length());
        length("cuttable_width_mm", fabric.cuttableWidth());
        length("fabric_width_mm", fabric.width());
        length("laid_width_mm", fabric.laidWidth());
        number("efficiency", marker.efficiency(), 6);
        number("utilisation", waste.utilisation(), 6);
        length("lower_bound_mm", run.lowerBound());
        length("buy_mm", whole.toBuy(run));
        json.writeObjectFieldStart("purchase");
        length("marker_mm", purchase.marker());
        Length toWholeRepeat = marker.length().minus(marker.piecesEnd());
        if (toWholeRepeat.micrometres() > 0) {
            length(
                    "of_it_to_a_whole_repeat_mm",
                    toWholeRepeat.times(fabric.spread().lengths()));
        }
        length("ends_mm", purchase.ends());
        length("shrinkage_mm", purchase.shrinkage());
        length("squaring_mm", purchase.squaring());
        length("flaws_mm", purchase.flaws());
        length("rounding_mm", purchase.rounding());
        length("buy_mm", purchase.buy());
        length("sold_by_mm", fabric.soldBy());
        json.writeEndObject();
        length("end_allowance_mm", fabric.spread().endAllowance());
        length("laid_length_mm", fabric.spread().onTable(marker.length()));
        json.writeObjectFieldStart("shrinkage");
        number("lengthwise", fabric.shrinkage().lengthwise(), 6);
        number("crosswise", fabric.shrinkage().crosswise(), 6);
        json.writeEndObject();
        number("flaws_share", fabric.buying().flaws(), 6);
        if (fabric.price().isPresent()) {
            json.writeObjectFieldStart("price");
            number("amount", fabric.price().get().amount(), 2);
            length("per_mm", fabric.price().get().per());
            json.writeEndObject();
        }
        cost(whole.cost(run));
        if (fabric.onHand().isPresent()) {
            length("on_hand_mm", fabric.onHand().get().length());
            length("left_mm", marker.left().orElseThrow());
        }
        if (whole.drawn(run).isPresent()) {
            drawn(whole.drawn(run).get());
        }
        json.writeObjectFieldStart("waste");
        number("pieces_mm2", waste.pieces(), 1);
        number("between_pieces_mm2", waste.betweenPieces(), 1);
        number("edges_mm2", waste.edges(), 1);
        number("ends_mm2", waste.ends(), 1);
        number("allowances_mm2", waste.allowances(), 1);
        number("left_over_mm2", waste.leftOver(), 1);
        number("bought_mm2", waste.bought(), 1);
        json.writeEndObject();
        pieces(marker);
        cutList(marker);
        blocks(marker);
        strips(marker);
        strings("steps", CuttingSteps.of(marker));
        leftovers(marker, purchase);
        json.writeArrayFieldStart("assumptions");
        for (FabricRun.Assumption assumption : run.assumptions()) {
            json.writeStartObject();
            json.writeStringField("text", assumption.text());
            json.writeStringField("other_choice", assumption.otherChoice());
            json.writeEndObject();
        }
        json.writeEndArray();
        strings("costs", run.costs());
        fillers(run.fillers());
        strings("surplus", run.surplus());
        json.writeStringField("stop_reason", word(run.reason().name()));
        json.writeNumberField("iterations", run.progress().iteration());
        json.writeEndObject();
    }

    private void drawn(StashDraw drawn) throws IOException {
        json.writeObjectFieldStart("stash");
        json.writeStringField("cloth", drawn.cloth());
        length("length_mm", drawn.length());
        length("spent_mm", drawn.spent());
        if (drawn.value().isPresent()) {
            number("value", drawn.value().getAsDouble(), 2);
        } else {
            json.writeNullField("value");
        }
        json.writeArrayFieldStart("back");
        for (StashDraw.Back back : drawn.back()) {
            json.writeStartObject();
            length("length_mm", back.length());
            length("width_mm", back.width());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void pieces(Marker marker) throws IOException {
        json.writeArrayFieldStart("pieces");
        List<Placement> placements = marker.inLayingOrder();
        for (int i = 0; i < placements.size(); i++) {
            for (CutOut cutOut : CutOut.of(placements.get(i).item(), marker.order())) {
                json.writeStartObject();
                json.writeStringField("piece", cutOut.piece().name());
                json.writeStringField("size", cutOut.piece().size().name());
                json.writeNumberField("garment", cutOut.garment().number());
                if (!cutOut.garment().customer().isEmpty()) {
                    json.writeStringField("customer", cutOut.garment().customer());
                }
                json.writeStringField("hand", cutOut.hand().letter());
                json.writeNumberField("number", i + 1);
                json.writeEndObject();
            }
        }
        json.writeEndArray();
    }

    private void cutList(Marker marker) throws IOException {
        json.writeArrayFieldStart("cut_list");
        for (CutList.Line line : CutList.of(marker).lines()) {
            json.writeStartObject();
            json.writeStringField("piece", line.piece());
            json.writeStringField("size", line.garment().size().name());
            if (line.filler()) {
                json.writeBooleanField("filler", true);
            } else {
                json.writeNumberField("garment", line.garment().number());
            }
            json.writeNumberField("wanted", line.wanted());
            json.writeNumberField("laid", line.found().size());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void strips(Marker marker) throws IOException {
        json.writeArrayFieldStart("strips");
        for (FoldedStrip.Kind kind : FoldedStrip.on(marker)) {
            json.writeStartObject();
            json.writeStringField("piece", kind.strip().piece());
            json.writeStringField("size", kind.strip().size());
            json.writeNumberField("pieces", kind.count());
            length("cut_width_mm", kind.strip().width());
            length("half_length_mm", kind.strip().half());
            length("whole_length_mm", kind.strip().whole());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void blocks(Marker marker) throws IOException {
        json.writeArrayFieldStart("straight_cut_blocks");
        for (StraightBlock block : StraightBlock.on(marker)) {
            json.writeStartObject();
            json.writeArrayFieldStart("numbers");
            for (int number : block.numbers()) {
                json.writeNumber(number);
            }
            json.writeEndArray();
            length("strip_width_mm", block.strip());
            length("strip_length_mm", block.side());
            length("gap_mm", block.gap());
            length("every_mm", block.pitch());
            length("block_width_mm", block.breadth());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void fillers(List<Filling.Kind> fillers) throws IOException {
        json.writeArrayFieldStart("fillers");
        for (Filling.Kind kind : fillers) {
            json.writeStartObject();
            json.writeStringField("piece", kind.piece());
            json.writeNumberField("laid", kind.laid());
            json.writeNumberField("at_most", kind.atMost());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void leftovers(Marker marker, Purchase purchase) throws IOException {
        json.writeArrayFieldStart("leftovers");
        for (Box box : Leftovers.of(marker, purchase)) {
            json.writeStartObject();
            length("lengthwise_mm", new Length(box.width()));
            length("crosswise_mm", new Length(box.height()));
            length("x_mm", new Length(box.minX()));
            length("y_mm", new Length(box.minY()));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void length(String name, Length length) throws IOException {
        json.writeNumberField(name, BigDecimal.valueOf(length.micrometres(), 3));
    }

    private void number(String name, double value, int digits) throws IOException {
        json.writeNumberField(name, BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_UP));
    }

    private void cost(OptionalDouble cost) throws IOException {
        if (cost.isPresent()) {
            number("cost", cost.getAsDouble(), 2);
        } else {
            json.writeNullField("cost");
        }
    }

    private void strings(String name, List<String> values) throws IOException {
        json.writeArrayFieldStart(name);
        for (String value : values) {
            json.writeString(value);
        }
        json.writeEndArray();
    }

    private static String word(String constant) {
        return constant.toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
