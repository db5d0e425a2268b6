package lengthwise.pdf;

import java.awt.geom.AffineTransform;
import java.util.Optional;

/** What holds for what is painted next, saved and restored together (ISO 32000-1, 8.4 and 9.3). */
final class GraphicsState {
    AffineTransform toPage;
    boolean dashed;
    boolean lineShows = true;
    boolean fillShows = true;
    Optional<Letters> font = Optional.empty();
    double fontSize;
    double letterSpacing;
    double wordSpacing;
    double stretch = 1;
    double leading;
    double rise;
    int textMode;

    GraphicsState(AffineTransform toPage) {
        this.toPage = new AffineTransform(toPage);
    }

    GraphicsState(GraphicsState other) {
        toPage = new AffineTransform(other.toPage);
        dashed = other.dashed;
        lineShows = other.lineShows;
        fillShows = other.fillShows;
        font = other.font;
        fontSize = other.fontSize;
        letterSpacing = other.letterSpacing;
        wordSpacing = other.wordSpacing;
        stretch = other.stretch;
        leading = other.leading;
        rise = other.rise;
        textMode = other.textMode;
    }

    void transform(AffineTransform map) {
        toPage.concatenate(map);
    }
}
