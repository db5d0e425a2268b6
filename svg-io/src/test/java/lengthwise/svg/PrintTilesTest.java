package lengthwise.svg;

import static lengthwise.testing.SampleMarkers.mm;
import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import lengthwise.geometry.Box;
import lengthwise.model.Bundle;
import lengthwise.model.Fabric;
import lengthwise.model.Lying;
import lengthwise.model.MarkRef;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Motif;
import lengthwise.model.PrintPicture;
import lengthwise.model.Repeat;
import lengthwise.testing.SampleMarkers;
import lengthwise.testing.Screenshot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The print in a marker's drawing, as a browser shows it, and how readers pass it over. */
class PrintTilesTest {
    private static final MarkerNotes NOTES = new MarkerNotes("job", "a test", "", List.of(), List.of());

    @TempDir
    private Path folder;

    /**
     * The picture is red at the upper left, green at the upper right, blue at the lower left and yellow at the lower right; a repeat is 80 mm long and
     * 60 wide. By hand, from the origin in micrometres: its lower left quarter lies from 0 to 40 along and 0 to 30 across, its
     * upper left one 40 mm further along, its lower right one 30 mm further across. In a half-drop the next column begins 40 mm further on;
     * folded, all lies on the other side of the origin.
     */
    @ParameterizedTest
    @CsvSource({
        "single, false, 20, 15, BLUE",
        "single, false, 60, 15, RED",
        "single, false, 20, 45, YELLOW",
        "single, false, 60, 45, GREEN",
        "single, false, 20, 75, BLUE",
        "single, true,  20, 15, BLUE",
        "single, true,  20, 75, RED",
        "single, true,  60, 75, BLUE",
        "single, true,  20, 105, GREEN",
        "single, true,  20, 135, BLUE",
        "folded, false, 20, -15, BLUE",
        "folded, false, 60, -15, RED",
        "folded, false, 20, -45, YELLOW",
        "folded, true,  20, -75, RED",
    })
    void theTopOfThePictureComesAhead(String lying, boolean halfDrop, double x, double y, String colour)
            throws Exception {
        Marker marker =
                printed(lying.equals("single") ? SampleMarkers.small() : SampleMarkers.folded(), halfDrop, tile(8));
        String svg = MarkerSvg.of(marker, NOTES);
        double[] page = page(svg);
        Screenshot shot = Screenshot.of(svg, folder, page[2], page[3], 1);
        Fabric fabric = marker.order().fabric();
        double originX = 10 + fabric.spread().startAllowance().millimetres() - page[0];
        double originY = 20 + fabric.edgesOnTable().near().millimetres() - page[1];
        int seen = 0;
        int right = 0;
        // the same place in many repeats: most are not under a line or a letter
        for (int i = 0; i < 12; i++) {
            for (int j = -12; j < 12; j++) {
                double atX = x + 80.0 * i;
                double atY = y + 60.0 * (halfDrop ? 2 * j : j);
                if (atX < marker.length().millimetres() - 15
                        && atY + 20 > 5
                        && atY + 20 < fabric.cuttableWidth().millimetres() - 5) {
                    seen++;
                    int px = (int) ((originX + atX) * 96 / 25.4);
                    int py = (int) ((originY + atY) * 96 / 25.4);
                    right += colour.equals(colour(new Color(shot.image().getRGB(px, py)))) ? 1 : 0;
                }
            }
        }
        assertThat(seen).isPositive();
        assertThat(right).as("of %s", seen).isGreaterThanOrEqualTo(seen * 8 / 10);
    }

    private static String colour(Color seen) {
        boolean red = seen.getRed() > seen.getBlue() + 25;
        boolean green = seen.getGreen() > seen.getBlue() + 25;
        boolean blue = seen.getBlue() > seen.getRed() + 25;
        return red && green && seen.getRed() - seen.getGreen() < 40
                ? "YELLOW"
                : red ? "RED" : green && seen.getGreen() > seen.getRed() + 25 ? "GREEN" : blue ? "BLUE" : "none";
    }

