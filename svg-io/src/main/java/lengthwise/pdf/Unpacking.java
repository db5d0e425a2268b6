package lengthwise.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import lengthwise.drawing.DrawingException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.filter.FilterFactory;

/** Unpacks the streams of a file, no more of them than a pattern needs. */
final class Unpacking {
    private static final int MOST_AT_ONCE = 48 << 20;
    private static final long MOST = 1L << 30;
    private static final Set<COSName> PLAIN = Set.of(
            COSName.ASCII85_DECODE,
            COSName.ASCII85_DECODE_ABBREVIATION,
            COSName.ASCII_HEX_DECODE,
            COSName.ASCII_HEX_DECODE_ABBREVIATION,
            COSName.RUN_LENGTH_DECODE,
            COSName.RUN_LENGTH_DECODE_ABBREVIATION,
            COSName.LZW_DECODE,
            COSName.LZW_DECODE_ABBREVIATION);

    private final String file;
    private long unpacked;

    Unpacking(String file) {
        this.file = file;
    }

    /**
     * Returns the bytes of a stream.
     *
     * @param place where it is used, as "page 3"
     * @throws DrawingException if it is damaged, or too large
     */
    byte[] bytes(COSStream stream, String place) throws DrawingException {
        try (InputStream raw = stream.createRawInputStream()) {
            byte[] bytes = raw.readAllBytes();
            List<COSName> filters = filters(stream);
            for (int i = 0; i < filters.size(); i++) {
                bytes = filtered(bytes, filters.get(i), stream, i, place);
            }
            unpacked += bytes.length;
            if (unpacked > MOST) {
                throw tooLarge(place);
            }
            return bytes;
        } catch (IOException e) {
            throw damaged(place, e);
        }
    }

    private DrawingException damaged(String place, Exception e) {
        return new DrawingException(
                "%s, %s: what is drawn there is damaged and cannot be read whole; export the pattern again."
                        .formatted(file, place),
                e);
    }

    private DrawingException tooLarge(String place) {
        return new DrawingException(
                "%s, %s: what is drawn there is too much to be a pattern; export the pattern's own layers alone."
                        .formatted(file, place));
    }

    private static List<COSName> filters(COSStream stream) throws IOException {
        COSBase filters = stream.getFilters();
        List<COSName> names = new ArrayList<>();
        if (filters instanceof COSName one) {
            names.add(one);
        } else if (filters instanceof COSArray several) {
            for (int i = 0; i < several.size(); i++) {
                if (!(several.getObject(i) instanceof COSName name) || i > 4) {
                    throw new IOException("filters");
                }
                names.add(name);
            }
        }
        return names;
    }

    private byte[] filtered(byte[] bytes, COSName filter, COSStream stream, int index, String place)
            throws IOException, DrawingException {
        Limited out = new Limited();
        try {
            if (filter.equals(COSName.FLATE_DECODE) || filter.equals(COSName.FLATE_DECODE_ABBREVIATION)) {
                inflate(bytes, out);
            } else if (PLAIN.contains(filter)) {
                FilterFactory.INSTANCE.getFilter(filter).decode(new ByteArrayInputStream(bytes), out, stream, index);
            } else {
                throw new IOException("filter " + filter.getName());
            }
        } catch (FullException e) {
            throw tooLarge(place);
        }
        return out.toByteArray();
    }

    /** The library passes over data that breaks off; a piece would be missing without a word. */
    private static void inflate(byte[] bytes, Limited out) throws IOException {
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(bytes);
            byte[] chunk = new byte[1 << 15];
            while (!inflater.finished()) {
                int more = inflater.inflate(chunk);
                if (more == 0 && (inflater.needsInput() || inflater.needsDictionary())) {
                    throw new IOException("breaks off");
                }
                out.write(chunk, 0, more);
            }
        } catch (DataFormatException e) {
            throw new IOException(e);
        } finally {
            inflater.end();
        }
    }

    private static final class FullException extends RuntimeException {
        private static final long serialVersionUID = 1;
    }

    private static final class Limited extends ByteArrayOutputStream {
        @Override
        public synchronized void write(int b) {
            check(1);
            super.write(b);
        }

        @Override
        public synchronized void write(byte[] bytes, int offset, int length) {
            check(length);
            super.write(bytes, offset, length);
        }

        private void check(int more) {
            if (size() + (long) more > MOST_AT_ONCE) {
                throw new FullException();
            }
        }
    }
}
