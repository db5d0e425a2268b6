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
import lengthwise.plan.lays.CutOrder;
import lengthwise.plan.lays.Lay;

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
        length(json, "total_mm", cloth.plan().fabric());
        length(json, "bound_mm", cloth.plan().bound());
        length(json, "bound_by_markers_mm", cloth.byGuess());
        json.writeBooleanField("fewest_lays_proven", cloth.plan().fewestLays());
        json.writeBooleanField("settled", cloth.settled());
        json.writeArrayFieldStart("buy");
        for (int colour = 0; colour < cloth.purchases().size(); colour++) {
            json.writeStartObject();
            if (PlanWords.hasColours(cloth.order())) {
                json.writeStringField("colour", cloth.order().colours().get(colour));
            }
            length(json, "buy_mm", cloth.purchases().get(colour).buy());
            if (cloth.purchases().get(colour).cost().isPresent()) {
                json.writeNumberField(
                        "cost",
                        new BigDecimal(Figures.money(
                                cloth.purchases().get(colour).cost().getAsDouble())));
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void length(JsonGenerator json, String name, Length length) throws IOException {
        json.writeNumberField(name, BigDecimal.valueOf(length.micrometres(), 3));
    }
}
