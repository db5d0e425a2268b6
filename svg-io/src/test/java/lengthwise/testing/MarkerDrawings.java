package lengthwise.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.model.Length;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.LaidState;
import lengthwise.svg.MarkerDrawing;

/** Markers as they are read back from a file, of a few simple shapes. */
public final class MarkerDrawings {
    private MarkerDrawings() {}

    /** Pieces named a, b, c … without marks, on cloth 1 m by 1 m. */
    public static MarkerDrawing of(Outline... outlines) {
        List<PlacedPiece> pieces = new ArrayList<>();
        List<Integer> numbers = new ArrayList<>();
        List<PieceMarks> marks = new ArrayList<>();
        List<LaidState> states = new ArrayList<>();
        for (int i = 0; i < outlines.length; i++) {
            pieces.add(new PlacedPiece(Character.toString('a' + i), "", List.of(1), "", outlines[i]));
            numbers.add(i + 1);
            marks.add(PieceMarks.NONE);
            states.add(new LaidState(Optional.empty(), List.of(), false));
        }
        Length metre = Length.ofMillimetres(1000);
        return new MarkerDrawing("job", "cloth", metre, metre, pieces, numbers, marks, states, "single-layer");
    }

    public static MarkerDrawing withMarks(MarkerDrawing of, int piece, PieceMarks marks) {
        List<PieceMarks> all = new ArrayList<>(of.marks());
        all.set(piece, marks);
        return new MarkerDrawing(
                of.job(),
                of.fabric(),
                of.length(),
                of.cuttableWidth(),
                of.pieces(),
                of.numbers(),
                all,
                of.states(),
                of.spread());
    }

    public static MarkerDrawing withState(MarkerDrawing of, int piece, LaidState state) {
        List<LaidState> all = new ArrayList<>(of.states());
        all.set(piece, state);
        return new MarkerDrawing(
                of.job(),
                of.fabric(),
                of.length(),
                of.cuttableWidth(),
                of.pieces(),
                of.numbers(),
                of.marks(),
                all,
                of.spread());
    }

    /** An upright rectangle, in millimetres. */
    public static Outline rectangle(double x, double y, double width, double height) {
        return Outline.of(box(x, y, width, height).ring());
    }

    public static Box box(double x, double y, double width, double height) {
        return new Box(um(x), um(y), um(x + width), um(y + height));
    }

    private static long um(double millimetres) {
        return Math.round(millimetres * 1000);
    }
}
