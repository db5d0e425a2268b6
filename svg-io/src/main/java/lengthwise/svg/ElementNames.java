package lengthwise.svg;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lengthwise.drawing.Names;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Reads what an element is called from the places where drawing programs keep the names a maker typed. */
final class ElementNames {
    static final String INKSCAPE = "http://www.inkscape.org/namespaces/inkscape";
    private static final String SERIF = "http://www.serif.com/";

    /** A character that may not stand in an id, written as its number: {@code _x20_} is a space. */
    private static final Pattern ESCAPE = Pattern.compile("_x([0-9A-Fa-f]{2,6})_");

    /** The counter that keeps ids apart whose typed names are the same: {@code Back_2_}. */
    private static final Pattern COUNTER = Pattern.compile("_\\d+_$");

    private static final Pattern MADE_UP = Pattern.compile("use[-_\\d]*");

    private ElementNames() {}

    static Names of(Element element) {
        Optional<String> id = attribute(element.getAttribute("id"));
        Optional<String> label = Stream.of(
                        element.getAttributeNS(INKSCAPE, "label"),
                        element.getAttributeNS(SERIF, "id"),
                        element.getAttribute("data-name"),
                        title(element))
                .map(ElementNames::attribute)
                .flatMap(Optional::stream)
                .findFirst()
                .or(() -> id.flatMap(ElementNames::typed));
        String classes = element.getAttribute("class").strip();
        return new Names(label, id, classes.isEmpty() ? List.of() : Arrays.asList(classes.split("\\s+")));
    }

    /** Returns what a shape is called where it is used: by the name of its use, unless a program made that up. */
    static Names ofUse(Element use, Element target) {
        Names own = of(use);
        Names of = of(target);
        boolean named = own.label().isPresent()
                || own.id().filter(id -> !MADE_UP.matcher(id).matches()).isPresent();
        List<String> classes = Stream.concat(own.classes().stream(), of.classes().stream())
                .distinct()
                .toList();
        return named ? new Names(own.label(), own.id(), classes) : new Names(of.label(), of.id(), classes);
    }

    private static Optional<String> attribute(String text) {
        return Optional.of(text.strip()).filter(name -> !name.isEmpty());
    }

    private static String title(Element element) {
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element e && "title".equals(e.getLocalName())) {
                return e.getTextContent();
            }
        }
        return "";
    }

    /** Returns the name that was typed, if the id shows that it encodes one. */
    private static Optional<String> typed(String id) {
        String plain = COUNTER.matcher(id).replaceFirst("");
        Matcher escape = ESCAPE.matcher(plain);
        String decoded = escape.replaceAll(match -> {
            int code = Integer.parseInt(match.group(1), 16);
            return Matcher.quoteReplacement(
                    Character.isValidCodePoint(code) ? Character.toString(code) : match.group());
        });
        return decoded.equals(id) || decoded.isBlank() ? Optional.empty() : Optional.of(decoded.strip());
    }
}
