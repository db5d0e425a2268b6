package lengthwise.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.ScaleStatement;
import lengthwise.model.Length;
import lengthwise.testing.Damage;
import lengthwise.testing.DamagedFiles;
import lengthwise.testing.Decoys;
import lengthwise.testing.Mutants;
import lengthwise.testing.SampleMarkers;
import lengthwise.testing.WholeFiles;

class MutatedPdfTest extends DamagedFiles {
    private static final Damage DAMAGE = Damage.toWords(
            "null",
            "true",
            "<<",
            ">>",
            "[",
            "]",
            "(",
            ")",
            "<FEFF>",
            "endobj",
            "stream",
            "endstream",
            "xref",
            "q",
            "Q",
            "cm",
            "re",
            "h",
            "Do",
            "BT",
            "ET",
            "Tj",
            "BDC",
            "EMC",
            "BI",
            "ID",
            "1 0 R",
            "4 0 R",
            "/Kids",
            "/Type",
            "/FlateDecode",
            "/ASCII85Decode",
            "/Length",
            "/Parent",
            "/Contents",
            "/Rotate 45",
            "/UserUnit 99999999");

    /** The cases, a print of our own, files with layers, lettering, forms and tiles, and references to elsewhere. */
    @Override
    protected Mutants files(Decoys decoys) throws Exception {
        List<byte[]> whole = new ArrayList<>(WholeFiles.endingWith(".pdf", 1 << 20, "/cases"));
        whole.add(PdfReaderTest.layered("/OFF [LARGE]"));
        whole.add(PdfReaderTest.lettered());
        whole.add(PdfReaderTest.coded());
        whole.add(TapedPagesTest.cutApart(10, 0, ""));
        whole.add(PiecePrint.of(Sheets.painting(SampleMarkers.singleLayer()), Sheets.on("A3"))
                .bytes());
        for (String name : decoys.names()) {
            whole.add(referringTo(name));
        }
        return new Mutants("pdf", whole, DAMAGE, DrawingException.class, MutatedPdfTest::read);
    }

    private static void read(byte[] copy) throws DrawingException {
        Optional<PageGrid> grid = copy.length % 4 == 0
                ? Optional.of(new PageGrid(2, OptionalInt.empty(), Length.ofMillimetres(10), 1))
                : Optional.empty();
        try {
            measure(PdfPattern.read("p.pdf", copy, ScaleStatement.NONE, grid));
        } catch (DrawingException refused) {
            HostilePdfTest.assertIsOneLine(refused);
            throw refused;
        }
    }

    /** Content, a picture and a form that stand in another file, a font that does, a link, and what is done on opening. */
    private static byte[] referringTo(String name) {
        WrittenByHand file = new WrittenByHand();
        String outside = "/F (" + name + ") /FFilter /FlateDecode";
        int content = file.stream(outside, "20 20 300 200 re S /P Do /G Do BT /F 9 Tf 30 30 Td (cut 1) Tj ET");
        int picture = file.stream("/Subtype /Image /Width 9 /Height 9 " + outside, "x");
        int form = file.stream("/Subtype /Form /BBox [0 0 9 9] /Ref << /F (" + name + ") /Page 0 >> " + outside, "");
        int font = file.stream(outside, "");
        String resources =
                ("/Resources << /XObject << /P %d 0 R /G %d 0 R >> /Font << /F << /Subtype /TrueType /BaseFont /X"
                                + " /FontDescriptor << /FontFile2 %d 0 R >> >> >> >>")
                        .formatted(picture, form, font);
        return file.inCatalog("/OpenAction << /S /URI /URI (%1$s) >> /AcroForm << /XFA [(a) << /F (%1$s) >>] >>"
                        .formatted(name))
                .page(
                        resources + " /Contents " + content + " 0 R /Annots [<< /Subtype /Link /A << /S /Launch /F ("
                                + name + ") >> >>]",
                        "")
                .bytes();
    }
}
