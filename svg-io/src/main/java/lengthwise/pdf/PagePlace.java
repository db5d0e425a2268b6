package lengthwise.pdf;

import java.util.Optional;
import lengthwise.geometry.Point;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;

/**
 * Where a printed sheet lies in what is printed on several, as the sheet itself says: private data of a page (ISO 32000-1,
 * 14.5), which readers pass over.
 *
 * @param drawing tells what is printed apart, where there is more than one thing
 * @param corner where the upper left corner of the sheet lies in the drawing, in micrometres, y down
 */
record PagePlace(int drawing, Point corner) {
    private static final COSName OURS = COSName.getPDFName("Lengthwise");
    private static final COSName PRIVATE = COSName.getPDFName("Private");
    private static final COSName DRAWING = COSName.getPDFName("Drawing");
    private static final COSName CORNER = COSName.getPDFName("Corner");

    /** The entry must have a date; that of the day changes the file each day. */
    private static final String DATE = "D:20000101000000Z";

    private static final long FARTHEST = 100_000_000;

    void write(COSDictionary page) {
        COSArray at = new COSArray();
        at.add(COSInteger.get(corner.x()));
        at.add(COSInteger.get(corner.y()));
        COSDictionary data = new COSDictionary();
        data.setInt(DRAWING, drawing);
        data.setItem(CORNER, at);
        COSDictionary ours = new COSDictionary();
        ours.setString(COSName.LAST_MODIFIED, DATE);
        ours.setItem(PRIVATE, data);
        COSDictionary info = new COSDictionary();
        info.setItem(OURS, ours);
        page.setItem(COSName.PIECE_INFO, info);
        page.setString(COSName.LAST_MODIFIED, DATE);
    }

    static Optional<PagePlace> read(COSDictionary page) {
        if (page.getDictionaryObject(COSName.PIECE_INFO) instanceof COSDictionary info
                && info.getDictionaryObject(OURS) instanceof COSDictionary ours
                && ours.getDictionaryObject(PRIVATE) instanceof COSDictionary data
                && data.getDictionaryObject(CORNER) instanceof COSArray at
                && at.size() == 2
                && at.getObject(0) instanceof COSNumber x
                && at.getObject(1) instanceof COSNumber y
                && Math.abs(x.longValue()) < FARTHEST
                && Math.abs(y.longValue()) < FARTHEST) {
            return Optional.of(new PagePlace(data.getInt(DRAWING, 0), new Point(x.longValue(), y.longValue())));
        }
        return Optional.empty();
    }
}
