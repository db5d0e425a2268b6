package lengthwise.pdf;

import java.util.List;
import java.util.Set;

/**
 * A document, and what to say of it.
 *
 * @param bytes the PDF
 * @param pages how many it has, those to read included
 * @param sheets how many of them are to be joined or cut from
 * @param columns of sheets that were planned; 0 where they are not joined to one drawing
 * @param rows likewise
 * @param leftOut the names of sheets with nothing to cut on them
 * @param missingLetters what the typeface lacks, shown as hollow boxes
 */
@SuppressWarnings("ArrayRecordComponent") // written to a file, never compared
public record Printed(
        byte[] bytes, int pages, int sheets, int columns, int rows, List<String> leftOut, Set<String> missingLetters) {
    public Printed {
        leftOut = List.copyOf(leftOut);
        missingLetters = Set.copyOf(missingLetters);
    }
}
