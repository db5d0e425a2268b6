package lengthwise.job;

import java.util.List;
import java.util.Optional;
import lengthwise.model.Axis;
import lengthwise.model.GrainTolerance;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.Lying.Tie;
import lengthwise.model.MarkRef;
import lengthwise.model.MatchPoint.Partner;

/**
 * What is said about one piece.
 *
 * @param cut how often it is cut from which fabric; empty where nothing is said
 * @param drawn the side of the body, as worn, that the piece as drawn belongs to; {@link Hand#LEFT} or {@link Hand#RIGHT}
 * @param gap its own least distance to other pieces; between two pieces the larger gap counts
 * @param filler where it belongs to no garment and goes in only where it adds no length: how often at most
 * @param lying how it lies on its cloth, where that is not as on any other
 * @param strip present where the piece is not drawn but is a plain strip
 */
public record JobPiece(
        String name,
        List<CutRequest> cut,
        Optional<Up> up,
        Optional<ArrowMeaning> arrowMeans,
        Optional<Hand> drawn,
        Optional<MatchMark> matchPoint,
        Optional<Length> gap,
        Optional<Integer> filler,
        Lying lying,
        Optional<JobStrip> strip) {
    public JobPiece {
        cut = List.copyOf(cut);
    }

    /** A piece of every garment. */
    public JobPiece(
            String name,
            List<CutRequest> cut,
            Optional<Up> up,
            Optional<ArrowMeaning> arrowMeans,
            Optional<Hand> drawn,
            Optional<MatchMark> matchPoint,
            Optional<Length> gap,
            Optional<JobStrip> strip) {
        this(name, cut, up, arrowMeans, drawn, matchPoint, gap, Optional.empty(), Lying.UNSAID, strip);
    }

    /**
     * How a piece lies on its cloth beyond what its arrow says.
     *
     * @param edgeOnSelvedge whether its straight edge may lie on the selvedge
     * @param border what of it lies on the line of a border print, where its cloth has one
     * @param zone the zone that it keeps to, where its cloth has any
     * @param tolerance how far it may be off its grain
     * @param motifs what it keeps off or on in the print, where its cloth has such motifs
     */
    public record Lying(
            Optional<Grain> grain,
            boolean edgeOnSelvedge,
            Optional<Tie> border,
            Optional<String> zone,
            Optional<GrainTolerance> tolerance,
            List<MotifMark> motifs) {
        /** Nothing is said. */
        public static final Lying UNSAID =
                new Lying(Optional.empty(), false, Optional.empty(), Optional.empty(), Optional.empty(), List.of());

        public Lying {
            motifs = List.copyOf(motifs);
        }
    }

    /**
     * A motif of the print, by its name, that a piece keeps off, or a mark of it on.
     *
     * @param at the mark; empty: the whole piece keeps off
     */
    public record MotifMark(String motif, boolean on, Optional<MarkRef> at) {}

    /** Which way the line lies that is drawn on a piece. */
    public enum Grain {
        /** On grain, or along the greatest stretch where the arrow means that. */
        STRAIGHT,
        /** At 45° to the selvedge. */
        BIAS
    }

    /** Where the up end of a piece is. */
    public enum Up {
        /** At the top of the page, as it is drawn. */
        AS_DRAWN,
        /** Where the one head of its arrow points. */
        ARROW,
        /** Nowhere: on any fabric the piece may lie either way round. */
        NONE
    }

    /**
     * A mark of the piece that must fall on the print's repeat.
     *
     * @param tolerance how far off it may be, where said
     * @param along the one way in which it must, where not both
     * @param to what it must fall alike with; empty: a point of the print
     */
    public record MatchMark(MarkRef at, Optional<Length> tolerance, Optional<Axis> along, Optional<Partner> to) {}
}
