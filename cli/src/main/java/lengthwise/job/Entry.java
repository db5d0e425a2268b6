package lengthwise.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * A value of the job file with its key and its place: every complaint about it names both.
 *
 * @param key the whole way to it: {@code fabrics.reef-print.width}, {@code order[2].make}; items count from 1
 * @param name the last part of the key, as written
 * @param keyPlace where the key stands; for an item of a list and for the root, where the value begins
 */
record Entry(String file, String key, String name, Place keyPlace, Node node) {
    /** Longer names fit on no label. */
    private static final int LONGEST_NAME = 100;

    private static final int LONGEST_TEXT = 500;

    private static final Pattern TIGHT_COLON = Pattern.compile("[\\w -]+:[^ ].*", Pattern.DOTALL);

    static Entry root(String file, Node node) {
        return new Entry(file, "", "", place(file, node), node);
    }

    /** What a value of one kind is read by. */
    interface Reading<T> {
        T of(Entry entry) throws JobException;
    }

    /** A step of reading that complains in one clause, without a place. */
    interface Step<T> {
        T take() throws JobException;
    }

    /** Takes a step; what it complains of is a complaint about the value. */
    <T> T placing(Step<T> step) throws JobException {
        try {
            return step.take();
        } catch (JobException unplaced) {
            throw error(String.valueOf(unplaced.getMessage()));
        }
    }

    /** A complaint about the value. */
    JobException error(String what) {
        return complaint(place(file, node), key, what);
    }

    /** A complaint about a key that has to be in this part and is not. */
    JobException missing(String absent, String write) {
        return complaint(keyPlace, key.isEmpty() ? absent : key + "." + absent, "it is missing; write " + write);
    }

    /** A complaint about the key. */
    JobException keyError(String what) {
        return complaint(keyPlace, key, what);
    }

    static JobException complaint(Place place, String key, String what) {
        return new JobException(place + ": " + (key.isEmpty() ? "" : "key " + key + ": ") + what);
    }

    /** Reads plain text; an empty value is refused. */
    String text(String example) throws JobException {
        if (!(node instanceof ScalarNode scalar)) {
            throw error("found " + found() + "; write " + example);
        }
        String text = scalar.getValue().strip();
        if (text.isEmpty() || isNothing()) {
            throw error("found nothing; write " + example);
        }
        if (text.length() > LONGEST_TEXT) {
            throw error("found " + Quote.of(text) + ", which is too long; use at most " + LONGEST_TEXT + " letters");
        }
        if (Quote.breaksLine(text)) {
            throw error("found " + Quote.of(text) + "; write it on one line");
        }
        return text;
    }

    /** Reads a word that stands for a constant; {@code later} are words that a later version will know. */
    <E extends Enum<E>> E word(Class<E> words, Set<String> later) throws JobException {
        List<String> allowed =
                Arrays.stream(words.getEnumConstants()).map(Entry::word).toList();
        return word(words, allowed, later);
    }

    <E extends Enum<E>> E word(Class<E> words, List<String> allowed, Set<String> later) throws JobException {
        String text = text(choice(allowed));
        for (E constant : words.getEnumConstants()) {
            if (word(constant).equals(text) && allowed.contains(text)) {
                return constant;
            }
        }
        if (later.contains(text)) {
            throw error("%s is not yet supported here; use %s".formatted(Quote.of(text), choice(allowed)));
        }
        throw error("found %s; allowed: %s%s".formatted(Quote.of(text), choice(allowed), meant(text, allowed)));
    }

    /** Returns how a constant is written in the job file. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String choice(List<String> allowed) {
        int last = allowed.size() - 1;
        return last == 0 ? allowed.get(0) : String.join(", ", allowed.subList(0, last)) + " or " + allowed.get(last);
    }

    static String meant(String found, Collection<String> valid) {
        return Spelling.nearest(found, valid)
                .map(name -> "; did you mean " + name + "?")
                .orElse("");
    }

    /** Asks whether one of the keys that are there is a slip for the one that is missing. */
    static String mistaken(String missing, Collection<String> there) {
        return Spelling.nearest(missing, there)
                .map(name -> "; is " + name + " meant for it?")
                .orElse("");
    }

