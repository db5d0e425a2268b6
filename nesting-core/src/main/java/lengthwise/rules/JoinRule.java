package lengthwise.rules;

import lengthwise.model.Fabric;
import lengthwise.rules.PlacementDomain.Positions;

/** Where both selvedges are folded to the middle they meet there, and every piece lies on one side of the join. */
final class JoinRule {
    private JoinRule() {}

    /** Returns the same domain, beside the join where there is one. */
    static PlacementDomain beside(PlacementDomain domain, Fabric fabric) {
        boolean free = domain.positions() instanceof Positions.Free;
        if (fabric.join().isEmpty() || !free) {
            return domain;
        }
        Fabric.Band join = fabric.join().get();
        return new PlacementDomain(
                domain.orientations(),
                new Positions.Either(
                        new Positions.Between(0, join.from().micrometres()),
                        new Positions.Between(
                                join.to().micrometres(), fabric.cuttableWidth().micrometres())));
    }
}
