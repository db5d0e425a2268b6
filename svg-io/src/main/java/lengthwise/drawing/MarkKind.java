package lengthwise.drawing;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a maker's word for a line says it is. Common practice, no source. */
enum MarkKind {
    GRAIN("grain grainline stretch"),
    FOLD("fold foldline"),
    NOTCH("notch notches"),
    DRILL_HOLE("drill drillhole drillholes"),
    SEW_LINE("sew sewline sewing stitch stitchline stitching seam seamline seams"),
    CUT_OUT("cutout cutouts hole holes"),
    INNER_LINE("innerline innerlines"),
    SCALE_BOX("scale scalebox testsquare calibration"),
    FRAME("frame border page artboard background"),
    CUT("cut cutline cutting outline");

    private final String words;

    MarkKind(String words) {
        this.words = " " + words + " ";
    }

    private boolean isSaidBy(String word) {
        return words.contains(" " + word + " ");
    }

    /** Returns what a name says; the style class speaks before the label, the label before the id. */
    static Optional<MarkKind> of(Names names) {
        return of(names.classes())
                .or(() -> of(names.label().stream().toList()))
                .or(() -> of(names.id().stream().toList()));
    }

    /** Says whether any of the names says that it is this. */
    boolean isSaidByAny(Names names) {
        return Stream.of(
                        names.classes(),
                        names.label().stream().toList(),
                        names.id().stream().toList())
                .anyMatch(said -> of(said).filter(this::equals).isPresent());
    }

    private static Optional<MarkKind> of(List<String> names) {
        List<String> words = names.stream().flatMap(Names::words).toList();
        Set<String> said = words.stream().collect(Collectors.toSet());
        if (said.contains("test") && said.contains("square")) {
            return Optional.of(SCALE_BOX);
        }
        if (said.contains("cut") && said.contains("out")) {
            return Optional.of(CUT_OUT);
        }
        for (MarkKind kind : values()) {
            boolean allowance = kind == SEW_LINE && said.contains("allowance");
            if (!allowance && words.stream().anyMatch(kind::isSaidBy)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }

    /** Says whether a name consists of such words alone, so that it names no piece. */
    static boolean isAllThereIs(String name) {
        List<String> words = Names.words(name).toList();
        return !words.isEmpty() && words.stream().allMatch(MarkKind::isKnown);
    }

    private static boolean isKnown(String word) {
        if (word.equals("line") || word.equals("lines")) {
            return true;
        }
        for (MarkKind kind : values()) {
            if (kind.isSaidBy(word)) {
                return true;
            }
        }
        return false;
    }
}
