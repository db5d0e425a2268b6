package lengthwise.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import lengthwise.geometry.Box;

/**
 * What Chromium shows of an SVG file: a browser has 96 pixels to the inch of 25.4 mm (W3C, <i>CSS Values and Units</i>,
 * absolute lengths), here a whole number of times as many. Places are micrometres from the upper left corner.
 */
public record Screenshot(BufferedImage image, int fineness) {
    /**
     * Opens a file in a window of this size.
     *
     * @param fineness pixels of the picture to one of the browser
     */
    public static Screenshot of(String svg, Path folder, double widthMm, double heightMm, int fineness)
            throws IOException, InterruptedException {
        Path file = Files.writeString(folder.resolve("shown.svg"), svg);
        Path picture = folder.resolve("shown.png");
        List<String> said = OutsideReader.CHROMIUM.says(
                "--user-data-dir=" + folder.resolve("browser"),
                "--force-device-scale-factor=" + fineness,
                String.format(Locale.ROOT, "--window-size=%d,%d", (int) Math.ceil(widthMm / 25.4 * 96), (int)
                        Math.ceil(heightMm / 25.4 * 96)),
                "--screenshot=" + picture,
                file.toUri().toString());
        assertThat(picture).as(String.join("\n", said)).isRegularFile();
        return new Screenshot(ImageIO.read(picture.toFile()), fineness);
    }

    /** Micrometres to a pixel. */
    public double pixel() {
        return 25_400.0 / 96 / fineness;
    }

    /**
     * Returns the box of what is darker than white by a part of the way to black, within a window; fails where there is nothing.
     */
    public Box ink(Box window, double darkness) {
        int darkest = (int) (255 * (1 - darkness));
        int left = Integer.MAX_VALUE;
        int top = Integer.MAX_VALUE;
        int right = -1;
        int bottom = -1;
        for (int y = at(window.minY(), image.getHeight()); y < at(window.maxY(), image.getHeight()); y++) {
            for (int x = at(window.minX(), image.getWidth()); x < at(window.maxX(), image.getWidth()); x++) {
                int rgb = image.getRGB(x, y);
                if (Math.max(rgb >> 16 & 0xff, Math.max(rgb >> 8 & 0xff, rgb & 0xff)) <= darkest) {
                    left = Math.min(left, x);
                    right = Math.max(right, x);
                    top = Math.min(top, y);
                    bottom = Math.max(bottom, y);
                }
            }
        }
        assertThat(right).as("ink in %s", window).isNotNegative();
        return new Box(um(left), um(top), um(right + 1), um(bottom + 1));
    }

    private int at(long micrometres, int end) {
        return (int) Math.max(0, Math.min(end, Math.round(micrometres / pixel())));
    }

    private long um(int pixels) {
        return Math.round(pixels * pixel());
    }
}
