package lengthwise.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.drawing.DrawingException;
import org.apache.fontbox.cmap.CMap;
import org.apache.fontbox.cmap.CMapParser;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.encoding.DictionaryEncoding;
import org.apache.pdfbox.pdmodel.font.encoding.Encoding;
import org.apache.pdfbox.pdmodel.font.encoding.GlyphList;
import org.apache.pdfbox.pdmodel.font.encoding.StandardEncoding;
import org.jspecify.annotations.Nullable;

/**
 * What the codes of a font mean and how far each letter reaches, from what the document says of the font. No font is
 * opened, neither one in the file nor one of the machine.
 *
 * <p>Reference: ISO 32000-1, 9.10 (extraction of text content), 9.7.4.3 (widths).
 */
final class Letters {
    /** The advance of a letter of unknown width, in thousandths of the size: an estimate. */
    private static final double USUAL_WIDTH = 500;

    private static final int MOST_WIDTHS = 70_000;

    private final boolean composite;
    private final Optional<CMap> unicode;
    private final Encoding encoding;
    private final Map<Integer, Double> widths = new HashMap<>();
    private final double usual;

    /**
     * One letter.
     *
     * @param shown what it reads; empty if the document does not say
     * @param width its advance in sizes of the font
     * @param blank whether it is the code 32 of one byte, which word spacing widens
     */
    record Letter(Optional<String> shown, double width, boolean blank) {}

    Letters(COSDictionary font, Unpacking unpacking, String place) throws DrawingException {
        composite = COSName.TYPE0.equals(font.getCOSName(COSName.SUBTYPE));
        unicode = map(font.getDictionaryObject(COSName.TO_UNICODE), unpacking, place);
        encoding = encoding(font.getDictionaryObject(COSName.ENCODING));
        if (composite) {
            COSBase descendants = font.getDictionaryObject(COSName.DESCENDANT_FONTS);
            COSDictionary descendant = descendants instanceof COSArray array
                            && array.size() > 0
                            && array.getObject(0) instanceof COSDictionary first
                    ? first
                    : new COSDictionary();
            usual = descendant.getInt(COSName.DW, 1000);
            compositeWidths(descendant.getDictionaryObject(COSName.W));
        } else {
            usual = USUAL_WIDTH;
            double unit = COSName.TYPE3.equals(font.getCOSName(COSName.SUBTYPE)) ? type3Unit(font) : 1;
            simpleWidths(font.getInt(COSName.FIRST_CHAR, 0), font.getDictionaryObject(COSName.WIDTHS), unit);
        }
    }

    private static Optional<CMap> map(@Nullable COSBase stream, Unpacking unpacking, String place)
            throws DrawingException {
        if (!(stream instanceof COSStream map)) {
            return Optional.empty();
        }
        byte[] bytes = unpacking.bytes(map, place);
        if (!ToUnicodeRanges.areBounded(bytes)) {
            return Optional.empty();
        }
        try {
            return Optional.of(new CMapParser().parse(new RandomAccessReadBuffer(bytes)));
        } catch (IOException | RuntimeException unreadable) {
            return Optional.empty();
        }
    }

    private static Encoding encoding(@Nullable COSBase encoding) {
        Encoding known = null;
        if (encoding instanceof COSName name) {
            known = Encoding.getInstance(name);
        } else if (encoding instanceof COSDictionary dictionary && !(encoding instanceof COSStream)) {
            known = new DictionaryEncoding(dictionary, true, StandardEncoding.INSTANCE);
        }
        return known == null ? StandardEncoding.INSTANCE : known;
    }

    private static double type3Unit(COSDictionary font) {
        return font.getDictionaryObject(COSName.FONT_MATRIX) instanceof COSArray matrix
                        && matrix.size() == 6
                        && matrix.getObject(0) instanceof COSNumber across
                ? 1000 * Math.abs(across.floatValue())
                : 1;
    }

    private void simpleWidths(int first, @Nullable COSBase array, double unit) {
        if (array instanceof COSArray all) {
            for (int i = 0; i < Math.min(256, all.size()); i++) {
                if (all.getObject(i) instanceof COSNumber width) {
                    widths.put(first + i, width.floatValue() * unit);
                }
            }
        }
    }

    private void compositeWidths(@Nullable COSBase array) {
        if (!(array instanceof COSArray all)) {
            return;
        }
        int i = 0;
        while (i + 1 < all.size() && widths.size() < MOST_WIDTHS) {
            if (!(all.getObject(i) instanceof COSNumber first)) {
                return;
            }
            if (all.getObject(i + 1) instanceof COSArray list) {
                for (int j = 0; j < Math.min(list.size(), MOST_WIDTHS); j++) {
                    if (list.getObject(j) instanceof COSNumber width) {
                        widths.put(first.intValue() + j, (double) width.floatValue());
                    }
                }
                i += 2;
            } else if (i + 2 < all.size()
                    && all.getObject(i + 1) instanceof COSNumber last
                    && all.getObject(i + 2) instanceof COSNumber width) {
                for (long code = first.intValue(); code <= last.intValue() && widths.size() < MOST_WIDTHS; code++) {
                    widths.put((int) code, (double) width.floatValue());
                }
                i += 3;
            } else {
                return;
            }
        }
    }

    /** Returns the letters of a string; codes of a composite font are taken as two bytes long. */
    List<Letter> of(byte[] string) {
        List<Letter> letters = new ArrayList<>();
        int length = composite ? 2 : 1;
        for (int i = 0; i + length <= string.length; i += length) {
            int code = composite ? ((string[i] & 0xff) << 8) | (string[i + 1] & 0xff) : string[i] & 0xff;
            letters.add(new Letter(
                    shown(code, length), widths.getOrDefault(code, usual) / 1000, !composite && code == ' '));
        }
        return letters;
    }

    private Optional<String> shown(int code, int length) {
        Optional<String> mapped = unicode.map(map -> map.toUnicode(code, length));
        if (mapped.isPresent() || composite) {
            return mapped;
        }
        return Optional.ofNullable(GlyphList.getAdobeGlyphList().toUnicode(encoding.getName(code)));
    }
}
