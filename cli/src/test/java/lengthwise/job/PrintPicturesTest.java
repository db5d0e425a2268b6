package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.SplittableRandom;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import lengthwise.model.PrintPicture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pictures of prints, read from files that nobody vouches for. */
class PrintPicturesTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({"png, 300, 200, 300, 200", "jpeg, 300, 200, 300, 200", "png, 2400, 1000, 800, 334"})
    void aPictureIsReadAndIsNoLargerThanNeed(String format, int wide, int high, int shownWide, int shownHigh)
            throws Exception {
        PrintPicture picture = PrintPictures.read(drawn(format, wide, high));
        assertThat(picture.mediaType()).isEqualTo("image/" + format);
        BufferedImage shown =
                ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(picture.base64())));
        assertThat(shown.getWidth()).isEqualTo(shownWide);
        assertThat(shown.getHeight()).isEqualTo(shownHigh);
        // red at the left, blue at the right
        assertThat(shown.getRGB(1, 1) >> 16 & 0xff).isGreaterThan(200);
        assertThat(shown.getRGB(shownWide - 2, 1) & 0xff).isGreaterThan(200);
    }

    /** Words in a PNG (chunk tEXt, ISO/IEC 15948, 11.3.4.3) are no dots. */
    @Test
    void whatIsNoDotIsLeftOut() throws Exception {
        byte[] plain = Files.readAllBytes(drawn("png", 20, 20));
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        told.write(plain, 0, plain.length - 12);
        told.write(chunk("tEXt", "Comment\0taken at home".getBytes(StandardCharsets.ISO_8859_1)));
        told.write(plain, plain.length - 12, 12);
        Path file = folder.resolve("told.png");
        Files.write(file, told.toByteArray());
        byte[] read = Base64.getDecoder().decode(PrintPictures.read(file).base64());
        assertThat(new String(read, StandardCharsets.ISO_8859_1)).doesNotContain("taken at home");
    }

    @Test
    void whatIsTooLargeIsRefusedBeforeItIsUnpacked() throws Exception {
        Path file = folder.resolve("bomb.png");
        ByteArrayOutputStream bomb = new ByteArrayOutputStream();
        bomb.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
        bomb.write(chunk("IHDR", header(60_000, 60_000)));
        bomb.write(chunk("IDAT", new byte[100]));
        Files.write(file, bomb.toByteArray());
        assertThatThrownBy(() -> PrintPictures.read(file))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("60000 by 60000 dots");
        Files.write(file, new byte[(4 << 20) + 1]);
        assertThatThrownBy(() -> PrintPictures.read(file)).hasMessageContaining("more than 4 MB");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "GIF89a", "<svg xmlns=\"http://www.w3.org/2000/svg\"/>", "\u0089PNG\r\n\u001a\n"})
    void whatIsNoPictureIsRefused(String bytes) throws Exception {
        Path file = folder.resolve("other.png");
        Files.write(file, bytes.getBytes(StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> PrintPictures.read(file))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("PNG");
        assertThatThrownBy(() -> PrintPictures.read(folder.resolve("none.png")))
                .hasMessageContaining("there is no such picture");
    }

    /** Each is a picture still, or refused in a clause; nothing else comes out. */
    @ParameterizedTest
    @ValueSource(strings = {"png", "jpeg"})
    void damagedPicturesAreReadOrRefused(String format) throws Exception {
        byte[] whole = Files.readAllBytes(drawn(format, 60, 40));
        SplittableRandom random = new SplittableRandom(5);
        Path file = folder.resolve("damaged");
        for (int k = 0; k < 200; k++) {
            byte[] damaged =
                    random.nextInt(4) == 0 ? Arrays.copyOf(whole, random.nextInt(whole.length)) : whole.clone();
            for (int n = random.nextInt(1, 6); n > 0 && damaged.length > 0; n--) {
                damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
            }
            Files.write(file, damaged);
            try {
                assertThat(PrintPictures.read(file).mediaType()).startsWith("image/");
            } catch (JobException refused) {
                assertThat(refused.getMessage()).contains("save");
            }
        }
    }

    private Path drawn(String format, int wide, int high) throws IOException {
        BufferedImage image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < wide; x++) {
            for (int y = 0; y < high; y++) {
                image.setRGB(x, y, x < wide / 2 ? 0xff0000 : 0x0000ff);
            }
        }
        Path file = folder.resolve("picture." + format);
        assertThat(ImageIO.write(image, format, file.toFile())).isTrue();
        return file;
    }

    /** Width, height, 8 bits of grey (ISO/IEC 15948, 11.2.2). */
    private static byte[] header(int wide, int high) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeInt(wide);
        out.writeInt(high);
        out.write(new byte[] {8, 0, 0, 0, 0});
        return bytes.toByteArray();
    }

    /** Length, kind, data and checksum (ISO/IEC 15948, 5.3). */
    private static byte[] chunk(String kind, byte[] data) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeInt(data.length);
        byte[] name = kind.getBytes(StandardCharsets.US_ASCII);
        out.write(name);
        out.write(data);
        CRC32 sum = new CRC32();
        sum.update(name);
        sum.update(data);
        out.writeInt((int) sum.getValue());
        return bytes.toByteArray();
    }
}
