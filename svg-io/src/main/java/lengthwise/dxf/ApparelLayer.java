package lengthwise.dxf;

import java.util.Arrays;
import java.util.Optional;

/** The numbers of layers in drawings of sewn products, after ASTM D6673. */
enum ApparelLayer {
    BOUNDARY(1),
    TURN_POINTS(2),
    CURVE_POINTS(3),
    NOTCHES(4),
    GRADE_REFERENCE(5),
    MIRROR_LINE(6),
    GRAIN_LINE(7),
    INTERNAL_LINES(8),
    STRIPE_LINE(9),
    PLAID_LINE(10),
    INTERNAL_CUTOUTS(11),
    DRILL_HOLES(13),
    SEW_LINES(14),
    ANNOTATION(15),
    T_NOTCHES(80),
    CASTLE_NOTCHES(81),
    CHECK_NOTCHES(82),
    U_NOTCHES(83);

    private final int number;

    ApparelLayer(int number) {
        this.number = number;
    }

    /** Returns the layer's name in a file. */
    String number() {
        return Integer.toString(number);
    }

    static Optional<ApparelLayer> of(String name) {
        return Arrays.stream(values())
                .filter(layer -> layer.number().equals(name))
                .findFirst();
    }
}