    /** A picture of a megabyte, of dots at random. */
    @Test
    void readersPassItOver() throws Exception {
        Marker plain = SampleMarkers.small();
        Marker printed = printed(plain, true, tile(600));
        Path without = Files.writeString(folder.resolve("plain.svg"), MarkerSvg.of(plain, NOTES));
        Path with = Files.writeString(folder.resolve("printed.svg"), MarkerSvg.of(printed, NOTES));
        assertThat(Files.size(with)).isGreaterThan(Files.size(without) + 1_000_000);
        assertThat(MarkerSvgReader.read(with).pieces())
                .isEqualTo(MarkerSvgReader.read(without).pieces());
        assertThat(MarkerSvgReader.painting(with).cloth())
                .isEqualTo(MarkerSvgReader.painting(without).cloth());
        assertThat(MarkerSvgReader.painting(with).over()).isEmpty();
        BufferedImage picture = ImageIO.read(new ByteArrayInputStream(MarkerPng.of(with, 300)));
        BufferedImage same = ImageIO.read(new ByteArrayInputStream(MarkerPng.of(without, 300)));
        int differs = 0;
        for (int x = 0; x < 300; x++) {
            Color one = new Color(picture.getRGB(x, picture.getHeight() / 2));
            Color other = new Color(same.getRGB(x, picture.getHeight() / 2));
            // pieces are paler
            differs += Math.abs(one.getRed() - other.getRed()) > 60 ? 1 : 0;
        }
        assertThat(differs).isLessThan(20);
    }

    /** Through layers of which nobody knows where they lie in the print, none is drawn. */
    @Test
    void noPrintIsDrawnThatNobodyKnows() throws Exception {
        Marker plain = SampleMarkers.small();
        assertThat(MarkerSvg.of(plain, NOTES)).doesNotContain("<image", "fill-opacity");
        assertThat(MarkerSvg.of(printed(plain, false, tile(8)), NOTES)).contains("<image", "fill-opacity");
    }

    /** On paper the motifs are outlines over the pieces, which hide nothing. */
    @Test
    void motifsHideNothing() throws Exception {
        Marker marker = printed(SampleMarkers.small(), false, tile(8));
        MarkerOrder order = marker.order();
        Bundle first = order.bundles().get(0);
        Lying off = new Lying(
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(new Lying.MotifTie(
                        new Motif("rose", new Box(0, 0, 20_000, 20_000), true),
                        false,
                        Optional.of(new MarkRef(MarkRef.Kind.NOTCH, 1)))));
        Marker minding = new Marker(
                order.withLying(Map.of(first.pieces().get(0).piece().name(), off)),
                marker.placements(),
                marker.length());
        String svg = MarkerSvg.of(minding, NOTES);
        assertThat(svg).contains("class=\"motif\" fill=\"none\"", ">rose<", "motifs of the print");
        Path file = Files.writeString(folder.resolve("minding.svg"), svg);
        assertThat(MarkerSvgReader.painting(file).over()).isNotEmpty();
    }

    private static double[] page(String svg) {
        Matcher box = Pattern.compile("viewBox=\"([-0-9. ]+)\"").matcher(svg);
        assertThat(box.find()).isTrue();
        return Arrays.stream(box.group(1).split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static Marker printed(Marker marker, boolean halfDrop, PrintPicture picture) {
        Fabric plain = marker.order().fabric();
        Repeat repeat = new Repeat(mm(80), mm(60), halfDrop, /* mirrored= */ false, mm(10), mm(20));
        Fabric print = new Fabric(
                        plain.name(),
                        plain.role(),
                        plain.width(),
                        plain.unusableEdge(),
                        plain.direction(),
                        plain.mostStretch(),
                        Optional.of(repeat),
                        plain.shrinkage(),
                        plain.spread(),
                        plain.price(),
                        plain.soldBy(),
                        plain.flaws(),
                        plain.onHand(),
                        plain.pile())
                .shownAs(picture);
        return new Marker(marker.order().withFabric(print), marker.placements(), marker.length());
    }

    /** Four quarters of one colour each, a little noisy where there are many dots. */
    private static PrintPicture tile(int dots) throws IOException {
        SplittableRandom random = new SplittableRandom(1);
        BufferedImage image = new BufferedImage(dots, dots, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < dots; x++) {
            for (int y = 0; y < dots; y++) {
                boolean left = x < dots / 2;
                boolean upper = y < dots / 2;
                int rgb = upper ? left ? 0xff0000 : 0x00ff00 : left ? 0x0000ff : 0xffff00;
                image.setRGB(x, y, dots > 100 ? random.nextInt(0xffffff) : rgb);
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "png", bytes);
        return new PrintPicture("image/png", Base64.getEncoder().encodeToString(bytes.toByteArray()));
    }
}
