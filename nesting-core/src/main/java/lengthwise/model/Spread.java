package lengthwise.model;

/** How the fabric lies on the table, and what is lost at each end of a ply. */
public record Spread(Form form, Length endAllowance) {
    /** The ways of spreading. */
    public enum Form {
        SINGLE_LAYER(1),
        /** Folded parallel to the selvedges: two layers face to face, half as wide, the fold at y = 0. */
        FOLD_LENGTHWISE(2);

        private final int layers;

        Form(int layers) {
            this.layers = layers;
        }

        /** Returns how many layers one cut goes through. */
        public int layers() {
            return layers;
        }
    }
}
