package lengthwise.rules;

import static lengthwise.geometry.QuarterTurn.HALF;
import static lengthwise.geometry.QuarterTurn.NONE;
import static lengthwise.geometry.QuarterTurn.QUARTER;
import static lengthwise.geometry.QuarterTurn.THREE_QUARTERS;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Piece;

/**
 * Which way round a piece may lie: along its grain, with its up end to the up end of the print where the fabric has
 * one, mirrored as its hand asks. In layers face to face either face of a contour will do, since the next layer gives the
 * mirror image.
 */
final class DirectionRule {
    private DirectionRule() {}

    static List<Orientation> orientations(Item item, Fabric fabric) throws RefusedException {
        List<Orientation> orientations = new ArrayList<>();
        boolean eitherFace = fabric.spread().mirrors();
        for (QuarterTurn turn : turns(item.piece(), fabric)) {
            if (eitherFace) {
                orientations.add(new Orientation(false, turn));
                orientations.add(new Orientation(true, turn));
            } else {
                orientations.add(new Orientation(item.mirrored(), turn));
            }
        }
        if (item.piece().turning() == Piece.Turning.ON_BIAS && fabric.direction() == Direction.ONE_WAY) {
            orientations.removeIf(orientation -> !pointsUp(item.piece(), orientation));
        }
        return orientations;
    }

    /** On the bias an up end points half way to a selvedge; of the two biases either will do. */
    private static boolean pointsUp(Piece piece, Orientation orientation) {
        return piece.upEnd().map(end -> orientation.apply(end).x() > 0).orElse(true);
    }

    /** Says whether a garment's pieces have to agree on their turn because of this piece. */
    static boolean bindsGarment(Piece piece, Fabric fabric) {
        return fabric.direction() == Direction.ONE_WAY_PER_GARMENT && piece.up().isPresent();
    }

    private static List<QuarterTurn> turns(Piece piece, Fabric fabric) throws RefusedException {
        List<QuarterTurn> alongGrain = switch (piece.turning()) {
            case ALONG_GRAIN -> List.of(NONE, HALF);
            case ANY_QUARTER, ON_BIAS -> List.of(NONE, QUARTER, HALF, THREE_QUARTERS);
        };
        if (fabric.direction() == Direction.EITHER_WAY || piece.up().isEmpty()) {
            return alongGrain;
        }
        if (piece.turning() == Piece.Turning.ON_BIAS && fabric.direction() == Direction.ONE_WAY) {
            return alongGrain;
        }
        QuarterTurn upright = piece.up().get().inverse();
        if (!alongGrain.contains(upright)) {
            throw new RefusedException(
                    ("%s is pulled two ways on %s: grain or stretch lays it one way, the print's up end"
                                    + " another, a quarter turn apart. Change its arrow's meaning, let it ignore the print"
                                    + " (print: ignore), or take cloth whose stretch runs the other way.")
                            .formatted(SpreadRule.named(piece), fabric.name()));
        }
        return fabric.direction() == Direction.ONE_WAY ? List.of(upright) : List.of(upright, upright.plus(HALF));
    }
}
