package lengthwise.svg;

import lengthwise.drawing.Names;
import org.w3c.dom.Element;

/** Says in a sentence which element it is about. */
final class ElementWords {
    private ElementWords() {}

    /** Returns its place as a sentence begins: "Line 12". */
    static String at(Element element) {
        return "L" + place(element).substring(1);
    }

    /** Returns its place: "line 12". */
    static String place(Element element) {
        return "line " + element.getAttribute(SafeXml.PLACE).split(":", 2)[0];
    }

    /** Returns its label or id in quotes, else its kind. */
    static String spoken(Element element) {
        Names names = ElementNames.of(element);
        return names.label()
                .or(names::id)
                .map(name -> "'" + name + "'")
                .orElseGet(() -> "<" + element.getLocalName() + ">");
    }
}
