package lengthwise.demos;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Elements of a page, in the order in which they stand in it. */
final class Elements {
    private Elements() {}

    static List<Element> of(Document page, String... names) {
        return of(page.getDocumentElement(), names);
    }

    /** Returns those of all these names, however deep. */
    static List<Element> of(Element within, String... names) {
        List<String> wanted = List.of(names);
        NodeList all = within.getElementsByTagName("*");
        return IntStream.range(0, all.getLength())
                .mapToObj(i -> (Element) all.item(i))
                .filter(element -> wanted.contains(element.getTagName()))
                .toList();
    }

    /** Returns the texts of the cells of a row. */
    static List<String> cells(Element row) {
        return of(row, "td", "th").stream().map(Element::getTextContent).toList();
    }

    /** Returns the rows of a table's body. */
    static List<List<String>> rows(Element table) {
        return of(table, "tbody").stream()
                .flatMap(body -> of(body, "tr").stream())
                .map(Elements::cells)
                .toList();
    }

    /** Returns the first table behind a heading that begins so, within a section. */
    static Element tableBehind(Element section, String heading) {
        Stream<Element> parts = of(section, "h3", "table").stream()
                .dropWhile(part -> !(part.getTagName().equals("h3")
                        && part.getTextContent().startsWith(heading)));
        return parts.filter(part -> part.getTagName().equals("table"))
                .findFirst()
                .orElseThrow();
    }
}
