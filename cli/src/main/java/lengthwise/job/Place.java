package lengthwise.job;

/** Where something stands in a file; lines and columns count from 1. */
record Place(String file, int line, int column) {
    @Override
    public String toString() {
        return file + ":" + line + ":" + column;
    }
}
