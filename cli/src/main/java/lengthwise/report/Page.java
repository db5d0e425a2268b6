package lengthwise.report;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import lengthwise.svg.Markup;

/** The frame of an HTML page of ours: one file, no script, nothing fetched, made to be printed on A4 or letter. */
final class Page {
    private static final String STYLE = """

            @page { margin: 12mm; }
            * { box-sizing: border-box; }
            body { font: 10pt/1.45 Arial, Helvetica, 'Liberation Sans', sans-serif; color: #1c2a30;
              max-width: 190mm; margin: 8mm auto; padding: 0 4mm; }
            h1 { font-size: 19pt; font-weight: 600; margin: 0 0 1mm; }
            h2 { font-size: 14pt; font-weight: 600; margin: 0 0 2mm; padding-top: 3mm; border-top: 0.6mm solid #1c2a30; }
            h3 { font-size: 10.5pt; margin: 5mm 0 1.5mm; break-after: avoid; }
            p { margin: 1mm 0; }
            p, li, td { overflow-wrap: anywhere; }
            ul, ol { margin: 1mm 0; padding-left: 8mm; }
            li { margin: 0.6mm 0; }
            section { margin-top: 9mm; }
            a { color: #1d4f91; }
            .quiet { color: #56646a; }
            .picture { display: block; margin: 3mm 0; break-inside: avoid; }
            .figures { display: flex; flex-wrap: wrap; gap: 2mm 9mm; margin: 3mm 0; }
            .figures div { break-inside: avoid; }
            .figures span { display: block; font-size: 8.5pt; color: #56646a; }
            .figures b { font-size: 12pt; }
            table { border-collapse: collapse; width: 100%; margin: 1.5mm 0; }
            th { text-align: left; font-size: 8.5pt; font-weight: 600; color: #56646a; vertical-align: bottom; }
            th, td { padding: 0.8mm 2mm 0.8mm 0; border-bottom: 0.2mm solid #c9cfd1; }
            tr { break-inside: avoid; }
            thead { display: table-header-group; }
            .together { break-inside: avoid; }
            td.number + td, th.number + th { padding-left: 3mm; }
            .number { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
            .sum td { font-weight: 600; border-bottom: none; }
            .box { display: inline-block; width: 3.6mm; height: 3.6mm; border: 0.3mm solid #1c2a30; margin-right: 1mm;
              vertical-align: -0.6mm; }
            .tint { display: inline-block; width: 4.4mm; height: 4.2mm; border: 0.2mm solid #1c2a30; margin-right: 2mm;
              font: 600 7.5pt/3.8mm Arial, Helvetica, 'Liberation Sans', sans-serif; text-align: center;
              print-color-adjust: exact; -webkit-print-color-adjust: exact; }
            .cuts td { vertical-align: top; padding: 0.6mm 2mm 0.6mm 0; }
            .cuts td:first-child, .cuts th:first-child { width: 36mm; font-weight: 600; }
            .cuts b { font-weight: 600; }
            .cut { display: inline-block; margin-right: 3mm; }
            .edges td:last-child, .edges th:last-child { width: 45%; }
            .tick { white-space: nowrap; }
            .wrong { font-weight: 700; text-decoration: underline; }
            .sheet { font-size: 8.5pt; }
            .sheet th, .sheet td { padding: 0.6mm 1.4mm 0.6mm 0; }
            .sheet td.number + td, .sheet th.number + th { padding-left: 1mm; }
            .sheet td.number.end, .sheet th.number.end { padding-left: 4mm; }
            .sheet th.over { text-align: center; padding-left: 4mm; }
            @media print {
              body { max-width: none; margin: 0; padding: 0; }
              section.fabric + section.fabric { break-before: page; margin-top: 0; }
            }
            """;

    private final Markup html = new Markup();

    Page(String title) {
        html.htmlDeclaration().open("html", "lang", "en").open("head");
        html.empty("meta", "charset", "utf-8");
        html.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        html.element("title", title).element("style", STYLE).close().line();
        html.open("body").line();
    }

    /** Returns where the content is written to. */
    Markup content() {
        return html;
    }

    /** Ends the page and returns its text. */
    String text() {
        return html.close().close().line().toString();
    }

    /** Writes a link to a file beside the page, by its name, which is there on paper too. */
    static void link(Markup html, String fileName) {
        html.element("a", fileName, "href", href(fileName));
    }

    /** A link beside this page; letters that a link may not hold are written by their bytes. */
    static String href(String fileName) {
        StringBuilder link = new StringBuilder("./");
        for (byte b : fileName.getBytes(StandardCharsets.UTF_8)) {
            char c = (char) (b & 0xff);
            if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || "-_.".indexOf(c) >= 0) {
                link.append(c);
            } else {
                link.append('%')
                        .append(Character.toUpperCase(Character.forDigit(c >> 4, 16)))
                        .append(Character.toUpperCase(Character.forDigit(c & 15, 16)));
            }
        }
        return link.toString();
    }

    static void cells(Markup html, String kind, String... texts) {
        html.open("tr");
        for (String text : texts) {
            html.element(kind, text);
        }
        html.close().line();
    }

    /**
     * Opens a picture; a unit of it is a millimetre on paper where there is room.
     *
     * @param shows what it shows, for who cannot see it
     * @param more attributes and their values
     */
    static void openPicture(Markup html, String wide, String high, String shows, String... more) {
        List<String> attributes = new ArrayList<>(List.of("xmlns", Markup.SVG, "class", "picture"));
        attributes.addAll(List.of("viewBox", "0 0 " + wide + " " + high));
        attributes.addAll(List.of("style", "width: " + wide + "mm; max-width: 100%"));
        attributes.addAll(List.of("role", "img", "aria-label", shows));
        attributes.addAll(List.of(more));
        html.open("svg", attributes.toArray(String[]::new));
    }

    static void list(Markup html, String kind, Iterable<String> items) {
        html.open(kind).line();
        for (String item : items) {
            html.element("li", item).line();
        }
        html.close().line();
    }
}
