package lengthwise.pdf;

import java.awt.geom.AffineTransform;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import lengthwise.drawing.Drawing;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.Pen;
import lengthwise.geometry.Box;
import lengthwise.pdf.TapedPages.Sheet;
import lengthwise.pdf.TapedPages.Taped;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Draws what the pages of a PDF file show, in millimetres. */
final class PdfReader {
    private static final int MOST_POINTS = 1_000_000;
    private static final double MILLIMETRES_PER_POINT = 25.4 / 72;

    private final PdfFile file;
    private final Optional<PageGrid> grid;
    private final OptionalDouble millimetresPerUnit;
    private final Layers layers;
    private final PageContent.Sources sources;
    private final Set<String> warnings = new LinkedHashSet<>();
    private int pictures;
    private int unread;
    private int notes;
    private int offPage;
    private int notSheets;
    private int repeated;

    /**
     * Reads a file as the maker says.
     *
     * @param millimetresPerUnit the size of a unit of the pages, whatever the file says
     * @param grid how its pages are laid to make one drawing
     */
    PdfReader(PdfFile file, OptionalDouble millimetresPerUnit, Optional<PageGrid> grid) {
        this.file = file;
        this.grid = grid;
        this.millimetresPerUnit = millimetresPerUnit;
        this.layers = new Layers(file.document().getDocumentCatalog().getCOSObject());
        this.sources = new PageContent.Sources(layers, new Unpacking(file.name()));
    }

    Drawing draw() throws DrawingException {
        if (file.mended()) {
            warnings.add("The file is damaged and was read as far as it goes; compare the pieces with your pattern, and"
                    + " export it again if one is missing.");
        }
        List<PDPage> pages = file.pages();
        List<DrawnPage> drawn = new ArrayList<>();
        for (int i = 0; i < pages.size(); i++) {
            drawn.add(draw(pages.get(i), "page " + (i + 1)));
        }
        List<DrawnPage> laid = DrawnPage.apart(file.name(), joined(pages, drawn));
        return new Drawing(
                file.name(),
                laid.stream().map(DrawnPage::box).toList(),
                millimetresPerUnit.orElse(MILLIMETRES_PER_POINT),
                true,
                laid.stream().flatMap(page -> page.shapes().stream()).toList(),
                laid.stream().flatMap(page -> page.texts().stream()).toList(),
                List.copyOf(warnings),
                leftOut());
    }

    /** Puts pages together that are parts of one drawing, as the maker says or as the pages say themselves. */
    private List<DrawnPage> joined(List<PDPage> pages, List<DrawnPage> drawn) throws DrawingException {
        if (grid.isPresent()) {
            TilesOnGrid tiles = new TilesOnGrid(file.name(), grid.get());
            List<Sheet> laid = tiles.lay(drawn);
            notSheets = drawn.size() - laid.size();
            repeated = tiles.repeated();
            return List.of(join(laid));
        }
        Map<Integer, List<Sheet>> sheets = new TreeMap<>();
        for (int i = 0; i < drawn.size(); i++) {
            Optional<PagePlace> place = PagePlace.read(pages.get(i).getCOSObject());
            if (place.isPresent()) {
                DrawnPage page = drawn.get(i).moved(place.get().corner());
                // A sheet of ours shows each shape whole, so nothing need be cut.
                sheets.computeIfAbsent(place.get().drawing(), any -> new ArrayList<>())
                        .add(new Sheet(page, Clipping.EVERYWHERE));
            }
        }
        if (sheets.isEmpty()) {
            sayWhatReachesOver(drawn);
            return drawn.stream().map(this::shown).toList();
        }
        List<DrawnPage> joined = new ArrayList<>();
        for (List<Sheet> each : sheets.values()) {
            joined.add(join(each));
        }
        notSheets = drawn.size() - sheets.values().stream().mapToInt(List::size).sum();
        return joined;
    }

    private DrawnPage join(List<Sheet> sheets) throws DrawingException {
        Taped taped = TapedPages.of(sheets.stream()
                .map(sheet -> new Sheet(sheet.page().shown(), sheet.own()))
                .toList());
        if (!taped.fits()) {
            throw new DrawingException(file.name() + ": " + taped.said().orElse("the pages do not fit together."));
        }
        taped.said().ifPresent(warnings::add);
        return taped.page();
    }

