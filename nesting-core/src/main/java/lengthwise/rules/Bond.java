package lengthwise.rules;

import java.util.List;

/** Couples demands, named by their index in the task. */
public sealed interface Bond {
    /**
     * All members lie at the same turn (flips do not count): one way per garment. A demand may be a member of one such
     * bond only.
     */
    record SameTurn(List<Integer> members) implements Bond {
        public SameTurn {
            members = List.copyOf(members);
        }
    }
}
