package lengthwise.svg;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParser;
import javax.xml.parsers.SAXParserFactory;
import lengthwise.drawing.DrawingException;
import org.apache.batik.anim.dom.SVGDOMImplementation;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.DOMException;
import org.w3c.dom.Element;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.Locator;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.XMLReader;
import org.xml.sax.ext.DefaultHandler2;

/**
 * Reads an XML file that nobody vouches for into a document: no other file, no network, no script, no style sheet by
 * reference; size, depth, number of elements and entities bounded. Gzip is known by its first bytes.
 */
final class SafeXml {
    static final String SVG = Markup.SVG;

    /** The attribute that keeps where an element stands: {@code line:column}. */
    static final String PLACE = "data-place-in-file";

    /** The namespace given to elements that claim to be SVG's and are of no known kind. */
    static final String UNKNOWN = "no-svg";

    private static final int MOST_BYTES = 64 << 20;
    private static final int DEEPEST = 200;
    private static final int MOST_ELEMENTS = 200_000;
    private static final String JDK_LIMIT = "http://www.oracle.com/xml/jaxp/properties/";

    private SafeXml() {}

    /**
     * A document that was read.
     *
     * @param generator what the comments before the root say, joined
     */
    record Read(SVGOMDocument document, String generator) {}

    static Read read(Path file) throws DrawingException {
        return read(file.toString(), bytes(file));
    }

    /** Reads a document from bytes that are not compressed; complaints call it by a name. */
    static Read read(String file, byte[] bytes) throws DrawingException {
        if (Doctype.isCutShort(bytes)) {
            throw new DrawingException(
                    file + ": not a readable SVG drawing: it ends within its DOCTYPE; export the drawing again.");
        }
        Builder builder = new Builder();
        try {
            XMLReader reader = parser().getXMLReader();
            reader.setContentHandler(builder);
            reader.setEntityResolver(builder);
            reader.setErrorHandler(builder);
            reader.setProperty("http://xml.org/sax/properties/lexical-handler", builder);
            reader.parse(new InputSource(new ByteArrayInputStream(bytes)));
        } catch (SAXParseException e) {
            throw new DrawingException(
                    "%s, line %d, column %d: not a readable SVG drawing: %s"
                            .formatted(file, e.getLineNumber(), e.getColumnNumber(), sentence(e)),
                    e);
        } catch (SAXException | IOException | DOMException e) {
            throw new DrawingException(file + ": not a readable SVG drawing: " + sentence(e), e);
        }
        return builder.result(file);
    }

    private static String sentence(Exception e) {
        return String.valueOf(e.getMessage()).split("\n", 2)[0];
    }

    private static byte[] bytes(Path file) throws DrawingException {
        try {
            if (Files.isDirectory(file)) {
                throw new DrawingException(file + " is a folder; name an SVG file.");
            }
            try (InputStream in = Files.newInputStream(file)) {
                byte[] raw = bounded(in, file);
                if (raw.length == 0) {
                    throw new DrawingException(file + " is empty; export the drawing again.");
                }
                if (raw.length > 2 && (raw[0] & 0xff) == 0x1f && (raw[1] & 0xff) == 0x8b) {
                    return bounded(new GZIPInputStream(new ByteArrayInputStream(raw)), file);
                }
                return raw;
            }
        } catch (NoSuchFileException e) {
            throw new DrawingException("There is no file " + file + "; check the name and the folder.", e);
        } catch (ZipException | java.io.EOFException e) {
            throw new DrawingException(file + ": its compressed content is damaged; export the drawing again.", e);
        } catch (IOException e) {
            throw new DrawingException(file + ": cannot be opened: " + sentence(e), e);
        }
    }

    private static byte[] bounded(InputStream in, Path file) throws IOException, DrawingException {
        byte[] bytes = in.readNBytes(MOST_BYTES + 1);
        if (bytes.length > MOST_BYTES) {
            throw new DrawingException(
                    file + ": more than 64 MB of drawing; take pictures out of it and export it again.");
        }
        return bytes;
    }

