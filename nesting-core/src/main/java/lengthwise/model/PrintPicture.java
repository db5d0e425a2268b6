package lengthwise.model;

/**
 * A picture of one repeat of a print, for the eye: nothing is decided by it. Its top is the print's up end, its lower left
 * corner the print's origin, its sides are the repeat.
 *
 * @param mediaType such as {@code image/png}
 * @param base64 the picture's file
 */
public record PrintPicture(String mediaType, String base64) {
    @Override
    public String toString() {
        return mediaType;
    }
}
