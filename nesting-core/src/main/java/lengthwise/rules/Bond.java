package lengthwise.rules;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lengthwise.model.Axis;

/** Couples demands, named by their index in the task. */
public sealed interface Bond {
    /** Returns the demands that it couples. */
    List<Integer> members();

    /**
     * Returns the bond of those members that have another number, or nothing where fewer than two have.
     *
     * @param numbers the new number of a member, where it has one
     */
    Optional<Bond> renumbered(Function<Integer, Optional<Integer>> numbers);

    private static List<Integer> renumbered(List<Integer> members, Function<Integer, Optional<Integer>> numbers) {
        return members.stream().map(numbers).flatMap(Optional::stream).toList();
    }

    /**
     * All members lie at the same turn (flips do not count): one way per garment. A demand may be a member of one such
     * bond only.
     */
    record SameTurn(List<Integer> members) implements Bond {
        public SameTurn {
            members = List.copyOf(members);
        }

        @Override
        public Optional<Bond> renumbered(Function<Integer, Optional<Integer>> numbers) {
            List<Integer> left = Bond.renumbered(members, numbers);
            return left.size() > 1 ? Optional.of(new SameTurn(left)) : Optional.empty();
        }
    }

    /**
     * The members have {@link PlacementDomain.Positions.Lattice lattice} positions, and their lattices may be moved
     * together, by any way along x and y; those of mirrored members by the same way with its y turned round. A demand may be
     * a member of one such bond only.
     *
     * @param mirrored those of the members whose lattices go the mirrored way
     */
    record SamePhase(List<Integer> members, List<Integer> mirrored) implements Bond {
        public SamePhase {
            members = List.copyOf(members);
            mirrored = List.copyOf(mirrored);
        }

        @Override
        public Optional<Bond> renumbered(Function<Integer, Optional<Integer>> numbers) {
            List<Integer> left = Bond.renumbered(members, numbers);
            return left.size() > 1
                    ? Optional.of(new SamePhase(left, Bond.renumbered(mirrored, numbers)))
                    : Optional.empty();
        }
    }

    /** All members are tilted alike before they are flipped, or none is: a pair equally and oppositely. One such bond each. */
    record SameTilt(List<Integer> members) implements Bond {
        public SameTilt {
            members = List.copyOf(members);
        }

        @Override
        public Optional<Bond> renumbered(Function<Integer, Optional<Integer>> numbers) {
            List<Integer> left = Bond.renumbered(members, numbers);
            return left.size() > 1 ? Optional.of(new SameTilt(left)) : Optional.empty();
        }
    }

    /**
     * All members lie within some stretch of the strip, wherever that is: along it, or in a band across it. From where the
     * first of their outlines begins to where the last ends it is at most so far. A demand may be a member of several.
     *
     * @param extent in micrometres; every member has to go into it alone
     */
    record Within(List<Integer> members, Axis axis, long extent) implements Bond {
        public Within {
            members = List.copyOf(members);
        }

        @Override
        public Optional<Bond> renumbered(Function<Integer, Optional<Integer>> numbers) {
            List<Integer> left = Bond.renumbered(members, numbers);
            return left.size() > 1 ? Optional.of(new Within(left, axis, extent)) : Optional.empty();
        }
    }
}
