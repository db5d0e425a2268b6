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
import java.util.OptionalDouble;
import lengthwise.model.Length;

/** Writes one JSON object as text: lengths exact to the micrometre, two blanks a level, a line feed at the end. */
final class JsonText {
    private final JsonGenerator json;

    JsonText(JsonGenerator json) {
        this.json = json;
    }

    /** Writes members of an object. */
    interface Members {
        void write(JsonText json) throws IOException;
    }

    static String of(Members members) {
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = new JsonFactory().createGenerator(text)) {
            DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
            generator.setPrettyPrinter(
                    new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter));
            generator.writeStartObject();
            members.write(new JsonText(generator));
            generator.writeEndObject();
        } catch (IOException e) {
            // A string writer does not fail.
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    void text(String name, String value) throws IOException {
        json.writeStringField(name, value);
    }

    void yes(String name, boolean value) throws IOException {
        json.writeBooleanField(name, value);
    }

    void count(String name, long value) throws IOException {
        json.writeNumberField(name, value);
    }

    void length(String name, Length length) throws IOException {
        json.writeNumberField(name, BigDecimal.valueOf(length.micrometres(), 3));
    }

    void number(String name, double value, int digits) throws IOException {
        json.writeNumberField(name, BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_UP));
    }

    /** A number, or null where it is not known. */
    void number(String name, OptionalDouble value, int digits) throws IOException {
        if (value.isPresent()) {
            number(name, value.getAsDouble(), digits);
        } else {
            json.writeNullField(name);
        }
    }

    void texts(String name, List<String> values) throws IOException {
        json.writeArrayFieldStart(name);
        for (String value : values) {
            json.writeString(value);
        }
        json.writeEndArray();
    }

    /** Writes an object for each value. */
    <T> void objects(String name, List<T> values, Each<T> each) throws IOException {
        json.writeArrayFieldStart(name);
        for (T value : values) {
            json.writeStartObject();
            each.write(value);
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** Writes the members of the object for a value. */
    interface Each<T> {
        void write(T value) throws IOException;
    }
}
