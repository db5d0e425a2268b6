package lengthwise.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.PieceEdges;
import lengthwise.geometry.Box;

/** What was recognised, as one JSON object; lengths in mm, x and y from the upper left corner of the page. */
final class InspectJson {
    private InspectJson() {}

    /** @param edges whether the edges of each piece are wanted too */
    static String of(List<PatternDrawing> drawings, boolean edges) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            json.writeStartObject();
            json.writeArrayFieldStart("pieces");
            for (PatternDrawing drawing : drawings) {
                for (DrawnPiece piece : drawing.pieces()) {
                    piece(json, piece, edges);
                }
            }
            json.writeEndArray();
            json.writeArrayFieldStart("warnings");
            for (PatternDrawing drawing : drawings) {
                for (String warning : drawing.warnings()) {
                    json.writeString(prefix(drawings, drawing) + warning);
                }
            }
            json.writeEndArray();
            json.writeArrayFieldStart("left_out");
            for (PatternDrawing drawing : drawings) {
                for (String leftOut : drawing.leftOut()) {
                    json.writeString(prefix(drawings, drawing) + leftOut);
                }
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return text.toString();
    }

    private static String prefix(List<PatternDrawing> drawings, PatternDrawing drawing) {
        return drawings.size() > 1 ? drawing.file() + ": " : "";
    }

    private static void piece(JsonGenerator json, DrawnPiece piece, boolean edges) throws IOException {
        Box box = piece.outline().box();
        json.writeStartObject();
        json.writeStringField("name", piece.name());
        if (piece.size().isPresent()) {
            json.writeStringField("size", piece.size().get());
        } else {
            json.writeNullField("size");
        }
        json.writeNumberField("x_mm", box.minX() / 1000.0);
        json.writeNumberField("y_mm", box.minY() / 1000.0);
        json.writeNumberField("width_mm", box.width() / 1000.0);
        json.writeNumberField("height_mm", box.height() / 1000.0);
        json.writeNumberField("area_mm2", rounded(piece.outline().shell().doubleArea() / 2e6));
        json.writeNumberField("net_area_mm2", rounded(piece.outline().squareMillimetres()));
        json.writeBooleanField("mirrored", piece.mirrored());
        if (piece.arrow().isPresent()) {
            json.writeNumberField("grain_degrees", rounded(piece.arrow().get().degrees()));
        } else {
            json.writeNullField("grain_degrees");
        }
        if (edges) {
            edges(json, piece);
        }
        json.writeEndObject();
    }

    private static void edges(JsonGenerator json, DrawnPiece piece) throws IOException {
        json.writeArrayFieldStart("edges");
        for (PieceEdges.Section section : PieceEdges.of(piece).sections()) {
            json.writeStartObject();
            json.writeStringField("from", section.from().called());
            json.writeStringField("to", section.to().called());
            json.writeNumberField("length_mm", rounded(section.length().micrometres() / 1000));
            json.writeBooleanField("sew_line", section.length().along() == PieceEdges.Line.SEW_LINE);
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static double rounded(double value) {
        return StrictMath.round(value * 1000) / 1000.0;
    }
}
