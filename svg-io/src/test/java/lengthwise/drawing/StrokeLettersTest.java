package lengthwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import lengthwise.geometry.Point;
import org.junit.jupiter.api.Test;

class StrokeLettersTest {
    private static final String KNOWN = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-+=_.,:;!?'\"/\\|()[]<>#%&*·×°";

    @Test
    void everyLetterLooksLikeNoOther() {
        Map<Set<Set<Point>>, String> seen = new HashMap<>();
        for (int letter : KNOWN.codePoints().toArray()) {
            String text = Character.toString(letter);
            assertThat(StrokeLetters.knows(text)).as(text).isTrue();
            Set<Set<Point>> lines = new HashSet<>();
            for (List<Point> stroke : StrokeLetters.strokes(text, Point.ORIGIN, 6000)) {
                for (int i = 1; i < stroke.size(); i++) {
                    lines.add(Set.of(stroke.get(i - 1), stroke.get(i)));
                }
            }
            assertThat(lines).as(text).isNotEmpty();
            assertThat(seen.put(lines, text)).as(text).isNull();
        }
    }

    /** Between the line it stands on and the height asked for, and beside the next one. */
    @Test
    void everyLetterStaysInItsCell() {
        for (int letter : KNOWN.codePoints().toArray()) {
            List<Point> points =
                    StrokeLetters.strokes("M" + Character.toString(letter), new Point(1000, 2000), 6000).stream()
                            .flatMap(List::stream)
                            .collect(Collectors.toList());
            assertThat(points).allSatisfy(point -> {
                assertThat(point.y()).isBetween(2000L - 6000, 2000L);
                assertThat(point.x()).isBetween(1000L, 1000 + StrokeLetters.width("MM", 6000));
            });
        }
    }

    @Test
    void smallLettersAndAccentsAreDrawnPlain() {
        assertThat(StrokeLetters.strokes("Crème straße", Point.ORIGIN, 5000))
                .isEqualTo(StrokeLetters.strokes("CREME STRASSE", Point.ORIGIN, 5000));
        assertThat(StrokeLetters.width("straße", 6000)).isEqualTo(StrokeLetters.width("STRASSE", 6000));
        assertThat(StrokeLetters.knows("набор")).isFalse();
        assertThat(StrokeLetters.strokes("н", Point.ORIGIN, 6000)).hasSize(1);
    }
}
