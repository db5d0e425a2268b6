package lengthwise.cli;

import java.nio.file.Path;
import java.util.List;
import lengthwise.dxf.DxfMarker;
import lengthwise.svg.MarkerDrawing;

/** A marker as DXF: pieces with their marks, or the lines to cut alone. */
enum DxfExport implements ExportFormat {
    PIECES("dxf") {
        @Override
        public byte[] write(Path file, MarkerDrawing marker) {
            return DxfMarker.pieces(marker);
        }
    },
    LINES("dxf-lines") {
        @Override
        public byte[] write(Path file, MarkerDrawing marker) {
            return DxfMarker.lines(marker);
        }
    };

    private final String word;

    DxfExport(String word) {
        this.word = word;
    }

    @Override
    public String word() {
        return word;
    }

    @Override
    public List<String> cautions() {
        return List.of("Measure a piece in the program or machine that takes the file before anything is cut: some read"
                + " every file as inches. Blades and lasers injure, and elastane, PVC and nylon may give off harmful fumes"
                + " when cut with heat: follow the machine's manual and local codes, and let trained people work.");
    }
}
