package lengthwise.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class OrientationTest {
    private static final Point POINT = new Point(3, 7);

    @Test
    void orientationsMakeAGroup() {
        for (boolean flippedA : new boolean[] {false, true}) {
            for (QuarterTurn turnA : QuarterTurn.values()) {
                Orientation a = new Orientation(flippedA, turnA);
                assertThat(a.inverse().apply(a.apply(POINT))).isEqualTo(POINT);
                for (boolean flippedB : new boolean[] {false, true}) {
                    for (QuarterTurn turnB : QuarterTurn.values()) {
                        Orientation b = new Orientation(flippedB, turnB);
                        assertThat(b.after(a).apply(POINT)).isEqualTo(b.apply(a.apply(POINT)));
                    }
                }
            }
        }
    }
}
