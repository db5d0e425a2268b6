package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import javax.imageio.ImageIO;
import lengthwise.drawing.DrawingException;
import lengthwise.model.Marker;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MarkerPngTest {
    private static final Marker MARKER = SampleMarkers.singleLayer();
    private static final String WRITTEN = MarkerSvg.of(MARKER, MarkerSvgTest.NOTES);

    @TempDir
    Path folder;

    private BufferedImage painted(String svg, int pixels) throws Exception {
        Path file = folder.resolve("marker.svg");
        Files.writeString(file, svg);
        return ImageIO.read(new ByteArrayInputStream(MarkerPng.of(file, pixels)));
    }

    private static int brightness(BufferedImage image, double x, double y) {
        int rgb = image.getRGB((int) x, (int) y);
        return ((rgb >> 16 & 255) + (rgb >> 8 & 255) + (rgb & 255)) / 3;
    }

    /** The left edge of the first neck tie lies at x = 0 of the marker, y from 720 to 1170 mm. */
    @ParameterizedTest
    @ValueSource(ints = {200, 777, 2000})
    void itIsAsWideAsAskedAndTheCutLineIsDark(int pixels) throws Exception {
        BufferedImage image = painted(WRITTEN, pixels);
        assertThat(image.getWidth()).isEqualTo(pixels);
        String[] box = WRITTEN.replaceAll("(?s).*viewBox=\"([^\"]*)\".*", "$1").split(" ", -1);
        double scale = pixels / Double.parseDouble(box[2]);
        assertThat(image.getHeight()).isEqualTo((int) Math.round(Double.parseDouble(box[3]) * scale));
        // The second tie runs from 35 to 485 mm along and 720 to 752 mm across; the cuttable area begins at 20, 20.
        double x = (20 + 35 - Double.parseDouble(box[0])) * scale;
        double top = (20 + 720 - Double.parseDouble(box[1])) * scale;
        double inside = brightness(image, x + 6 * scale, top + 6 * scale);
        int darkest = 255;
        for (int dx = -1; dx <= 1; dx++) {
            darkest = Math.min(darkest, brightness(image, x + dx, top + 10 * scale));
        }
        assertThat(darkest).as("on the cut line").isLessThan(160);
        assertThat(inside).as("inside the piece").isGreaterThan(200);
    }

    @Test
    void aPictureTooLargeForMemoryIsRefusedWithWhatIsPossible() {
        assertThatThrownBy(() -> painted(WRITTEN, 30_000))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("too large")
                .hasMessageMatching(".*; [0-9]+ wide is possible.");
    }

    /** What a file may hold that was in strange hands: nothing is fetched, run or repeated without end. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script>",
                "<image href='file:///etc/hostname' width='100' height='100'/>",
                "<g id='a'><use href='#a'/></g>",
                "<style>@import url(http://127.0.0.1:9/x.css);</style>",
                "<path d='M0 0 H1e9 V5' stroke='#000' stroke-dasharray='0.00001'/>",
                "<path d='M0 0 H1e9 V5' stroke='#000' style='stroke-dasharray:0.00001'/>",
                "<path d='M0 0 H1e9 V5' stroke='#000' stroke-dasharray='1 1'/>",
                "<g stroke-dasharray='1 1'><path d='M0 0 H1e9 V5' stroke='#000'/></g>",
                "<g filter='url(#f)' mask='url(#f)' clip-path='url(#f)'><path d='M0 0 L5 5' fill='url(#f)'/></g>",
                "<foreignObject width='9' height='9'><p xmlns='http://www.w3.org/1999/xhtml'>x</p></foreignObject>",
                "<text font-size='100000000' x='0' y='0'>huge</text>"
            })
    void whatIsNoMarkerIsNotPainted(String strange) throws Exception {
        BufferedImage plain = painted(WRITTEN, 300);
        String svg = WRITTEN.replace("</svg>", strange + "</svg>");
        BufferedImage image = Assertions.assertTimeoutPreemptively(Duration.ofSeconds(60), () -> painted(svg, 300));
        assertThat(image.getWidth()).isEqualTo(300);
        assertThat(image.getHeight()).isEqualTo(plain.getHeight());
    }

    @Test
    void whatCannotBePaintedIsSaidInOneLine() {
        String svg = WRITTEN.replace("</svg>", "<text font-size='1e9' x='0' y='0'>huge</text></svg>");
        assertThatThrownBy(() -> painted(svg, 300))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("marker.svg: cannot be painted: ")
                .hasMessageContaining("font-size")
                .message()
                .doesNotContain("\n");
    }
}
