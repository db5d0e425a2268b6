package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;
import lengthwise.model.Length;
import lengthwise.svg.MarkerPainting;
import lengthwise.svg.MarkerSvg;
import lengthwise.testing.SampleMarkers;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.ImageTranscoder;
import org.apache.batik.transcoder.image.PNGTranscoder;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;

/**
 * Cut and tape, by image: every page is cut along its own blue line, laid on the dashed one of its neighbour, and the whole
 * compared with the marker as another program (Batik) draws it.
 */
class JoinedPagesTest {
    /** Picture elements to the millimetre; a line is found to half of one, and a little more is lost with each join. */
    private static final double DOTS = 3;

    /** Without lettering, which every program sets in a typeface of its own. */
    private static final String MARKER =
            MarkerSvg.of(SampleMarkers.singleLayer(), Sheets.NOTES).replaceAll("(?s)<text.*?</text>", "");

    @Test
    void pagesLaidByTheirMarksMakeTheMarker() throws Exception {
        BufferedImage joined = joined(Sheets.on(Paper.named("A1").orElseThrow()));
        assertSameLines(joined, drawnByBatik());
        // 1240 mm of cloth less 2 % of shrinkage (the sample's fabric): an edge at the top, one more than a metre
        // below.
        int column = (int) ((ORIGIN_X + 400) * DOTS);
        int top = firstDark(joined, column, 0, 1);
        int bottom = firstDark(joined, column, joined.getHeight() - 1, -1);
        while (Sheets.isDark(joined.getRGB(column, bottom - 1))) {
            bottom--; // from the upper side of one line to the upper side of the other
        }
        assertThat((bottom - top) / DOTS).isCloseTo(1240 * 0.98, within(1.0));
    }

    @Test
    void theyDoWithoutOverlapToo() throws Exception {
        Paper paper = Paper.named("A2").orElseThrow().landscape();
        PageSetup setup = new PageSetup(paper, PageSetup.USUAL_MARGIN, Length.ZERO, false);
        assertSameLines(joined(setup), drawnByBatik());
    }

    /** Where the corner of the cloth lies in the joined picture (mm): an edge is drawn 0.5 mm thick, with a millimetre round it. */
    private static final double ORIGIN_X = 20;

    private static final double ORIGIN_Y = 40;

    private static BufferedImage joined(PageSetup setup) throws Exception {
        MarkerPainting painting = Sheets.painting(MARKER);
        Printed printed = MarkerPrint.of(painting, setup);
        assertThat(printed.leftOut()).isEmpty();
        assertThat(printed.columns()).isGreaterThan(1);
        assertThat(printed.rows()).isGreaterThan(1);
        Extent extent;
        try (Book book = new Book("")) {
            extent = MarkerPrint.extent(painting, book);
        }
        BufferedImage whole = new BufferedImage((int) (1000 * DOTS), (int) (1400 * DOTS), BufferedImage.TYPE_INT_RGB);
        Graphics2D table = whole.createGraphics();
        table.setColor(Color.WHITE);
        table.fillRect(0, 0, whole.getWidth(), whole.getHeight());
        double margin = setup.margin().millimetres() * DOTS;
        try (PDDocument document = Sheets.open(printed)) {
            int page = printed.pages() - printed.sheets();
            double rowStart = (ORIGIN_Y + extent.minY()) * DOTS;
            for (int row = 0; row < printed.rows(); row++) {
                double columnStart = (ORIGIN_X + extent.minX()) * DOTS;
                double nextRow = rowStart;
                for (int column = 0; column < printed.columns(); column++) {
                    BufferedImage sheet = Sheets.seen(document, page++, DOTS);
                    double left = column == 0 ? margin : blueLine(sheet, true, 0, (int) (margin + 9), 0.75);
                    double top = row == 0 ? margin : blueLine(sheet, false, 0, (int) (margin + 9), 0.75);
                    int cutX = (int) Math.round(left);
                    int cutY = (int) Math.round(top);
                    // What the printer cannot reach, and the line of small print at the foot of a sheet, is no part of
                    // it.
                    int wide = (int) (sheet.getWidth() - margin) - cutX;
                    int high = (int) (sheet.getHeight() - margin) - cutY;
                    table.drawImage(
                            sheet.getSubimage(cutX, cutY, wide, high),
                            (int) Math.round(columnStart),
                            (int) Math.round(rowStart),
                            null);
                    if (row + 1 < printed.rows() && column == 0) {
                        nextRow =
                                rowStart + blueLine(sheet, false, sheet.getHeight() / 2, sheet.getHeight(), 0.3) - top;
                    }
                    if (column + 1 < printed.columns()) {
                        columnStart += blueLine(sheet, true, sheet.getWidth() / 2, sheet.getWidth(), 0.3) - left;
                    }
                }
                rowStart = nextRow;
            }
        }
        table.dispose();
        return whole;
    }

