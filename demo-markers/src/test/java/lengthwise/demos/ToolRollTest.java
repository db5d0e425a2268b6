package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import lengthwise.cli.Main;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.dxf.DxfPattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The demo that is drawn in DXF, in inches. */
class ToolRollTest {
    /**
     * By hand, in square inches of 645.16 mm²: the pocket is 22 × (8 + 5) / 2; each rounded corner of the flap takes
     * 4 − π from 22 × 5.
     */
    @ParameterizedTest
    @CsvSource({"body, 22, 14, 308", "pocket, 22, 8, 143", "flap, 22, 5, 108.2832"})
    void piecesMeasureWhatTheReadmeSays(String name, double wide, double high, double area) throws Exception {
        PatternDrawing drawing = DxfPattern.read(Path.of("tool-roll/tool-roll.dxf"), ScaleStatement.NONE);
        assertThat(drawing.scaleStated()).isTrue();
        assertThat(drawing.warnings()).isEmpty();
        assertThat(drawing.pieces()).extracting(DrawnPiece::name).containsExactlyInAnyOrder("body", "pocket", "flap");
        DrawnPiece piece = drawing.pieces().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
        assertThat(piece.outline().box().width() / 25_400.0).isCloseTo(wide, within(1e-6));
        assertThat(piece.outline().box().height() / 25_400.0).isCloseTo(high, within(1e-6));
        assertThat(piece.outline().squareMillimetres() / 645.16).isCloseTo(area, within(0.002));
        assertThat(piece.arrow()).isPresent();
    }

    /** Six rolls are five contours each. */
    @Test
    void sixRolls(@TempDir Path out) throws Exception {
        assertThat(Main.run(
                        "marker",
                        "tool-roll/job.yaml",
                        "--out",
                        out.toString(),
                        "--iterations",
                        "20",
                        "--seed",
                        "7",
                        "--workers",
                        "2"))
                .isZero();
        Path marker = out.resolve("waxed-canvas.svg");
        String svg = Files.readString(marker);
        assertThat(Pattern.compile("<g [^>]*data-piece=\"([^\"]*)\"")
                        .matcher(svg)
                        .results()
                        .collect(Collectors.groupingBy(found -> found.group(1), Collectors.counting())))
                .containsOnlyKeys("body", "pocket", "flap", "tie")
                .containsEntry("pocket", 6L)
                .containsEntry("body", 6L)
                .containsEntry("flap", 6L)
                .containsEntry("tie", 12L);
        assertThat(Main.run("check", marker.toString(), "--job", "tool-roll/job.yaml"))
                .isZero();
    }
}
