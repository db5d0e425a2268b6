package lengthwise.job;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Iterator;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import lengthwise.model.PrintPicture;

/**
 * Reads the picture of a print, PNG or JPEG, that nobody vouches for: small in bytes and in dots, which is known before it is
 * unpacked. It is written anew, coarser where that is enough to see it by, so that nothing but its dots goes on.
 */
final class PrintPictures {
    private static final int MOST_BYTES = 4 << 20;
    private static final int MOST_DOTS = 5_000;
    private static final int ENOUGH_DOTS = 800;

    private PrintPictures() {}

    /**
     * Returns the picture in a file.
     *
     * @throws JobException in a clause, if there is none, it is too large or cannot be read
     */
    static PrintPicture read(Path file) throws JobException {
        if (!Files.isRegularFile(file)) {
            throw new JobException("there is no such picture (looked for %s)"
                    .formatted(file.toAbsolutePath().normalize()));
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                throw new JobException("the picture has more than 4 MB; save it smaller");
            }
            return decoded(bytes);
        } catch (IOException | RuntimeException damaged) {
            throw new JobException(
                    "the picture cannot be read (%s); save it as PNG or JPEG, in RGB".formatted(sentence(damaged)));
        }
    }

    private static String sentence(Exception e) {
        return String.valueOf(e.getMessage()).lines().findFirst().orElse("it is damaged");
    }

    private static PrintPicture decoded(byte[] bytes) throws IOException, JobException {
        try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            while (readers.hasNext()) {
                ImageReader reader = readers.next();
                String format = reader.getFormatName().toLowerCase(Locale.ROOT);
                if (format.equals("png") || format.equals("jpeg")) {
                    reader.setInput(in);
                    try {
                        return new PrintPicture("image/" + format, written(dots(reader), format));
                    } finally {
                        reader.dispose();
                    }
                }
            }
        }
        throw new JobException("it is neither PNG nor JPEG; save the picture of one repeat as one of these");
    }

    private static BufferedImage dots(ImageReader reader) throws IOException, JobException {
        int wide = reader.getWidth(0);
        int high = reader.getHeight(0);
        if (wide > MOST_DOTS || high > MOST_DOTS) {
            throw new JobException("the picture is %d by %d dots; save it with at most %d either way"
                    .formatted(wide, high, MOST_DOTS));
        }
        ImageReadParam coarser = reader.getDefaultReadParam();
        int every = (Math.max(wide, high) + ENOUGH_DOTS - 1) / ENOUGH_DOTS;
        coarser.setSourceSubsampling(every, every, 0, 0);
        return reader.read(0, coarser);
    }

    private static String written(BufferedImage dots, String format) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName(format).next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            writer.setOutput(out);
            writer.write(dots);
        } finally {
            writer.dispose();
        }
        return Base64.getEncoder().encodeToString(bytes.toByteArray());
    }
}