    /** Finds the middle of the line of a page that is blue along more than a part of it, in dots. */
    private static double blueLine(BufferedImage sheet, boolean upright, int from, int to, double part) {
        int length = upright ? sheet.getHeight() : sheet.getWidth();
        int best = from;
        double[] blue = new double[to - from];
        for (int i = from; i < to; i++) {
            for (int j = 0; j < length; j++) {
                int dot = upright ? sheet.getRGB(i, j) : sheet.getRGB(j, i);
                blue[i - from] += Math.max(0, Sheets.blue(dot) - Sheets.red(dot) - 30) / 130.0;
            }
            best = blue[i - from] > blue[best - from] ? i : best;
        }
        double sum = 0;
        double moment = 0;
        for (int i = Math.max(from, best - 1); i <= Math.min(to - 1, best + 1); i++) {
            sum += blue[i - from];
            moment += blue[i - from] * (i + 0.5);
        }
        assertThat(sum).as("blue dots along the line").isGreaterThan(part * length * 0.15);
        return moment / sum;
    }

    private static int firstDark(BufferedImage image, int x, int from, int step) {
        int y = from;
        while (!Sheets.isDark(image.getRGB(x, y))) {
            y += step;
        }
        return y;
    }

    /** Draws the marker with the corner of its cloth at the same place. */
    private static BufferedImage drawnByBatik() throws Exception {
        String[] box = MARKER.replaceAll("(?s).*?viewBox=\"([^\"]*)\".*", "$1").split(" ", -1);
        PNGTranscoder transcoder = new PNGTranscoder();
        double width = Double.parseDouble(box[2]);
        transcoder.addTranscodingHint(ImageTranscoder.KEY_WIDTH, (float) (width * DOTS));
        transcoder.addTranscodingHint(ImageTranscoder.KEY_HEIGHT, (float) (Double.parseDouble(box[3]) * DOTS));
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        transcoder.transcode(
                new TranscoderInput(new ByteArrayInputStream(MARKER.getBytes(StandardCharsets.UTF_8))),
                new TranscoderOutput(png));
        BufferedImage drawn = ImageIO.read(new ByteArrayInputStream(png.toByteArray()));
        BufferedImage whole = new BufferedImage((int) (1000 * DOTS), (int) (1400 * DOTS), BufferedImage.TYPE_INT_RGB);
        Graphics2D table = whole.createGraphics();
        table.setColor(Color.WHITE);
        table.fillRect(0, 0, whole.getWidth(), whole.getHeight());
        int left = (int) Math.round((ORIGIN_X + Double.parseDouble(box[0])) * DOTS);
        table.drawImage(drawn, left, (int) Math.round((ORIGIN_Y + Double.parseDouble(box[1])) * DOTS), null);
        // Title and squares stand before the start of the cloth and are on pages of their own.
        table.fillRect(0, 0, (int) ((ORIGIN_X - 1) * DOTS), whole.getHeight());
        table.dispose();
        return whole;
    }

    /** Every dark dot of one picture has a dark one within a millimetre in the other; blue marks may hide one in thousands. */
    private static void assertSameLines(BufferedImage joined, BufferedImage drawn) {
        assertThat(lost(drawn, joined)).as("lines lost on the pages").isLessThan(0.002);
        assertThat(lost(joined, drawn))
                .as("lines on the pages that the marker has not")
                .isLessThan(0.002);
    }

    private static double lost(BufferedImage from, BufferedImage in) {
        int reach = (int) DOTS;
        long all = 0;
        long lost = 0;
        for (int y = reach; y < from.getHeight() - reach; y++) {
            for (int x = reach; x < from.getWidth() - reach; x++) {
                if (Sheets.isDark(from.getRGB(x, y))) {
                    all++;
                    lost += darkNear(in, x, y, reach) ? 0 : 1;
                }
            }
        }
        assertThat(all).as("dark dots").isGreaterThan(20_000);
        return (double) lost / all;
    }

    private static boolean darkNear(BufferedImage image, int x, int y, int reach) {
        for (int dy = -reach; dy <= reach; dy++) {
            for (int dx = -reach; dx <= reach; dx++) {
                // A thin line that falls between two rows of dots leaves both of them half grey.
                if (Sheets.green(image.getRGB(x + dx, y + dy)) < 180) {
                    return true;
                }
            }
        }
        return false;
    }
}
