package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class InspectCommandTest {
    private static final String DRAWING = "<svg xmlns='http://www.w3.org/2000/svg' width='400mm' height='300mm'"
            + " viewBox='0 0 400 300' fill='none' stroke='#000'><g id='plover'><path class='cut' d='M50 50H150V250H50Z'/>"
            + "<path class='grain' d='M100 220V80M95 90L100 80L105 90'/><text x='70' y='150' font-size='5'>cut 2</text></g>"
            + "<rect id='box' x='200' y='20' width='101.6' height='101.6'/></svg>";

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private Path drawing = Path.of("");

    @BeforeEach
    void draw() throws IOException {
        drawing = Files.writeString(folder.resolve("plover.svg"), DRAWING);
    }

    private int inspect(String... args) {
        return new CommandLine(new InspectCommand())
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(args);
    }

    @Test
    void printsARowForEachPiece() {
        assertThat(inspect(drawing.toString())).isZero();
        assertThat(out.toString()).contains("plover", "100.0 × 200.0", "3.94 × 7.87", "90.0°", "top", "\"cut 2\"");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void printsExactlyThePromisedJson() {
        assertThat(inspect("--json", "--scale-box", "box=4 in", drawing.toString()))
                .isZero();
        assertThat(out.toString().replaceAll("\\s+", ""))
                .startsWith("{\"pieces\":[{\"name\":\"plover\",\"size\":null,\"x_mm\":50.0,\"y_mm\":50.0,"
                        + "\"width_mm\":100.0,\"height_mm\":200.0,\"area_mm2\":20000.0,\"net_area_mm2\":20000.0,"
                        + "\"mirrored\":false,\"grain_degrees\":90.0}],\"warnings\":[],\"left_out\":[");
    }

    @Test
    void drawsThePictureAsAWhole() throws IOException {
        Path picture = folder.resolve("seen/plover.svg");
        assertThat(inspect("--picture", picture.toString(), drawing.toString())).isZero();
        assertThat(Files.readString(picture))
                .startsWith("<?xml")
                .contains("data-piece=\"plover\"")
                .contains("</svg>");
        try (var files = Files.list(folder.resolve("seen"))) {
            assertThat(files).containsExactly(picture);
        }
    }

    @Test
    void aScaleBoxThatIsNotAsSaidStopsWithBothNumbers() {
        assertThat(inspect("--scale-box", "box=10 cm", drawing.toString())).isEqualTo(3);
        assertThat(err.toString()).contains("100.00").contains("101.60").contains("4 in");
    }

    @Test
    void badInputAndWrongUseAreToldApart() {
        assertThat(inspect(folder.resolve("nothing.svg").toString())).isEqualTo(3);
        assertThat(err.toString()).contains("nothing.svg");
        assertThat(inspect()).isEqualTo(2);
        assertThat(inspect("--scale-box", "box", drawing.toString())).isEqualTo(2);
    }
}
