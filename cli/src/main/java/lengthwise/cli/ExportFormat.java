package lengthwise.cli;

import java.nio.file.Path;
import java.util.List;
import lengthwise.drawing.DrawingException;
import lengthwise.svg.MarkerDrawing;

/** Something that a marker can be written as. A format with options of its own is a mixin of {@link ExportCommand}. */
interface ExportFormat {
    /** Returns the word for it on the command line. */
    String word();

    /**
     * Returns the whole file.
     *
     * @param file the marker's own file
     * @throws DrawingException if this marker cannot be written so, with the reason
     */
    byte[] write(Path file, MarkerDrawing marker) throws DrawingException;

    /** Returns what the maker must know before she cuts by the file, a sentence each. */
    default List<String> cautions() {
        return List.of();
    }
}
