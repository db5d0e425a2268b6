package lengthwise.job;

import java.util.Optional;
import lengthwise.model.Cut;

/**
 * How often a piece is cut from the fabric of one role for one garment, as the maker said it.
 *
 * @param manner what the count counts; empty for a bare count, which of an asymmetric piece could mean pairs or not
 */
public record CutRequest(String role, int count, Optional<Cut.Manner> manner) {
    /**
     * Returns the cut; empty where the maker has to be asked: a bare count above one of a piece whose left and right
     * differ.
     */
    public Optional<Cut> cut(boolean symmetric) {
        return manner.or(() -> count == 1 || symmetric ? Optional.of(Cut.Manner.ALIKE) : Optional.empty())
                .map(said -> new Cut(count, said));
    }

    /** Returns how often, as it is said in a job file. */
    String words() {
        Optional<String> counted = manner.map(said -> switch (said) {
            case PAIR -> count == 1 ? " pair" : " pairs";
            case ALIKE -> " alike";
            case ON_FOLD -> " on fold";
        });
        return count + counted.orElse("");
    }
}
