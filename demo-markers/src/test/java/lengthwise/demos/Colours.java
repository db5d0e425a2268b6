package lengthwise.demos;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.w3c.dom.Element;

/** Contrast after WCAG 2.1: relative luminance of sRGB, and (lighter + 0.05) / (darker + 0.05). */
final class Colours {
    private Colours() {}

    /** Returns the colours that a pattern's group finds, each once. */
    static List<String> named(String text, String pattern) {
        return Pattern.compile(pattern)
                .matcher(text)
                .results()
                .map((MatchResult found) -> found.group(1))
                .distinct()
                .toList();
    }

    static String inherited(Element element, String attribute) {
        return element.hasAttribute(attribute) || !(element.getParentNode() instanceof Element parent)
                ? element.getAttribute(attribute)
                : inherited(parent, attribute);
    }

    static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String colour) {
        int rgb = Integer.parseInt(colour.substring(1), 16);
        return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8 & 0xff) + 0.0722 * linear(rgb & 0xff);
    }

    /** Returns the light of a channel's value, from 0 to 1. */
    static double linear(int value) {
        double share = value / 255.0;
        return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
