package lengthwise.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import lengthwise.model.Length;
import lengthwise.plan.Purchase;
import lengthwise.plan.lays.CutOrder;
import lengthwise.plan.lays.Lay;
import lengthwise.plan.lays.OrderChanges.Change;

/** A plan for machines, as {@code docs/plan-json.md} describes it. Lengths are exact to the micrometre. */
public final class PlanJson {
    private PlanJson() {}

    /** Returns the text of the file. */
    public static String of(PlanRun run) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
            json.setPrettyPrinter(
                    new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter));
            json.writeStartObject();
            json.writeNumberField("version", 1);
            json.writeStringField("job", run.job());
            json.writeArrayFieldStart("lays");
            Length total = Length.ZERO;
            Length bound = Length.ZERO;
            for (PlanRun.Cloth cloth : run.cloths()) {
                for (int i = 0; i < cloth.lays().size(); i++) {
                    lay(json, cloth, i);
                }
                total = total.plus(cloth.plan().fabric());
                bound = bound.plus(cloth.plan().bound());
            }
            json.writeEndArray();
            length(json, "total_mm", total);
            length(json, "bound_mm", bound);
            json.writeArrayFieldStart("fabrics");
            for (PlanRun.Cloth cloth : run.cloths()) {
                fabric(json, cloth);
            }
            json.writeEndArray();
            json.writeEndObject();
        } catch (IOException e) {
            // A string writer does not fail.
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    private static void lay(JsonGenerator json, PlanRun.Cloth cloth, int number) throws IOException {
        Lay lay = cloth.plan().lays().get(number);
        CutOrder order = cloth.order();
        json.writeStartObject();
        json.writeNumberField("plies", lay.allPlies());
        json.writeObjectFieldStart("sizes");
        for (int size = 0; size < order.sizes().size(); size++) {
            if (lay.ratio().get(size) > 0) {
                json.writeNumberField(order.sizes().get(size), lay.ratio().get(size));
            }
        }
        json.writeEndObject();
        if (PlanWords.hasColours(order)) {
            json.writeObjectFieldStart("colours");
            for (int colour = 0; colour < order.colours().size(); colour++) {
                if (lay.plies().get(colour) > 0) {
                    json.writeNumberField(
                            order.colours().get(colour), lay.plies().get(colour));
                }
            }
            json.writeEndObject();
        }
        length(json, "length_mm", cloth.lays().get(number).marker().length());
        length(json, "ply_mm", cloth.ply(number));
        json.writeStringField("fabric", cloth.fabric().name());
        json.writeEndObject();
    }

    private static void fabric(JsonGenerator json, PlanRun.Cloth cloth) throws IOException {
        json.writeStartObject();
        json.writeStringField("name", cloth.fabric().name());
        length(json, "cuttable_width_mm", cloth.fabric().cuttableWidth());
        json.writeNumberField("plies", cloth.plan().plies());
        length(json, "total_mm", cloth.plan().fabric());
        length(json, "bound_mm", cloth.plan().bound());
        length(json, "bound_by_markers_mm", cloth.byGuess());
        json.writeBooleanField("fewest_lays_proven", cloth.plan().fewestLays());
        json.writeBooleanField("settled", cloth.settled());
        json.writeArrayFieldStart("buy");
        for (int colour = 0; colour < cloth.purchases().size(); colour++) {
            json.writeStartObject();
            colour(json, cloth, colour);
            Purchase purchase = cloth.purchases().get(colour);
            length(json, "marker_mm", purchase.marker());
            length(json, "ends_mm", purchase.ends());
            length(json, "shrinkage_mm", purchase.shrinkage());
            length(json, "squaring_mm", purchase.squaring());
            length(json, "flaws_mm", purchase.flaws());
            length(json, "rounding_mm", purchase.rounding());
            length(json, "buy_mm", purchase.buy());
            if (cloth.purchases().get(colour).cost().isPresent()) {
                json.writeNumberField(
                        "cost",
                        new BigDecimal(Figures.money(
                                cloth.purchases().get(colour).cost().getAsDouble())));
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        bolts(json, cloth);
        changes(json, cloth);
        json.writeEndObject();
    }

    private static void colour(JsonGenerator json, PlanRun.Cloth cloth, int colour) throws IOException {
        if (PlanWords.hasColours(cloth.order())) {
            json.writeStringField("colour", cloth.order().colours().get(colour));
        }
    }

    private static void bolts(JsonGenerator json, PlanRun.Cloth cloth) throws IOException {
        json.writeArrayFieldStart("bolts");
        for (PlanRun.Bolts bolts : cloth.bolts()) {
            for (int bolt = 0; bolt < bolts.lengths().size(); bolt++) {
                json.writeStartObject();
                colour(json, cloth, bolts.colour());
                json.writeStringField("name", bolts.names().get(bolt).orElse(""));
                length(json, "length_mm", bolts.lengths().get(bolt));
                if (bolts.plies().isPresent()) {
                    json.writeArrayFieldStart("plies");
                    for (int plies : bolts.plies().get().plies().get(bolt)) {
                        json.writeNumber(plies);
                    }
                    json.writeEndArray();
                    length(json, "left_mm", bolts.plies().get().left().get(bolt));
                }
                length(json, "lost_at_ends_mm", bolts.lost());
                length(json, "unused_width_mm", bolts.unused().get(bolt));
                json.writeEndObject();
            }
        }
        json.writeEndArray();
        json.writeArrayFieldStart("bolts_short");
        for (PlanRun.Bolts bolts : cloth.bolts()) {
            if (bolts.plies().isEmpty()) {
                json.writeStartObject();
                colour(json, cloth, bolts.colour());
                length(json, "short_by_mm", new Length(bolts.shortfall()));
                json.writeEndObject();
            }
        }
        json.writeEndArray();
    }

    private static void changes(JsonGenerator json, PlanRun.Cloth cloth) throws IOException {
        json.writeArrayFieldStart("changes");
        for (Change change : cloth.changes()) {
            json.writeStartObject();
            colour(json, cloth, change.colour());
            json.writeStringField("size", cloth.order().sizes().get(change.size()));
            json.writeNumberField("by", change.by());
            json.writeNumberField("lays", change.lays());
            length(json, "more_mm", new Length(change.fabric()));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void length(JsonGenerator json, String name, Length length) throws IOException {
        json.writeNumberField(name, BigDecimal.valueOf(length.micrometres(), 3));
    }
}
