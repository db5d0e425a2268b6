package lengthwise.model;

import java.util.Optional;

/**
 * How a piece lies on one cloth beyond its grain: what ties it to the edges of the cloth.
 *
 * @param onSelvedge whether its straight edge may lie on a selvedge; only then it may use the unusable edge there
 * @param border the line along the cloth that a point of it lies on
 * @param zone the band along the cloth that it stays in
 * @param tolerance how far it may be off its grain, where that shortens the marker
 */
public record Lying(
        boolean onSelvedge, Optional<Border> border, Optional<Zone> zone, Optional<GrainTolerance> tolerance) {
    /** Anywhere in the cuttable area. */
    public static final Lying ANYWHERE = new Lying(false, Optional.empty(), Optional.empty());

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

    /** Returns the same without a zone. */
    public Lying withoutZone() {
        return new Lying(onSelvedge, border, Optional.empty(), tolerance);
    }
}
