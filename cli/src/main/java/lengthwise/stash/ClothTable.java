package lengthwise.stash;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import lengthwise.job.LengthUnit;
import lengthwise.job.Quote;
import lengthwise.stash.ClothText.Field;

/** The stash as a table of comma-separated values (RFC 4180): a heading, then a row for each cloth. */
public final class ClothTable {
    private static final long LARGEST = 16L << 20;

    private ClothTable() {}

    /** Returns the rows of a table, the heading first, lengths in a unit. */
    public static List<List<String>> rows(List<StashCloth> cloths, LengthUnit unit) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(Arrays.stream(Field.values()).map(Field::word).toList());
        for (StashCloth cloth : cloths) {
            rows.add(Arrays.stream(Field.values())
                    .map(field -> ClothText.print(cloth, field, unit))
                    .toList());
        }
        return rows;
    }

    /**
     * Reads a table. Its columns may stand in any order, and those about which nothing is known may be left out.
     *
     * @throws StashException in one line with row and column, both counted from 1
     */
    public static List<StashCloth> read(Path file) throws StashException {
        try {
            if (Files.size(file) > LARGEST) {
                throw new StashException(file + ": the table is larger than 16 MiB; is it the right file?");
            }
            byte[] bytes = Files.readAllBytes(file);
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return read(file.toString(), text);
        } catch (CharacterCodingException notText) {
            throw new StashException(
                    file + ": this is no text in UTF-8; save the table as comma-separated values in UTF-8", notText);
        } catch (IOException unreadable) {
            throw new StashException(file + ": the table cannot be read; is the path right?", unreadable);
        }
    }

    static List<StashCloth> read(String file, String text) throws StashException {
        List<List<String>> rows = cells(file, text.startsWith("\uFEFF") ? text.substring(1) : text);
        if (rows.isEmpty()) {
            throw new StashException(file + ": the table is empty; its first row is " + heading());
        }
        List<Field> columns = columns(file, rows.get(0));
        List<StashCloth> cloths = new ArrayList<>();
        Map<String, Integer> rowOf = new HashMap<>();
        for (int i = 1; i < rows.size(); i++) {
            List<String> row = rows.get(i);
            int number = i + 1;
            if (row.size() == 1 && row.get(0).isBlank()) {
                continue;
            }
            if (row.size() != columns.size()) {
                throw new StashException("%s: row %d has %d cells and the heading has %d; is a comma not in quotes?"
                        .formatted(file, number, row.size(), columns.size()));
            }
            Map<Field, String> words = new EnumMap<>(Field.class);
            for (int column = 0; column < columns.size(); column++) {
                words.put(columns.get(column), plain(row.get(column)));
            }
            StashCloth cloth = ClothText.parse(
                    words, (field, what) -> complaint(file, number, columns.indexOf(field) + 1, field, what));
            Integer earlier = rowOf.putIfAbsent(cloth.name().toLowerCase(Locale.ROOT), number);
            if (earlier != null) {
                throw complaint(
                        file,
                        number,
                        columns.indexOf(Field.NAME) + 1,
                        Field.NAME,
                        "%s stands in row %d already; give each cloth a name of its own"
                                .formatted(Quote.of(cloth.name()), earlier));
            }
            cloths.add(cloth);
        }
        return cloths;
    }

    /** Without the apostrophe that keeps a spreadsheet from taking a cell for a formula. */
    private static String plain(String cell) {
        return cell.matches("(?s)'[=+@-].*") ? cell.substring(1) : cell;
    }

    private static StashException complaint(String file, int row, int column, Field field, String what) {
        return new StashException(
                column > 0
                        ? "%s: row %d, column %d (%s): %s".formatted(file, row, column, field.word(), what)
                        : "%s: row %d: the table has no column %s: %s".formatted(file, row, field.word(), what));
    }

    private static List<Field> columns(String file, List<String> heading) throws StashException {
        List<Field> columns = new ArrayList<>();
        for (int i = 0; i < heading.size(); i++) {
            String word = heading.get(i).strip();
            String place = "%s: row 1, column %d: ".formatted(file, i + 1);
            Field field = Arrays.stream(Field.values())
                    .filter(known -> known.word().equals(word.toLowerCase(Locale.ROOT)))
                    .findFirst()
                    .orElseThrow(() -> new StashException(
                            place + "found the heading " + Quote.of(word) + "; the headings are " + heading()));
            if (columns.contains(field)) {
                throw new StashException(place + "the heading " + word + " stands here a second time");
            }
            columns.add(field);
        }
        return columns;
    }

    private static String heading() {
        return String.join(",", rows(List.of(), LengthUnit.CM).get(0));
    }

    /** Rows of cells; quotes stand round a cell with commas, quotes or line breaks in it, and are doubled within. */
    private static List<List<String>> cells(String file, String text) throws StashException {
        List<List<String>> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        int at = 0;
        while (at < text.length()) {
            int end = at;
            if (text.charAt(at) == '"') {
                end = closing(text, at + 1);
                if (end < 0 || (end < text.length() && ",\r\n".indexOf(text.charAt(end)) < 0)) {
                    throw new StashException("%s: row %d, column %d: a quote begins the cell and none ends it"
                            .formatted(file, rows.size() + 1, row.size() + 1));
                }
                row.add(text.substring(at + 1, end - 1).replace("\"\"", "\""));
            } else {
                while (end < text.length() && ",\r\n".indexOf(text.charAt(end)) < 0) {
                    end++;
                }
                row.add(text.substring(at, end));
            }
            boolean comma = end < text.length() && text.charAt(end) == ',';
            if (comma && (end + 1 == text.length() || "\r\n".indexOf(text.charAt(end + 1)) >= 0)) {
                row.add("");
                end++;
                comma = false;
            }
            if (!comma) {
                rows.add(List.copyOf(row));
                row.clear();
            }
            at = text.startsWith("\r\n", end) ? end + 2 : end + 1;
        }
        return rows;
    }

    /** Returns the index behind the quote that ends a cell, or -1 if there is none. */
    private static int closing(String text, int from) {
        int at = from;
        while (at < text.length()) {
            if (text.charAt(at++) == '"') {
                if (at == text.length() || text.charAt(at) != '"') {
                    return at;
                }
                at++;
            }
        }
        return -1;
    }
}
