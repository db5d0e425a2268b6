package lengthwise.dxf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.ScaleStatement;
import lengthwise.testing.Damage;
import lengthwise.testing.DamagedFiles;
import lengthwise.testing.Decoys;
import lengthwise.testing.Mutants;
import lengthwise.testing.WholeFiles;

class MutatedDxfTest extends DamagedFiles {
    private static final Damage DAMAGE = Damage.toLines(
            "%%%",
            "\\S",
            "\\U+0000",
            "*",
            "EOF",
            "SECTION",
            "BLOCK",
            "INSERT",
            "POLYLINE",
            "VERTEX",
            "SPLINE",
            "ENDBLK",
            "ENDSEC",
            "MTEXT",
            "ELLIPSE",
            "IMAGE",
            "1",
            "2",
            "10",
            "42",
            "70");

    @Override
    protected Mutants files(Decoys decoys) throws Exception {
        List<byte[]> whole = new ArrayList<>(WholeFiles.endingWith(".dxf", 1 << 20, "/cases", "/dxf"));
        for (String name : decoys.names()) {
            // A block that stands in another file (flag 4), and a picture.
            String other = "0 BLOCK\n8 0\n2 far\n70 4\n10 0\n20 0\n3 far\n1 " + name + "\n0 ENDBLK\n8 0\n";
            String drawing = Dxf.drawing(
                    other,
                    Dxf.rectangle("good", 20, 20, 120, 60) + Dxf.insert("far", 0, 0, "") + "0 IMAGE\n8 0\n1 " + name
                            + "\n");
            whole.add(Dxf.bytes(drawing, StandardCharsets.UTF_8));
        }
        return new Mutants(
                "dxf",
                whole,
                DAMAGE,
                DrawingException.class,
                copy -> measure(DxfPattern.read("p.dxf", copy, ScaleStatement.NONE)));
    }
}
