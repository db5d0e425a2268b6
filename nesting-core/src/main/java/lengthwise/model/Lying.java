package lengthwise.model;

import java.util.List;
import java.util.Optional;

/**
 * How a piece lies on one cloth beyond its grain: what ties it to the edges of the cloth.
 *
 * @param onSelvedge whether its straight edge may lie on a selvedge; only then it may use the unusable edge there
 * @param border the line along the cloth that a point of it lies on
 * @param zone the band along the cloth that it stays in
 * @param tolerance how far it may be off its grain, where that shortens the marker
 * @param motifs the places of the print that it keeps off, or a point of it on; of no matter where the print does not repeat
 */
public record Lying(
        boolean onSelvedge,
        Optional<Border> border,
        Optional<Zone> zone,
        Optional<GrainTolerance> tolerance,
        List<MotifTie> motifs) {
    /** Anywhere in the cuttable area. */
    public static final Lying ANYWHERE = new Lying(false, Optional.empty(), Optional.empty());

    public Lying {
        motifs = List.copyOf(motifs);
    }

    /** Anywhere in the print. */
    public Lying(boolean onSelvedge, Optional<Border> border, Optional<Zone> zone, Optional<GrainTolerance> tolerance) {
        this(onSelvedge, border, zone, tolerance, List.of());
    }

    /** On its grain exactly. */
    public Lying(boolean onSelvedge, Optional<Border> border, Optional<Zone> zone) {
        this(onSelvedge, border, zone, Optional.empty());
    }

    /** Which selvedge is meant. */
    public enum Selvedge {
        /** The one at y = 0, at the top of the marker. */
        NEAR,
        FAR
    }

    /**
     * A border print runs along a selvedge: the piece lies across the cloth, its up end away from that selvedge, and a
     * point of it on a line along the cloth (textbook practice: Vilumsone-Nemes, Industrial Cutting of Textile Materials,
     * p. 236).
     *
     * @param at the point
     * @param y of the line, in marker coordinates
     */
    public record Border(Tie at, Selvedge selvedge, Length y) {}

    /**
     * The point of a piece that is tied.
     *
     * @param number of the mark among those of its kind, from 1; 0 for the lowest point
     */
    public record Tie(Kind kind, int number) {
        public static final Tie LOWEST_POINT = new Tie(Kind.LOWEST_POINT, 0);

        /** What can be tied. */
        public enum Kind {
            /** What is farthest from its up end: its hem. */
            LOWEST_POINT,
            NOTCH,
            DRILL_HOLE
        }
    }

    /** A band along the whole cloth, by the maker's name for it. */
    public record Zone(String name, Fabric.Band band) {}

    /**
     * What a motif asks of a piece. Of a half piece that is opened, the mirror image of a mark counts as the mark does.
     *
     * @param on whether a mark of it has to lie on the motif, wherever that comes; else it keeps off the motif everywhere
     * @param at the mark; empty: the whole piece, which can only keep off
     */
    public record MotifTie(Motif motif, boolean on, Optional<MarkRef> at) {
        public MotifTie {
            if (on && at.isEmpty()) {
                throw new IllegalArgumentException("Only a mark lies on a motif; name one: " + motif);
            }
        }
    }

    /** Returns the same without a zone. */
    public Lying withoutZone() {
        return new Lying(onSelvedge, border, Optional.empty(), tolerance, motifs);
    }

    /** Returns the same, anywhere in the print. */
    public Lying withoutMotifs() {
        return new Lying(onSelvedge, border, zone, tolerance);
    }

    /** Returns the same without a border. */
    public Lying withoutBorder() {
        return new Lying(onSelvedge, Optional.empty(), zone, tolerance, motifs);
    }

    /** Returns the same in the cuttable area. */
    public Lying withoutSelvedge() {
        return new Lying(/* onSelvedge= */ false, border, zone, tolerance, motifs);
    }
}
