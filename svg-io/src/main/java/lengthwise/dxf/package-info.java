/** DXF in and out. Coordinates in a file are millimetres with y up, unless it says otherwise. */
@NullMarked
package lengthwise.dxf;

import org.jspecify.annotations.NullMarked;