    boolean isText() {
        return node instanceof ScalarNode && !isNothing();
    }

    boolean isMapping() {
        return node instanceof MappingNode;
    }

    /** Says whether there is a key and no value. */
    boolean isNothing() {
        return node instanceof ScalarNode && node.getTag().equals(Tag.NULL);
    }

    List<Entry> items(String example) throws JobException {
        if (!(node instanceof SequenceNode list)) {
            throw error("found " + found() + " where a list is needed; write " + example);
        }
        List<Entry> items = new ArrayList<>();
        for (Node item : list.getValue()) {
            String itemKey = key + "[" + (items.size() + 1) + "]";
            items.add(new Entry(file, itemKey, itemKey, place(file, item), item));
        }
        return items;
    }

    /** Reads {@code name: value} lines with names of the maker's own, in their order. */
    Map<String, Entry> named(String example) throws JobException {
        if (!(node instanceof MappingNode map)) {
            boolean tightColon = node instanceof ScalarNode scalar
                    && TIGHT_COLON.matcher(scalar.getValue()).matches();
            throw error("found " + found()
                    + (tightColon
                            ? "; a colon needs a space behind it"
                            : " where named values are needed; write " + example));
        }
        Map<String, Entry> entries = new LinkedHashMap<>();
        for (NodeTuple tuple : map.getValue()) {
            Entry entry = entry(tuple);
            Entry earlier = entries.putIfAbsent(entry.name, entry);
            if (earlier != null) {
                throw entry.keyError("the key stands here a second time; the first is in line "
                        + earlier.keyPlace.line() + ", keep one of them");
            }
        }
        return entries;
    }

    private Entry entry(NodeTuple tuple) throws JobException {
        Node keyNode = tuple.getKeyNode();
        Place at = place(file, keyNode);
        if (!(keyNode instanceof ScalarNode scalar) || scalar.getValue().isBlank()) {
            throw complaint(at, key, "found a key that is no name; write name: value");
        }
        String text = scalar.getValue().strip();
        if (text.length() > LONGEST_NAME || Quote.breaksLine(text)) {
            throw complaint(
                    at,
                    key,
                    "the name %s is too long or has a line break in it; use at most %d letters on one line"
                            .formatted(Quote.of(text), LONGEST_NAME));
        }
        return new Entry(file, key.isEmpty() ? text : key + "." + text, text, at, tuple.getValueNode());
    }

    /** Reads {@code key: value} lines whose keys are given. */
    Fields fields(String example, String... allowed) throws JobException {
        Map<String, Entry> entries = named(example);
        List<String> keys = List.of(allowed);
        for (Entry entry : entries.values()) {
            if (!keys.contains(entry.name)) {
                throw entry.unknown("there is no such key here", keys);
            }
        }
        return new Fields(this, entries);
    }

    /** A complaint about a key that is none of those allowed here. */
    JobException unknown(String what, List<String> allowed) {
        if (isNothing() && Character.isDigit(name.charAt(0))) {
            return keyError("found %s behind a comma, and a comma begins a new key; write numbers with a point (1.5)"
                    .formatted(Quote.of(name)));
        }
        if (isNothing() && TIGHT_COLON.matcher(name).matches()) {
            return keyError("found %s; a colon needs a space behind it".formatted(Quote.of(name)));
        }
        return keyError(what + "; allowed: " + String.join(", ", allowed) + meant(name, allowed));
    }

    private String found() {
        if (node instanceof ScalarNode scalar) {
            return isNothing() ? "nothing" : "the text " + Quote.of(scalar.getValue());
        }
        if (node instanceof MappingNode map) {
            return map.getValue().stream()
                    .map(tuple -> tuple.getKeyNode() instanceof ScalarNode scalar ? Quote.of(scalar.getValue()) : "…")
                    .limit(4)
                    .collect(Collectors.joining(", ", "keys (", ")"));
        }
        return "a list";
    }

    private static Place place(String file, Node node) {
        Mark mark = node.getStartMark().orElseThrow();
        return new Place(file, mark.getLine() + 1, mark.getColumn() + 1);
    }
}