    private static SAXParser parser() throws SAXException {
        try {
            SAXParserFactory factory = SAXParserFactory.newDefaultNSInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
            factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            SAXParser parser = factory.newSAXParser();
            parser.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
            parser.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
            parser.setProperty(JDK_LIMIT + "entityExpansionLimit", "1000");
            parser.setProperty(JDK_LIMIT + "totalEntitySizeLimit", "1000000");
            parser.setProperty(JDK_LIMIT + "elementAttributeLimit", "1000");
            return parser;
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("The XML parser of this Java cannot be made safe.", e);
        }
    }

    /** Builds the document from what the parser reports, and stops it at the bounds. */
    private static final class Builder extends DefaultHandler2 {
        private final SVGOMDocument document =
                (SVGOMDocument) SVGDOMImplementation.getDOMImplementation().createDocument(SVG, "svg", null);
        private final StringBuilder generator = new StringBuilder();
        private final StringBuilder text = new StringBuilder();
        private @Nullable Locator locator;
        private @Nullable Element open;
        private int depth;
        private int elements;

        @Override
        public void setDocumentLocator(Locator locator) {
            this.locator = locator;
        }

        @Override
        public void startElement(String uri, String localName, String name, Attributes attributes) throws SAXException {
            if (++depth > DEEPEST) {
                throw refused("groups are nested more than " + DEEPEST + " deep; ungroup them");
            }
            if (++elements > MOST_ELEMENTS) {
                throw refused("it has more than " + MOST_ELEMENTS + " elements; remove textures and pictures");
            }
            Element element;
            if (open == null) {
                if (!uri.equals(SVG) || !localName.equals("svg")) {
                    throw refused("its first element is <" + name + ">, not <svg> with xmlns=\"" + SVG + "\"");
                }
                element = document.getDocumentElement();
            } else {
                flushText(open);
                element = element(uri, localName, name);
                open.appendChild(element);
            }
            for (int i = 0; i < attributes.getLength(); i++) {
                String space = attributes.getURI(i);
                element.setAttributeNS(space.isEmpty() ? null : space, attributes.getQName(i), attributes.getValue(i));
            }
            if (locator != null) {
                element.setAttributeNS(null, PLACE, locator.getLineNumber() + ":" + locator.getColumnNumber());
            }
            open = element;
        }

        /** Creates an element. Batik refuses those that SVG 1.1 does not know, such as {@code flowRoot}. */
        private Element element(String uri, String localName, String name) {
            try {
                return document.createElementNS(uri.isEmpty() ? null : uri, name);
            } catch (DOMException unknown) {
                if (!uri.equals(SVG)) {
                    throw unknown;
                }
                return document.createElementNS(UNKNOWN, localName);
            }
        }

        @Override
        public void endElement(String uri, String localName, String name) {
            depth--;
            if (open != null) {
                flushText(open);
                open = open.getParentNode() instanceof Element parent ? parent : null;
            }
        }

        @Override
        public void characters(char[] chars, int start, int length) {
            text.append(chars, start, length);
        }

        private void flushText(Element into) {
            if (!text.isEmpty()) {
                into.appendChild(document.createTextNode(text.toString()));
                text.setLength(0);
            }
        }

        @Override
        public void comment(char[] chars, int start, int length) {
            if (elements == 0) {
                generator.append(chars, start, Math.min(length, 1000)).append('\n');
            }
        }

        @Override
        public InputSource resolveEntity(String publicId, String systemId) {
            return new InputSource(new StringReader(""));
        }

        @Override
        public InputSource resolveEntity(String name, String publicId, String baseUri, String systemId) {
            return new InputSource(new StringReader(""));
        }

        @Override
        public void fatalError(SAXParseException e) throws SAXException {
            throw e;
        }

        private SAXParseException refused(String why) {
            return new SAXParseException(why, locator);
        }

        private Read result(String file) throws DrawingException {
            if (elements == 0) {
                throw new DrawingException(file + ": there is no drawing in it.");
            }
            return new Read(document, generator.toString());
        }
    }
}
