package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import lengthwise.job.Lettering.LetteredCut;
import lengthwise.model.Cut;
import org.junit.jupiter.api.Test;

/** How makers letter their pieces: common practice, no source. */
class LetteringTest {
    private static final List<String> ROLES = List.of("shell", "lining");

    @Test
    void countsPairsAndFolds() {
        assertThat(cuts("Cut 2")).containsExactly(new LetteredCut(Optional.empty(), 2, Optional.empty()));
        assertThat(cuts("CUT 1 PAIR"))
                .containsExactly(new LetteredCut(Optional.empty(), 1, Optional.of(Cut.Manner.PAIR)));
        assertThat(cuts("Cut one pair"))
                .containsExactly(new LetteredCut(Optional.empty(), 1, Optional.of(Cut.Manner.PAIR)));
        assertThat(cuts("Front, cut 1 on fold"))
                .containsExactly(new LetteredCut(Optional.empty(), 1, Optional.of(Cut.Manner.ON_FOLD)));
        assertThat(cuts("cut on fold"))
                .containsExactly(new LetteredCut(Optional.empty(), 1, Optional.of(Cut.Manner.ON_FOLD)));
        assertThat(cuts("cut 4 alike"))
                .containsExactly(new LetteredCut(Optional.empty(), 4, Optional.of(Cut.Manner.ALIKE)));
    }

    @Test
    void aRoleSpeaksForItsFabric() {
        assertThat(cuts("cut 1 pair shell, 2 lining"))
                .containsExactly(
                        new LetteredCut(Optional.of("shell"), 1, Optional.of(Cut.Manner.PAIR)),
                        new LetteredCut(Optional.of("lining"), 2, Optional.empty()));
    }

    /** The text of a piece may stand in a drawing twice, as a line of text and in a paragraph. */
    @Test
    void whatIsSaidTwiceIsCutOnce() {
        assertThat(cuts("Front, cut 1 on fold", "FRONT,  Cut 1 on fold "))
                .containsExactly(new LetteredCut(Optional.empty(), 1, Optional.of(Cut.Manner.ON_FOLD)));
        assertThat(cuts("cut 2 lining", "cut 2 shell")).hasSize(2);
        assertThat(cuts("cut 1 left", "cut 1 right")).hasSize(2);
    }

    @Test
    void otherWordsAreLeftAlone() {
        assertThat(cuts("Front bodice M", "cut carefully", "place on grain", "fold here"))
                .isEmpty();
    }

    private static List<LetteredCut> cuts(String... lines) {
        return Lettering.cuts(List.of(lines), ROLES);
    }
}
