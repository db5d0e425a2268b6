package lengthwise.drawing;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a thing in a drawing is called.
 *
 * @param label the maker's own words for it
 * @param id as in the file
 * @param classes style classes, as in the file
 */
public record Names(Optional<String> label, Optional<String> id, List<String> classes) {
    public static final Names NONE = new Names(Optional.empty(), Optional.empty(), List.of());

    public Names {
        classes = List.copyOf(classes);
    }

    /** Says whether this is the thing the maker means by a name. */
    public boolean match(String name) {
        return id.filter(name::equals).isPresent() || label.filter(name::equals).isPresent();
    }

    /** Returns the lower-case words of all names: {@code grainLine-2} gives "grain" and "line". */
    Stream<String> words() {
        return Stream.concat(Stream.concat(label.stream(), id.stream()), classes.stream())
                .flatMap(Names::words);
    }

    static Stream<String> words(String name) {
        String spaced = name.replaceAll("(\\p{Ll})(\\p{Lu})", "$1 $2");
        return Arrays.stream(spaced.toLowerCase(Locale.ROOT).split("[^\\p{L}]+"))
                .filter(word -> !word.isEmpty());
    }

    /** Returns the name to use in a sentence. */
    Optional<String> spoken() {
        return label.or(() -> id);
    }
}
