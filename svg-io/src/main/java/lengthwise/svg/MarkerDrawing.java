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
 * @param states how they lie on the cloth, in their order
 * @param spread how the cloth is laid, by its word in the job file; empty where the file has lost it
 */
public record MarkerDrawing(
        String job,
        String fabric,
        Length length,
        Length cuttableWidth,
        List<PlacedPiece> pieces,
        List<Integer> numbers,
        List<PieceMarks> marks,
        List<LaidState> states,
        String spread) {
    public MarkerDrawing {
        pieces = List.copyOf(pieces);
        numbers = List.copyOf(numbers);
        marks = List.copyOf(marks);
        states = List.copyOf(states);
    }

    /** Returns what is to be written on a piece, by its place among the pieces. */
    public Caption captionOf(int piece) {
        return Caption.of(pieces.get(piece), marks.get(piece), numbers.get(piece))
                .turnedIfLarger(pieces.get(piece), marks.get(piece));
    }
}
