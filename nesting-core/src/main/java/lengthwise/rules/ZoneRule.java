package lengthwise.rules;

import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Lying;
import lengthwise.model.Piece;
import lengthwise.rules.PlacementDomain.Positions;

/** A cloth may be printed differently across its width: a piece that belongs to a zone stays in that band. */
final class ZoneRule {
    private ZoneRule() {}

    static PlacementDomain domain(Item item, Fabric fabric, Lying.Zone zone, PlacementDomain domain)
            throws RefusedException {
        Piece piece = item.piece();
        refuseHiddenSelvedges(piece, fabric, "keeps to the zone " + zone.name());
        if (!(domain.positions() instanceof Positions.Free)) {
            throw new RefusedException("%s keeps to the zone %s of %s, but %s. Say one of the two."
                    .formatted(
                            SpreadRule.named(piece),
                            zone.name(),
                            fabric.name(),
                            piece.foldEdge().isPresent()
                                    ? "lies on the fold"
                                    : "has a match point on the print's repeat"));
        }
        long from = zone.band().from().micrometres();
        long to = zone.band().to().micrometres();
        long least = domain.orientations().stream()
                .mapToLong(
                        orientation -> orientation.apply(piece.outline()).box().height())
                .min()
                .orElseThrow();
        if (least > to - from) {
            throw new RefusedException(
                    ("%s is %s mm across the fabric; its zone %s of %s is %s mm wide. Widen the zone, or keep"
                                    + " the piece to another.")
                            .formatted(
                                    SpreadRule.named(piece),
                                    least / 1000.0,
                                    zone.name(),
                                    fabric.name(),
                                    Math.max(0, to - from) / 1000.0));
        }
        return new PlacementDomain(domain.orientations(), new Positions.Between(from, to));
    }

    /** Distances from a selvedge mean the same in every layer only where selvedge lies on selvedge, near on near. */
    static void refuseHiddenSelvedges(Piece piece, Fabric fabric, String ties) throws RefusedException {
        switch (fabric.spread().form()) {
            case SINGLE_LAYER, FOLD_CROSSWISE, PLIES_FACE_UP -> {}
            case FOLD_LENGTHWISE, SELVEDGES_TO_MIDDLE, TUBE, PLIES_FACE_TO_FACE ->
                throw new RefusedException(("%s %s, and the layers of %s do not lie with the same selvedge on the same"
                                + " side. Lay this fabric in a single layer, or in plies face up.")
                        .formatted(SpreadRule.named(piece), ties, fabric.name()));
        }
    }
}
