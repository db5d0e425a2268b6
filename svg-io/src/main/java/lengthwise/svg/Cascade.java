package lengthwise.svg;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.drawing.DrawingException;
import org.apache.batik.anim.dom.SVGDOMImplementation;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.apache.batik.css.engine.CSSContext;
import org.apache.batik.css.engine.CSSEngine;
import org.apache.batik.css.engine.CSSEngineUserAgent;
import org.apache.batik.css.engine.CSSStylableElement;
import org.apache.batik.css.engine.StyleMap;
import org.apache.batik.css.engine.value.Value;
import org.apache.batik.css.engine.value.ValueConstants;
import org.apache.batik.util.ParsedURL;
import org.w3c.dom.DOMException;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * What style sheets, style attributes and presentation attributes declare for an element, by Batik's CSS engine. What
 * is inherited is not filled in: the same element may be drawn in several places.
 */
final class Cascade {
    /** Rules times elements; beyond it, matching would take minutes. */
    private static final long MOST_MATCHES = 20_000_000;

    private final CSSEngine engine;
    private final List<String> properties;
    private final IdentityHashMap<Element, Map<String, String>> known = new IdentityHashMap<>();
    private final List<String> complaints = new ArrayList<>();

    /** @param properties the names of those that are asked for */
    Cascade(SVGOMDocument document, String file, List<String> properties) throws DrawingException {
        this.properties = properties;
        tame(document, file);
        // The engine names the document where a sheet cannot be read, and fails where it has no name.
        document.setParsedURL(new ParsedURL("file:/drawing.svg"));
        engine = ((SVGDOMImplementation) document.getImplementation()).createCSSEngine(document, new NoScreen());
        engine.setCSSEngineUserAgent(new CSSEngineUserAgent() {
            @Override
            public void displayError(Exception e) {
                complaints.add(String.valueOf(e.getMessage()).split("\n", 2)[0]);
            }

            @Override
            public void displayMessage(String message) {
                complaints.add(message);
            }
        });
        document.setCSSEngine(engine);
    }

    /** Takes out imports, which would be fetched, and bounds the work of matching. */
    private static void tame(SVGOMDocument document, String file) throws DrawingException {
        NodeList styles = document.getElementsByTagNameNS(SafeXml.SVG, "style");
        long rules = 0;
        for (int i = 0; i < styles.getLength(); i++) {
            String sheet = styles.item(i).getTextContent();
            rules += sheet.chars().filter(c -> c == '{' || c == ',').count();
            if (sheet.contains("@import")) {
                styles.item(i).setTextContent(sheet.replaceAll("@import[^;{}]*;?", ""));
            }
        }
        if (rules > 0) {
            long elements = document.getElementsByTagNameNS("*", "*").getLength();
            if (rules * elements > MOST_MATCHES) {
                throw new DrawingException(file + ": " + rules + " style rules on " + elements
                        + " elements are too many; export the drawing with plain attributes.");
            }
        }
    }

    /** Returns what is declared for this element alone: the properties asked for, as text. */
    Map<String, String> of(Element element) {
        return known.computeIfAbsent(element, this::declared);
    }

    private Map<String, String> declared(Element element) {
        Map<String, String> declared = new HashMap<>();
        try {
            StyleMap values = engine.getCascadedStyleMap((CSSStylableElement) element, null);
            for (String property : properties) {
                Value value = values.getValue(engine.getPropertyIndex(property));
                if (value != null && value != ValueConstants.INHERIT_VALUE) {
                    declared.put(property, value.getCssText());
                }
            }
        } catch (DOMException | ClassCastException e) {
            complaints.add(String.valueOf(e.getMessage()).split("\n", 2)[0]);
        }
        return declared;
    }

    /** Returns what the engine could not understand. */
    List<String> complaints() {
        return List.copyOf(complaints);
    }

    /** Answers the engine's questions about a screen that is not there, and forbids it to load anything. */
    private static final class NoScreen implements CSSContext {
        @Override
        public Value getSystemColor(String ident) {
            return ValueConstants.BLACK_RGB_VALUE;
        }

        @Override
        public Value getDefaultFontFamily() {
            return ValueConstants.NONE_VALUE;
        }

        @Override
        public float getLighterFontWeight(float weight) {
            return 300;
        }

        @Override
        public float getBolderFontWeight(float weight) {
            return 700;
        }

        @Override
        public float getPixelUnitToMillimeter() {
            return (float) SvgLength.PIXEL;
        }

        @Override
        @Deprecated
        public float getPixelToMillimeter() {
            return (float) SvgLength.PIXEL;
        }

        @Override
        public float getMediumFontSize() {
            return 16;
        }

        @Override
        public float getBlockWidth(Element element) {
            return 0;
        }

        @Override
        public float getBlockHeight(Element element) {
            return 0;
        }

        @Override
        public void checkLoadExternalResource(ParsedURL resource, ParsedURL document) {
            throw new SecurityException("A drawing may not load " + resource + ".");
        }

        @Override
        public boolean isDynamic() {
            return false;
        }

        @Override
        public boolean isInteractive() {
            return false;
        }

        @Override
        public CSSEngine getCSSEngineForElement(Element element) {
            return ((SVGOMDocument) element.getOwnerDocument()).getCSSEngine();
        }
    }
}
