package lengthwise.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.FabricRun.Assumption;

/** Gathers what was not said and therefore assumed, each once. */
final class Assumptions {
    private final Map<String, String> texts = new LinkedHashMap<>();

    /** Notes an assumption, a sentence. */
    void note(String text) {
        texts.putIfAbsent(text, "");
    }

    /** Notes an assumption and what the other choice would mean, a sentence each. */
    void note(String text, String otherChoice) {
        texts.putIfAbsent(text, otherChoice);
    }

    List<Assumption> list() {
        return texts.entrySet().stream()
                .map(entry -> new Assumption(entry.getKey(), entry.getValue()))
                .toList();
    }
}
