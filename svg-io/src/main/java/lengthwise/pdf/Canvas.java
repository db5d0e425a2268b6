package lengthwise.pdf;

import java.io.IOException;
import java.util.List;
import lengthwise.drawing.Chain;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Painted.Anchor;
import lengthwise.geometry.Point;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.optionalcontent.PDOptionalContentGroup;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Matrix;

/** Paints on a page, or on what is painted on several pages, in millimetres with y down. */
final class Canvas implements AutoCloseable {
    static final int BLACK = 0;
    static final int GREY = 0x7d898d;
    static final int PALE = 0xe4e4e0;

    private final PDPageContentStream out;
    private final Typeface typeface;

    Canvas(PDPageContentStream out, Typeface typeface) throws IOException {
        this.out = out;
        this.typeface = typeface;
        out.setLineJoinStyle(1);
    }

    /** A step of painting, undone afterwards what it changed of the state. */
    interface Step {
        void paint() throws IOException;
    }

    /** Paints with this point as the origin, and everything as many times as large. */
    void moved(double x, double y, double scale, Step step) throws IOException {
        out.saveGraphicsState();
        out.transform(new Matrix((float) scale, 0, 0, (float) scale, (float) x, (float) y));
        step.paint();
        out.restoreGraphicsState();
    }

    /** Paints with everything turned by a quarter: what ran to the right runs down. */
    void turned(double x, double y, Step step) throws IOException {
        out.saveGraphicsState();
        out.transform(new Matrix(0, 1, -1, 0, (float) x, (float) y));
        step.paint();
        out.restoreGraphicsState();
    }

    void within(double x, double y, double width, double height, Step step) throws IOException {
        out.saveGraphicsState();
        out.addRect((float) x, (float) y, (float) width, (float) height);
        out.clip();
        step.paint();
        out.restoreGraphicsState();
    }

    /** Paints what a reader can switch on and off. */
    void layer(PDOptionalContentGroup layer, Step step) throws IOException {
        out.beginMarkedContent(COSName.OC, layer);
        step.paint();
        out.endMarkedContent();
    }

    /** Paints what belongs to the page and not to the drawing on it, so that nobody reads it as pieces. */
    void furniture(Step step) throws IOException {
        COSDictionary page = new COSDictionary();
        page.setItem(COSName.TYPE, COSName.getPDFName("Page"));
        out.beginMarkedContent(PageContent.ARTIFACT, PDPropertyList.create(page));
        step.paint();
        out.endMarkedContent();
    }

    void form(PDFormXObject form) throws IOException {
        out.drawForm(form);
    }

    void line(double x1, double y1, double x2, double y2, Painted.Line style) throws IOException {
        out.saveGraphicsState();
        pen(style);
        out.moveTo((float) x1, (float) y1);
        out.lineTo((float) x2, (float) y2);
        out.stroke();
        out.restoreGraphicsState();
    }

    void rectangle(double x, double y, double width, double height, Painted.Line style) throws IOException {
        out.saveGraphicsState();
        pen(style);
        out.addRect((float) x, (float) y, (float) width, (float) height);
        out.stroke();
        out.restoreGraphicsState();
    }

    void fill(double x, double y, double width, double height, int colour, double opacity) throws IOException {
        out.saveGraphicsState();
        if (opacity < 1) {
            PDExtendedGraphicsState state = new PDExtendedGraphicsState();
            state.setNonStrokingAlphaConstant((float) opacity);
            out.setGraphicsStateParameters(state);
        }
        inkOf(colour);
        out.addRect((float) x, (float) y, (float) width, (float) height);
        out.fill();
        out.restoreGraphicsState();
    }

    void paint(List<? extends Painted> all) throws IOException {
        for (Painted one : all) {
            if (one instanceof Painted.Path path) {
                path(path);
            } else if (one instanceof Painted.Words words) {
                words(words);
            }
        }
    }

    void path(Painted.Path path) throws IOException {
        out.saveGraphicsState();
        if (!path.clip().isEmpty()) {
            trace(path.clip());
            out.clip();
        }
        if (path.fill().isPresent()) {
            inkOf(path.fill().get());
        }
        if (path.line().isPresent()) {
            pen(path.line().get());
        }
        trace(path.chains());
        if (path.fill().isPresent() && path.line().isPresent()) {
            out.fillAndStroke();
        } else if (path.fill().isPresent()) {
            out.fill();
        } else {
            out.stroke();
        }
        out.restoreGraphicsState();
    }

    private void trace(List<Chain> chains) throws IOException {
        for (Chain chain : chains) {
            List<Point> points = chain.points();
            out.moveTo(
                    (float) (points.get(0).x() / 1000.0), (float) (points.get(0).y() / 1000.0));
            for (Point point : points.subList(1, points.size())) {
                out.lineTo((float) (point.x() / 1000.0), (float) (point.y() / 1000.0));
            }
            if (chain.closed()) {
                out.closePath();
            }
        }
    }

    void words(Painted.Words words) throws IOException {
        words(words, 1);
    }

    /** Writes plain words from left to right. */
    void words(double x, double y, double size, String words) throws IOException {
        words(new Painted.Words(words, x, y, size, 0, Anchor.START, false, BLACK));
    }

    void words(Painted.Words words, double opacity) throws IOException {
        String shown = typeface.shown(words.words());
        if (shown.isBlank() || !(words.size() > 0)) {
            return;
        }
        double width = typeface.width(shown) * words.size();
        double before = switch (words.anchor()) {
            case START -> 0;
            case MIDDLE -> -width / 2;
            case END -> -width;
        };
        double cos = StrictMath.cos(words.radians());
        double sin = StrictMath.sin(words.radians());
        out.saveGraphicsState();
        if (opacity < 1) {
            PDExtendedGraphicsState state = new PDExtendedGraphicsState();
            state.setNonStrokingAlphaConstant((float) opacity);
            state.setStrokingAlphaConstant((float) opacity);
            out.setGraphicsStateParameters(state);
        }
        inkOf(words.colour());
        out.beginText();
        out.setFont(typeface.font(), (float) words.size());
        if (words.bold()) {
            pen(Painted.Line.of(words.colour(), words.size() * 0.035));
            out.setRenderingMode(RenderingMode.FILL_STROKE);
        }
        out.setTextMatrix(new Matrix(
                (float) cos, (float) sin, (float) sin, (float) -cos, (float) (words.x() + cos * before), (float)
                        (words.y() + sin * before)));
        out.showText(shown);
        out.endText();
        out.restoreGraphicsState();
    }

    /** Returns how wide words come out, in millimetres. */
    double width(String words, double size) throws IOException {
        return typeface.width(typeface.shown(words)) * size;
    }

    private void inkOf(int colour) throws IOException {
        out.setNonStrokingColor(channel(colour >> 16), channel(colour >> 8), channel(colour));
    }

    private void pen(Painted.Line line) throws IOException {
        out.setStrokingColor(channel(line.colour() >> 16), channel(line.colour() >> 8), channel(line.colour()));
        out.setLineWidth((float) line.width());
        float[] dashes = new float[line.dashes().size()];
        for (int i = 0; i < dashes.length; i++) {
            dashes[i] = line.dashes().get(i).floatValue();
        }
        out.setLineDashPattern(dashes, 0);
        if (line.opacity() < 1) {
            PDExtendedGraphicsState state = new PDExtendedGraphicsState();
            state.setStrokingAlphaConstant((float) line.opacity());
            out.setGraphicsStateParameters(state);
        }
    }

    private static float channel(int bits) {
        return (bits & 0xff) / 255f;
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
