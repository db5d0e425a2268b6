package lengthwise.testing;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** A JSON object of a test resource or a file, as nested maps and lists. */
public record Json(Map<String, Object> members) {
    public static Json resource(String name) throws IOException {
        try (InputStream in = Json.class.getResourceAsStream(name)) {
            return read(in);
        }
    }

    public static Json file(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return read(in);
        }
    }

    private static Json read(InputStream in) throws IOException {
        try (JsonParser parser = new JsonFactory().createParser(in)) {
            parser.nextToken();
            return (Json) value(parser);
        }
    }

    private static Object value(JsonParser parser) throws IOException {
        JsonToken token = parser.currentToken();
        if (token == JsonToken.START_OBJECT) {
            Map<String, Object> members = new LinkedHashMap<>();
            while (parser.nextToken() != JsonToken.END_OBJECT) {
                String name = parser.currentName();
                parser.nextToken();
                members.put(name, value(parser));
            }
            return new Json(members);
        }
        if (token == JsonToken.START_ARRAY) {
            List<Object> items = new ArrayList<>();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                items.add(value(parser));
            }
            return items;
        }
        return token.isNumeric() ? parser.getDoubleValue() : parser.getText();
    }

    public boolean has(String name) {
        return members.containsKey(name);
    }

    private Object member(String name) {
        return Objects.requireNonNull(members.get(name), name);
    }

    public String text(String name) {
        return String.valueOf(member(name));
    }

    public double number(String name) {
        return (Double) member(name);
    }

    public List<Json> objects(String name) {
        return ((List<?>) member(name)).stream().map(Json.class::cast).toList();
    }

    public int count(String name) {
        return ((List<?>) member(name)).size();
    }
}
