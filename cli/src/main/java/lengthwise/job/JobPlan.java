package lengthwise.job;

import java.util.List;
import java.util.Optional;
import lengthwise.model.Length;

/**
 * How a job's order may be shared out over lays.
 *
 * @param maxPlies plies of a lay at most
 * @param maxGarments garments of a marker at most
 * @param tableLength the longest ply that there is room for, ends included
 * @param over what may be cut too many of each size in each colour, as a share of what is ordered
 * @param under what may be cut too few, likewise
 * @param least what there should be least of
 * @param oneColour names of fabrics that are the same whatever the colour of the garment
 * @param bolts the cloth that is there
 * @param fromStash whether the bolts are those of the stash
 */
public record JobPlan(
        Optional<Integer> maxPlies,
        Optional<Integer> maxGarments,
        Optional<Length> tableLength,
        double over,
        double under,
        Optional<Least> least,
        List<String> oneColour,
        List<Bolt> bolts,
        boolean fromStash) {
    /** Nothing is said. */
    public static final JobPlan UNSAID = new JobPlan(
            Optional.empty(), Optional.empty(), Optional.empty(), 0, 0, Optional.empty(), List.of(), List.of(), false);

    public JobPlan {
        oneColour = List.copyOf(oneColour);
        bolts = List.copyOf(bolts);
    }

    /** What a plan should have least of. */
    public enum Least {
        FABRIC,
        LAYS
    }

    /**
     * A bolt of one of the job's fabrics.
     *
     * @param name its label, where it has one
     * @param of the fabric's name
     * @param colour where the order has colours and the fabric comes in them
     * @param width where it is not the fabric's
     */
    public record Bolt(
            Optional<String> name, String of, Optional<String> colour, Length length, Optional<Length> width) {
        Bolt withWidth(Length known) {
            return new Bolt(name, of, colour, length, Optional.of(known));
        }
    }

    /** Returns the same plan with these bolts. */
    JobPlan withBolts(List<Bolt> others) {
        return new JobPlan(maxPlies, maxGarments, tableLength, over, under, least, oneColour, others, false);
    }
}
