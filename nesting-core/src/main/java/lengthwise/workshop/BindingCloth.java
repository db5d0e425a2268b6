package lengthwise.workshop;

import lengthwise.model.Length;

/**
 * The cloth that strips for bindings are cut from.
 *
 * @param length of the cloth along its selvedge
 * @param width of the cloth that is used across it
 * @param strips how many strips are cut, of which the binding is joined
 */
public record BindingCloth(Length length, Length width, int strips) {
    /** What the rounding of a side to the grid may seem to add to a number of strips. */
    private static final double ROUNDING = 1e-3;

    /** Returns how many joins the binding has, all of it in one. */
    public int joins() {
        return strips - 1;
    }

    /**
     * Returns the cloth for strips cut straight across it, as many as n · W − (n − 1) · loss is enough with.
     *
     * @param binding how long it is in all
     * @param cutWidth of the strips
     * @param usable width of the cloth, W
     * @param loss what each join takes of the length; a mitred join takes about the width of the strip: common practice, no
     *     source
     * @throws IllegalArgumentException if a strip is no longer than a join takes
     */
    public static BindingCloth straight(Length binding, Length cutWidth, Length usable, Length loss) {
        long gain = usable.minus(loss).micrometres();
        if (gain <= 0) {
            throw new IllegalArgumentException("Joins of %s use strips of %s up".formatted(loss, usable));
        }
        long strips = Math.max(1, -Math.floorDiv(-binding.minus(loss).micrometres(), gain));
        return new BindingCloth(cutWidth.times(strips), Length.min(usable, binding), (int) strips);
    }

    /**
     * Returns the cloth for strips at 45° to the selvedge. Continuous bias is as long as the area of its cloth divided by the
     * width of the strip: a square of the side √(binding · width), and what its seam takes. Where the cloth is too narrow for the
     * square, an oblong over its whole width.
     *
     * @param binding how long it is in all
     * @param cutWidth of the strips
     * @param usable width of the cloth
     * @param seam what the seams of the square take of each side
     * @throws IllegalArgumentException if the cloth is no wider than the seam
     */
    public static BindingCloth bias(Length binding, Length cutWidth, Length usable, Length seam) {
        double area = (double) binding.micrometres() * cutWidth.micrometres();
        Length side = up(StrictMath.sqrt(area)).plus(seam);
        if (side.compareTo(usable) <= 0) {
            return new BindingCloth(side, side, strips(side.minus(seam), cutWidth));
        }
        long net = usable.minus(seam).micrometres();
        if (net <= 0) {
            throw new IllegalArgumentException("A seam of %s uses cloth of %s up".formatted(seam, usable));
        }
        Length length = up(area / net).plus(seam);
        return new BindingCloth(length, usable, strips(usable.minus(seam), cutWidth));
    }

    /** A strip of the width w takes w · √2 along the selvedge; as many as lie beside each other make up the cloth. */
    private static int strips(Length along, Length cutWidth) {
        return (int) Math.max(
                1, StrictMath.ceil(along.micrometres() / (cutWidth.micrometres() * StrictMath.sqrt(2)) - ROUNDING));
    }

    private static Length up(double micrometres) {
        return new Length((long) StrictMath.ceil(micrometres - 1e-6));
    }
}