    private DrawnPage shown(DrawnPage page) {
        DrawnPage shown = page.shown();
        offPage += page.shapes().size() - shown.shapes().size();
        return shown;
    }

    private void sayWhatReachesOver(List<DrawnPage> drawn) {
        for (int i = 0; i < drawn.size() && drawn.size() > 1; i++) {
            if (drawn.get(i).shown().reachesOver()) {
                warnings.add(
                        "A line on page " + (i + 1) + " reaches over the edge of its page; if the pages are to be taped"
                                + " together, say how they lie: tiles: {columns: 3, overlap: 20 mm}.");
                return;
            }
        }
    }

    private List<String> leftOut() {
        List<String> leftOut = new ArrayList<>();
        layers.hidden().forEach(name -> leftOut.add("layer '" + name + "', which is switched off in the file"));
        if (pictures > 0) {
            leftOut.add((pictures == 1 ? "1 picture" : pictures + " pictures")
                    + " placed in the file: a picture or scan has no outlines, trace it first");
        }
        if (unread > 0) {
            leftOut.add(unread + " letters of which the file does not say what they mean");
        }
        if (offPage > 0) {
            leftOut.add(offPage == 1 ? "1 shape beside its page" : offPage + " shapes beside their page");
        }
        if (repeated > 0) {
            leftOut.add(repeated + " shapes that stand at the same place on every page");
        }
        if (notSheets > 0) {
            leftOut.add((notSheets == 1 ? "1 page" : notSheets + " pages") + " to read, not to cut by");
        }
        if (notes > 0) {
            leftOut.add(notes == 1 ? "1 note or form field" : notes + " notes or form fields");
        }
        return leftOut;
    }

    private DrawnPage draw(PDPage page, String place) throws DrawingException {
        COSDictionary dictionary = page.getCOSObject();
        PDRectangle visible = page.getCropBox();
        double unit = millimetresPerUnit.orElse(MILLIMETRES_PER_POINT * page.getUserUnit());
        double width = visible.getWidth() * unit;
        double height = visible.getHeight() * unit;
        int turns = Math.floorMod(page.getRotation(), 360) / 90;
        AffineTransform toPage = switch (turns) {
            case 1 -> new AffineTransform(0, 1, -1, 0, height, 0);
            case 2 -> new AffineTransform(-1, 0, 0, -1, width, height);
            case 3 -> new AffineTransform(0, -1, 1, 0, 0, width);
            default -> new AffineTransform();
        };
        toPage.concatenate(new AffineTransform(unit, 0, 0, -unit, 0, height));
        toPage.translate(-(double) visible.getLowerLeftX(), -(double) visible.getLowerLeftY());
        PageContent content = new PageContent(
                file.name(), place, sources, toPage, new Pen.Budget(file.name(), MOST_POINTS), warnings);
        content.follow(bytes(dictionary, place), resources(page));
        pictures += content.pictures();
        unread += content.lettering().unread();
        notes += dictionary.getDictionaryObject(COSName.ANNOTS) instanceof COSArray all ? all.size() : 0;
        boolean aside = turns % 2 == 1;
        return new DrawnPage(
                new Box(0, 0, micrometres(aside ? height : width), micrometres(aside ? width : height)),
                content.shapes(),
                content.lettering().lines());
    }

    private static long micrometres(double millimetres) {
        return StrictMath.round(Math.max(0, Math.min(millimetres, 1e6)) * 1000);
    }

    private static COSDictionary resources(PDPage page) {
        return page.getResources() == null
                ? new COSDictionary()
                : page.getResources().getCOSObject();
    }

    /** The parts of a page's content are one content, with a blank between them. */
    private byte[] bytes(COSDictionary page, String place) throws DrawingException {
        COSBase contents = page.getDictionaryObject(COSName.CONTENTS);
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        if (contents instanceof COSStream one) {
            all.writeBytes(sources.unpack(one, place));
        } else if (contents instanceof COSArray several) {
            for (int i = 0; i < several.size(); i++) {
                if (several.getObject(i) instanceof COSStream part) {
                    all.writeBytes(sources.unpack(part, place));
                    all.write('\n');
                }
            }
        }
        return all.toByteArray();
    }
}
