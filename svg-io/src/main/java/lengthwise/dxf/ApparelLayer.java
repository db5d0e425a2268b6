package lengthwise.dxf;

import java.util.Arrays;
import java.util.Optional;

/** The numbers of layers in drawings of sewn products, after ASTM D6673. */
enum ApparelLayer {
    BOUNDARY(1, "cut"),
    TURN_POINTS(2, ""),
    CURVE_POINTS(3, ""),
    NOTCHES(4, "notch"),
    GRADE_REFERENCE(5, "innerline"),
    MIRROR_LINE(6, "fold"),
    GRAIN_LINE(7, "grain"),
    INTERNAL_LINES(8, "innerline"),
    STRIPE_LINE(9, "innerline"),
    PLAID_LINE(10, "innerline"),
    INTERNAL_CUTOUTS(11, "cutout"),
    DRILL_HOLES(13, "drill"),
    SEW_LINES(14, "sew"),
    ANNOTATION(15, "innerline"),
    T_NOTCHES(80, "notch"),
    CASTLE_NOTCHES(81, "notch"),
    CHECK_NOTCHES(82, "notch"),
    U_NOTCHES(83, "notch");

    private final int number;
    private final String word;

    ApparelLayer(int number, String word) {
        this.number = number;
        this.word = word;
    }

    /** Returns what recognition calls a line on the layer. */
    String word() {
        return word;
    }

    boolean isNotch() {
        return word.equals("notch");
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
