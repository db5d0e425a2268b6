/**
 * PDF at true scale, through PDFBox, which only this package uses: markers on paper, and patterns read from files. Lengths
 * are millimetres, on a page from its upper left corner, y down; a point of PDF is 25.4/72 mm (ISO 32000-1, section
 * 8.3.2.3). The doors are {@link MarkerPrint}, {@link PiecePrint} and {@link ProjectorPrint} to write, {@link PdfPattern}
 * to read.
 */
@NullMarked
package lengthwise.pdf;

import org.jspecify.annotations.NullMarked;
