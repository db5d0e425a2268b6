package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.testing.Damage;
import lengthwise.testing.DamagedFiles;
import lengthwise.testing.Decoys;
import lengthwise.testing.Mutants;
import lengthwise.testing.SampleMarkers;
import lengthwise.testing.WholeFiles;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Markers beside the drawings; and that what the decoys are there for works. */
class MutatedSvgTest extends DamagedFiles {
    private static final String GOOD = "<rect id=\"good\" x=\"20\" y=\"20\" width=\"120\" height=\"60\"/>";

    private static final Damage DAMAGE = Damage.toElements(
            "<",
            ">",
            "/>",
            "</g>",
            "<g>",
            "<svg>",
            "<use href=\"#a\"/>",
            "<![CDATA[",
            "<!--",
            "&amp;",
            "&none;",
            "&#0;",
            "M0 0",
            "Z",
            "A1 1 0 0 1 9 9",
            "c",
            "H1e9",
            "translate(1e300)",
            "scale(0)",
            "matrix(1 0 0 1 0 0)",
            "rotate(45)",
            "url(#a)",
            "none",
            "100%",
            "mm",
            "id",
            "href",
            "style",
            "class",
            "transform",
            "viewBox",
            "d");

    /** Markers as {@code check}, {@code print} and {@code export} read them. */
    @Test
    void damagedMarkers() throws Exception {
        markers().few(0.3);
    }

    @Tag("long")
    @Test
    void damagedMarkersForAnHour() throws Exception {
        markers().many();
    }

    /** Whole ones: the piece of their own is there, and none of the decoy's. */
    @Test
    void nothingElseIsOpened() throws Exception {
        try (Decoys decoys = new Decoys(folder)) {
            int read = 0;
            for (String drawing : referring(decoys)) {
                try {
                    PatternDrawing pieces = Drawn.read(drawing);
                    assertThat(pieces.pieces()).extracting(DrawnPiece::name).containsExactly("good");
                    read++;
                } catch (DrawingException refused) {
                    assertThat(refused.getMessage()).doesNotContain("\n");
                }
            }
            assertThat(read).isGreaterThan(40);
            decoys.assertUntouched();
        }
    }

    /** A reader that opened the file, or called the server, would be found out. */
    @Test
    void whatIsOpenedIsSeen() throws Exception {
        try (Decoys decoys = new Decoys(folder)) {
            Files.readAllBytes(Path.of(decoys.names().get(1)));
            int read = decoys.touched();
            assertThat(read).isPositive();
            URI server = URI.create(decoys.names().get(3));
            try (Socket socket = new Socket(server.getHost(), server.getPort())) {
                assertThat(socket.getInputStream().read()).isEqualTo(-1);
            }
            assertThat(decoys.touched()).isGreaterThan(read);
        }
    }

    @Override
    protected Mutants files(Decoys decoys) throws Exception {
        List<byte[]> whole = new ArrayList<>(WholeFiles.endingWith(".svg", 100_000, "/cases"));
        referring(decoys).forEach(drawing -> whole.add(drawing.getBytes(StandardCharsets.UTF_8)));
        Path file = folder.resolve("drawing.svg");
        return new Mutants("svg", whole, DAMAGE, DrawingException.class, copy -> {
            Files.write(file, copy);
            measure(SvgPattern.read(file, ScaleStatement.NONE));
        });
    }

    private Mutants markers() throws Exception {
        MarkerNotes notes = new MarkerNotes("job", "a test", "1 m", List.of("One layer."), List.of());
        List<byte[]> whole = new ArrayList<>();
        for (var marker : List.of(SampleMarkers.small(), SampleMarkers.folded(), SampleMarkers.singleLayer())) {
            whole.add(MarkerSvg.of(marker, notes).getBytes(StandardCharsets.UTF_8));
        }
        Path file = folder.resolve("marker.svg");
        return new Mutants("marker.svg", whole, DAMAGE, DrawingException.class, copy -> {
            Files.write(file, copy);
            MarkerSvgReader.read(file);
            MarkerSvgReader.painting(file);
        });
    }

    /** Each way that a drawing has to refer to another file. */
    private static List<String> referring(Decoys decoys) {
        List<String> drawings = new ArrayList<>();
        for (String name : decoys.names()) {
            for (String way : List.of(
                    "<image href=\"FILE\" width=\"9\" height=\"9\"/>",
                    "<image xlink:href=\"FILE\" width=\"9\" height=\"9\"/>",
                    "<use href=\"FILE#decoy\"/>",
                    "<use xlink:href=\"FILE#decoy\"/>",
                    "<g xml:base=\"FILE\"><use xlink:href=\"#decoy\"/></g>",
                    "<style>@import url(FILE);</style>",
                    "<style>@import 'FILE'; @font-face{font-family:a;src:url(FILE)}</style><text style=\"font-family:a\">a</text>",
                    "<script xlink:href=\"FILE\"/>",
                    "<text><tref xlink:href=\"FILE#decoy\"/><textPath xlink:href=\"FILE#decoy\">a</textPath></text>",
                    "<path d=\"M1 1h5\" style=\"marker-end:url(FILE#decoy);fill:url(FILE#decoy);clip-path:url(FILE#decoy)\"/>",
                    "<filter id=\"f\"><feImage xlink:href=\"FILE\"/></filter><path d=\"M1 1h5\" filter=\"url(#f)\"/>",
                    "<color-profile name=\"p\" xlink:href=\"FILE\"/><path d=\"M1 1h5\" stroke=\"#000 icc-color(p, 1)\"/>",
                    "<foreignObject><iframe xmlns=\"http://www.w3.org/1999/xhtml\" src=\"FILE\"/></foreignObject>")) {
                drawings.add(Drawn.page(way.replace("FILE", name) + GOOD));
            }
            drawings.add("<?xml-stylesheet href=\"" + name + "\" type=\"text/css\"?>" + Drawn.page(GOOD));
            drawings.add("<!DOCTYPE svg SYSTEM \"" + name + "\">" + Drawn.page(GOOD));
            drawings.add(
                    "<!DOCTYPE svg [<!ENTITY e SYSTEM \"" + name + "\">]>" + Drawn.page("<desc>&e;</desc>" + GOOD));
            drawings.add("<!DOCTYPE svg [<!ENTITY % e SYSTEM \"" + name + "\"> %e;]>" + Drawn.page(GOOD));
            drawings.add(Drawn.page(
                    "<xi:include xmlns:xi=\"http://www.w3.org/2001/XInclude\" href=\"" + name + "\"/>" + GOOD));
        }
        return drawings;
    }
}
