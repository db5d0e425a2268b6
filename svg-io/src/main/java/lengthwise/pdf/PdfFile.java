package lengthwise.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import lengthwise.drawing.DrawingException;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdfparser.PDFParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;

/** A PDF file that nobody vouches for, opened behind limits of size. */
final class PdfFile implements AutoCloseable {
    private static final int MOST_BYTES = 64 << 20;
    private static final int MOST_PAGES = 2_000;

    /** The head of a file may stand behind other bytes (ISO 32000-1, annex H.3, note 13). */
    private static final int HEAD = 1024;

    /** What the library notes while it reads is said here, in the maker's words or not at all. */
    private static final Logger LIBRARY = Logger.getLogger("org.apache.pdfbox");

    private static final Logger FONTS = Logger.getLogger("org.apache.fontbox");

    static {
        LIBRARY.setLevel(Level.OFF);
        FONTS.setLevel(Level.OFF);
    }

    private final String name;
    private final PDDocument document;
    private final boolean mended;

    private PdfFile(String name, PDDocument document, boolean mended) {
        this.name = name;
        this.document = document;
        this.mended = mended;
    }

    static byte[] bytes(Path file) throws DrawingException {
        if (Files.isDirectory(file)) {
            throw new DrawingException(file + " is a folder; name a PDF file.");
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                throw new DrawingException(
                        file + ": more than 64 MB; export the pattern's lines alone, without pictures.");
            }
            return bytes;
        } catch (NoSuchFileException e) {
            throw new DrawingException("There is no file " + file + "; check the name and the folder.", e);
        } catch (IOException e) {
            throw new DrawingException(file + ": cannot be opened: " + e.getMessage(), e);
        }
    }

    static PdfFile open(String name, byte[] bytes) throws DrawingException {
        String head = new String(bytes, 0, Math.min(HEAD, bytes.length), StandardCharsets.ISO_8859_1);
        if (head.isBlank()) {
            throw new DrawingException(name + " is empty; export the drawing again.");
        }
        if (!head.contains("%PDF-")) {
            throw new DrawingException(name + " is no PDF file; export the drawing again as PDF, SVG or DXF.");
        }
        FlateGuard.check(name, bytes);
        PdfFile file;
        try {
            file = parsed(name, bytes, true);
        } catch (InvalidPasswordException locked) {
            throw new DrawingException(name + LOCKED, locked);
        } catch (IOException e) {
            throw new DrawingException(name + " is damaged and cannot be read; export the pattern again.", e);
        }
        if (file.document.isEncrypted()) {
            file.close();
            throw new DrawingException(name + LOCKED);
        }
        return file;
    }

    private static final String LOCKED = " is locked (encrypted); save it again without a password.";

    private static PdfFile parsed(String name, byte[] bytes, boolean strictly) throws IOException {
        try {
            return new PdfFile(name, new PDFParser(new RandomAccessReadBuffer(bytes)).parse(!strictly), !strictly);
        } catch (InvalidPasswordException locked) {
            throw locked;
        } catch (IOException e) {
            if (strictly) {
                return parsed(name, bytes, false);
            }
            throw e;
        }
    }

    String name() {
        return name;
    }

    PDDocument document() {
        return document;
    }

    /** Says whether the file is damaged and was put together from what could be found. */
    boolean mended() {
        return mended;
    }

    List<PDPage> pages() throws DrawingException {
        List<PDPage> pages = new ArrayList<>();
        for (PDPage page : document.getPages()) {
            if (pages.size() == MOST_PAGES) {
                throw new DrawingException(name + " has more than " + MOST_PAGES
                        + " pages; take the pages with the pattern out into a file of their own.");
            }
            pages.add(page);
        }
        return pages;
    }

    @Override
    public void close() throws DrawingException {
        try {
            document.close();
        } catch (IOException e) {
            throw new DrawingException(name + " cannot be closed: " + e.getMessage(), e);
        }
    }
}
