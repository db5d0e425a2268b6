package lengthwise.svg;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * Writes XML, or HTML that is XML as well, to a string: everything is escaped by the JDK's stream writer, characters
 * that XML cannot hold become U+FFFD, and lines end in a line feed on every system.
 */
public final class Markup {
    /** The namespace of SVG. */
    public static final String SVG = "http://www.w3.org/2000/svg";

    private final StringWriter text = new StringWriter();
    private final XMLStreamWriter xml;

    public Markup() {
        try {
            xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Writes the first line of an XML file, which is then stored in UTF-8. */
    public Markup xmlDeclaration() {
        return write(() -> xml.writeProcessingInstruction("xml", "version=\"1.0\" encoding=\"UTF-8\""))
                .line();
    }

    public Markup htmlDeclaration() {
        return write(() -> xml.writeDTD("<!DOCTYPE html>")).line();
    }

    /**
     * Opens an element.
     *
     * @param attributes names and values in turn
     */
    public Markup open(String element, String... attributes) {
        write(() -> xml.writeStartElement(element));
        return attributes(attributes);
    }

    /**
     * Opens an SVG drawing at true size: one unit is one millimetre.
     *
     * @param left of what is shown, in millimetres like the rest
     * @param attributes names and values in turn, beside those of the page
     */
    public Markup openDrawing(double left, double top, double width, double height, String... attributes) {
        String wide = Millimetres.of(width);
        String high = Millimetres.of(height);
        open("svg", "xmlns", SVG, "version", "1.1", "width", wide + "mm", "height", high + "mm");
        attributes("viewBox", String.join(" ", Millimetres.of(left), Millimetres.of(top), wide, high));
        return attributes(attributes);
    }

    /** Adds an attribute to the element just opened, where there is something to say. */
    Markup attributeIfAny(String name, String value) {
        return value.isEmpty() ? this : attributes(name, value);
    }

    public Markup close() {
        return write(xml::writeEndElement);
    }

    /** Writes an element that has no content. */
    public Markup empty(String element, String... attributes) {
        write(() -> xml.writeEmptyElement(element));
        return attributes(attributes);
    }

    /** Writes an element that holds only text. */
    public Markup element(String element, String content, String... attributes) {
        return open(element, attributes).text(content).close();
    }

    public Markup text(String content) {
        return write(() -> xml.writeCharacters(legal(content)));
    }

    /** Writes a comment, on lines of its own. */
    public Markup comment(String words) {
        // Two hyphens would end it.
        String harmless = legal(words).replace('-', '\u2010');
        return write(() -> xml.writeComment(" " + harmless + " ")).line();
    }

    public Markup line() {
        return text("\n");
    }

    @Override
    public String toString() {
        write(xml::flush);
        return text.toString();
    }

    private Markup attributes(String... namesAndValues) {
        for (int i = 0; i < namesAndValues.length; i += 2) {
            String name = namesAndValues[i];
            String value = legal(namesAndValues[i + 1]);
            write(() -> xml.writeAttribute(name, value));
        }
        return this;
    }

    private static String legal(String content) {
        boolean allLegal = content.codePoints().allMatch(Markup::isLegal);
        return allLegal
                ? content
                : content.codePoints()
                        .map(c -> isLegal(c) ? c : 0xFFFD)
                        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                        .toString();
    }

    /** The characters of XML 1.0, section 2.2, without the carriage return that a reader would change. */
    private static boolean isLegal(int c) {
        return c == '\t' || c == '\n' || (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD) || c >= 0x10000;
    }

    private Markup write(Step step) {
        try {
            step.run();
        } catch (XMLStreamException e) {
            // A string writer does not fail; what is left are elements closed twice.
            throw new IllegalStateException(e);
        }
        return this;
    }

    private interface Step {
        void run() throws XMLStreamException;
    }
}
