package lengthwise.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Cloths here are bars: garments of a kind need as many centimetres as the kind's number says. */
class WhatFitsTest {
    /** By hand: 30 + 30 + 40 are 100 of 115; the next 40 do not fit, a 10 still does. */
    @Test
    void firstByPriorityThenWhateverFits() {
        WhatFits choice = choose(List.of(30, 30, 40, 40, 40, 10, 10), 115);
        assertThat(choice.made()).containsExactly(0, 1, 2, 5);
        assertThat(choice.enoughFor()).containsExactly(3);
    }

    @Test
    void theShorterClothDecides() {
        WhatFits choice = choose(List.of(20, 20, 20, 20), 75, 45);
        assertThat(choice.made()).containsExactly(0, 1);
        assertThat(choice.enoughFor()).containsExactly(3, 2);
    }

    @Test
    void allOrNothing() {
        assertThat(choose(List.of(20, 20), 40).made()).containsExactly(0, 1);
        assertThat(choose(List.of(20, 20), 19)).isEqualTo(new WhatFits(List.of(), List.of(0)));
        assertThat(choose(List.of(20, 20)).made()).containsExactly(0, 1);
    }

    static IntStream seeds() {
        return IntStream.range(0, 100);
    }

    /** Compared with adding one garment after another, the plain way. */
    @ParameterizedTest
    @MethodSource("seeds")
    void halvingFindsWhatCountingFinds(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Integer> needs = random.ints(random.nextInt(1, 20), 1, 50).boxed().toList();
        int room = random.nextInt(1, 600);
        List<Integer> counted = new ArrayList<>();
        int used = 0;
        for (int i = 0; i < needs.size(); i++) {
            if (used + needs.get(i) <= room) {
                used += needs.get(i);
                counted.add(i);
            }
        }
        assertThat(choose(needs, room).made()).isEqualTo(counted);
    }

    /** Of bars of 10 a brief look sees room for 4 only, a patient one for 6, and there are 8. */
    @Test
    void aPatientLookDecides() {
        WhatFits.Cloth cloth = (garments, share) -> garments.size() <= (share < 0.1 ? 4 : 6);
        WhatFits fits = WhatFits.of(List.of(10, 10, 10, 10, 10, 10, 10, 10), List.of(cloth));
        assertThat(fits.made()).containsExactly(0, 1, 2, 3, 4, 5);
        assertThat(fits.enoughFor()).containsExactly(6);
    }

    private static WhatFits choose(List<Integer> needs, int... rooms) {
        return WhatFits.of(
                needs,
                IntStream.of(rooms)
                        .mapToObj(room -> (WhatFits.Cloth) (garments, share) ->
                                garments.stream().mapToInt(needs::get).sum() <= room)
                        .toList());
    }
}
