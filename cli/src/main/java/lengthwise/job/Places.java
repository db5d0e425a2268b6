package lengthwise.job;

import java.util.HashMap;
import java.util.Map;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Where every key of a job file stands. */
final class Places {
    private final Map<String, Place> byKey = new HashMap<>();

    Places(Entry root) throws JobException {
        add(root);
    }

    private void add(Entry entry) throws JobException {
        byKey.put(entry.key(), entry.keyPlace());
        if (entry.node() instanceof MappingNode) {
            for (Entry child : entry.named("").values()) {
                add(child);
            }
        } else if (entry.node() instanceof SequenceNode) {
            for (Entry item : entry.items("")) {
                add(item);
            }
        }
    }

    /** Returns a complaint at the place of a key, or of the nearest key above it. */
    JobException complaint(String key, String what) {
        String at = key;
        while (!byKey.containsKey(at)) {
            int end = Math.max(at.lastIndexOf('.'), at.lastIndexOf('['));
            at = end < 0 ? "" : at.substring(0, end);
        }
        return Entry.complaint(byKey.getOrDefault(at, new Place("", 1, 1)), key, what);
    }
}
