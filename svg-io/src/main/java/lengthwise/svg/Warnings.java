package lengthwise.svg;

import java.util.ArrayList;
import java.util.List;

/** Sentences for the maker, each once, and no more of them than can be read. */
final class Warnings {
    private static final int MOST = 50;

    private final List<String> sentences = new ArrayList<>();

    void add(String sentence) {
        if (sentences.size() < MOST && !sentences.contains(sentence)) {
            sentences.add(sentence);
        }
    }

    List<String> sentences() {
        return sentences;
    }
}
