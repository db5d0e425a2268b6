package lengthwise.dxf;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lengthwise.drawing.DrawingException;

/**
 * One thing drawn in a file, with its groups in their order.
 *
 * @param line where it begins, from 1
 */
record Entity(String file, String kind, int line, List<Group> groups) {
    private static final int MOST_GROUPS = 1_000_000;

    Entity {
        groups = List.copyOf(groups);
    }

    /** A code and its value, the value as written. */
    record Group(int code, String value, int line) {}

    /** Reads the groups up to the next entity; the reader then stands on that one, if there is one. */
    static Entity read(String file, String kind, GroupReader reader) throws DrawingException {
        int line = reader.line();
        List<Group> groups = new ArrayList<>();
        while (reader.next() && reader.code() != 0) {
            if (groups.size() == MOST_GROUPS) {
                throw new DrawingException(
                        file + ", line " + line + ": the " + kind + " has too many points to be part of a pattern.");
            }
            groups.add(new Group(reader.code(), reader.text(), reader.line()));
        }
        return new Entity(file, kind, line, groups);
    }

    Optional<Group> first(int code) {
        for (Group group : groups) {
            if (group.code == code) {
                return Optional.of(group);
            }
        }
        return Optional.empty();
    }

    boolean has(int code) {
        return first(code).isPresent();
    }

    String text(int code) {
        return first(code).map(Group::value).orElse("");
    }

    double number(int code, double otherwise) throws DrawingException {
        Optional<Group> group = first(code);
        return group.isPresent() ? number(group.get()) : otherwise;
    }

    /** Returns a whole number, such as flags; 0 where there is none. */
    int whole(int code) throws DrawingException {
        return (int) number(code, 0);
    }

    /** Returns every value of a code. */
    double[] numbers(int code) throws DrawingException {
        int count = 0;
        double[] values = new double[groups.size()];
        for (Group group : groups) {
            if (group.code == code) {
                values[count++] = number(group);
            }
        }
        return java.util.Arrays.copyOf(values, count);
    }

    /** Reads a number as files have it: with a point, whatever the language of the machine. */
    double number(Group group) throws DrawingException {
        String text = group.value;
        boolean plain = !text.isEmpty() && text.length() <= 400;
        for (int i = 0; i < text.length() && plain; i++) {
            plain = "+-.0123456789eE".indexOf(text.charAt(i)) >= 0;
        }
        if (plain) {
            try {
                return Double.parseDouble(text);
            } catch (NumberFormatException notANumber) {
                // Said below.
            }
        }
        throw new DrawingException(String.format(
                Locale.ROOT,
                "%s, line %d: found \"%s\" where the %s must have a number; the file is damaged: export it again.",
                file,
                group.line,
                Shown.of(text),
                kind));
    }
}
