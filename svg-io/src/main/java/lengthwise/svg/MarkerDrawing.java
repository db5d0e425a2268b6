package lengthwise.svg;

import java.util.List;
import lengthwise.model.Length;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;

/**
 * A marker read back from a file, in marker coordinates.
 *
 * @param job the job's name, as written on it
 * @param fabric the fabric's name, as written on it
 * @param length of the marker
 * @param numbers of the pieces, as written on the marker, in their order; 0 for one that has lost it
 * @param marks what is drawn on the pieces, in their order
 */
public record MarkerDrawing(
        String job,
        String fabric,
        Length length,
        Length cuttableWidth,
        List<PlacedPiece> pieces,
        List<Integer> numbers,
        List<PieceMarks> marks) {
    public MarkerDrawing {
        pieces = List.copyOf(pieces);
        numbers = List.copyOf(numbers);
        marks = List.copyOf(marks);
    }
}
