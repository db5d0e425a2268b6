package lengthwise.pdf;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** PDF files put together object by object, as ISO 32000-1, 7.5 says, without the library that reads them. */
final class WrittenByHand {
    private final List<byte[]> objects = new ArrayList<>();
    private final StringBuilder kids = new StringBuilder();
    private String catalog = "";
    private String pageTree = "";

    WrittenByHand() {
        objects.add(new byte[0]);
        objects.add(new byte[0]);
    }

    /** A file of one page of 400 × 300 mm whose unit is made a millimetre, y up. */
    static byte[] millimetres(String content) {
        return new WrittenByHand()
                .page("", "2.834645669 0 0 2.834645669 0 0 cm\n" + content)
                .bytes();
    }

    static String rectangle(double x, double y, double width, double height) {
        return String.format(Locale.ROOT, "%s %s %s %s re S\n", x, y, width, height);
    }

    /** Adds an object and returns its number. */
    int add(String body) {
        objects.add(body.getBytes(StandardCharsets.ISO_8859_1));
        return objects.size();
    }

    int stream(String dictionary, byte[] data) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(("<< " + dictionary + " /Length " + data.length + " >>\nstream\n")
                .getBytes(StandardCharsets.ISO_8859_1));
        out.writeBytes(data);
        out.writeBytes("\nendstream".getBytes(StandardCharsets.ISO_8859_1));
        objects.add(out.toByteArray());
        return objects.size();
    }

    int stream(String dictionary, String data) {
        return stream(dictionary, data.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** Adds a page; what its dictionary says comes before the usual box of 400 × 300 mm. */
    WrittenByHand page(String dictionary, String content) {
        int stream = stream("", content);
        String box = dictionary.contains("/MediaBox") ? "" : " /MediaBox [0 0 1133.858268 850.393701]";
        String contents = dictionary.contains("/Contents") ? "" : " /Contents " + stream + " 0 R";
        int page = add("<< /Type /Page /Parent 2 0 R " + dictionary + box + contents + " >>");
        kids.append(page).append(" 0 R ");
        return this;
    }

    WrittenByHand inCatalog(String more) {
        catalog += " " + more;
        return this;
    }

    WrittenByHand inPageTree(String more) {
        pageTree += " " + more;
        return this;
    }

    byte[] bytes() {
        return bytes("");
    }

    byte[] bytes(String trailer) {
        int count = kids.toString().split("R", -1).length - 1;
        objects.set(0, ("<< /Type /Catalog /Pages 2 0 R" + catalog + " >>").getBytes(StandardCharsets.ISO_8859_1));
        objects.set(
                1,
                ("<< /Type /Pages /Kids [" + kids + "] /Count " + count + pageTree + " >>")
                        .getBytes(StandardCharsets.ISO_8859_1));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("%PDF-1.7\n".getBytes(StandardCharsets.ISO_8859_1));
        StringBuilder table = new StringBuilder("xref\n0 " + (objects.size() + 1) + "\n0000000000 65535 f \n");
        for (int i = 0; i < objects.size(); i++) {
            table.append(String.format(Locale.ROOT, "%010d 00000 n \n", out.size()));
            out.writeBytes((i + 1 + " 0 obj\n").getBytes(StandardCharsets.ISO_8859_1));
            out.writeBytes(objects.get(i));
            out.writeBytes("\nendobj\n".getBytes(StandardCharsets.ISO_8859_1));
        }
        int start = out.size();
        out.writeBytes((table + "trailer\n<< /Size " + (objects.size() + 1) + " /Root 1 0 R " + trailer
                        + " >>\nstartxref\n" + start + "\n%%EOF\n")
                .getBytes(StandardCharsets.ISO_8859_1));
        return out.toByteArray();
    }
}
