package lengthwise.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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

    /** Returns the names of the options that go with this format alone. */
    default Set<String> options() {
        return Set.of();
    }

    /** A text file written beside the one that was asked for. */
    record Beside(Path file, String text) {}

    /**
     * Returns what else is to be written.
     *
     * @throws DrawingException likewise
     */
    default Optional<Beside> beside(MarkerDrawing marker) throws DrawingException {
        return Optional.empty();
    }

    /**
     * Returns what there is to say of the result, a sentence each.
     *
     * @throws DrawingException likewise
     */
    default List<String> remarks(MarkerDrawing marker) throws DrawingException {
        return List.of();
    }

    /** Returns what the maker must know before she cuts by the file, a sentence each. */
    default List<String> cautions() {
        return List.of();
    }
}
