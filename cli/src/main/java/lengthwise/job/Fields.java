package lengthwise.job;

import java.util.Map;
import java.util.Optional;

/** The values under the known keys of one part of the job file. */
record Fields(Entry whole, Map<String, Entry> entries) {
    /** Returns the value under a key, if the key is there. */
    Optional<Entry> get(String key) {
        return Optional.ofNullable(entries.get(key));
    }

    <T> Optional<T> read(String key, Entry.Reading<T> reading) throws JobException {
        Entry entry = entries.get(key);
        return entry == null ? Optional.empty() : Optional.of(reading.of(entry));
    }

    /** Returns the value under a key that has to be there; the example says how it may look. */
    Entry need(String key, String example) throws JobException {
        Entry entry = entries.get(key);
        if (entry == null) {
            throw whole.missing(key, key + ": " + example);
        }
        return entry;
    }
}
