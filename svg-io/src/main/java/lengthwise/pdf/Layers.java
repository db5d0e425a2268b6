package lengthwise.pdf;

import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lengthwise.drawing.Group;
import lengthwise.drawing.Names;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.jspecify.annotations.Nullable;

/**
 * The layers of a document: which of them show when it is opened, and the groups of the drawing that they are.
 *
 * <p>Reference: ISO 32000-1, 8.11 (optional content).
 */
final class Layers {
    private static final int DEEPEST = 20;

    private final IdentityHashMap<COSDictionary, Boolean> said = new IdentityHashMap<>();
    private final IdentityHashMap<COSDictionary, Group> groups = new IdentityHashMap<>();
    private final Set<String> hidden = new LinkedHashSet<>();
    private final boolean usual;
    private int numbers;

    Layers(COSDictionary catalog) {
        COSDictionary usage = dictionary(catalog.getDictionaryObject(COSName.OCPROPERTIES));
        COSDictionary opened = dictionary(usage.getDictionaryObject(COSName.D));
        usual = !COSName.OFF.equals(opened.getDictionaryObject(COSName.BASE_STATE));
        say(opened.getDictionaryObject(COSName.ON), true);
        say(opened.getDictionaryObject(COSName.OFF), false);
    }

    private static COSDictionary dictionary(@Nullable COSBase base) {
        return base instanceof COSDictionary dictionary ? dictionary : new COSDictionary();
    }

    private void say(@Nullable COSBase layers, boolean shows) {
        if (layers instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.getObject(i) instanceof COSDictionary layer) {
                    said.put(layer, shows);
                }
            }
        }
    }

    /** Returns the group that a layer is; empty for what only says which layers must show. */
    Optional<Group> group(COSDictionary content) {
        String name = content.getString(COSName.NAME);
        if (name == null || isMembership(content)) {
            return Optional.empty();
        }
        Names names = new Names(Optional.of(name.strip()).filter(n -> !n.isEmpty()), Optional.empty(), List.of());
        return Optional.of(groups.computeIfAbsent(content, layer -> new Group(numbers++, names, true)));
    }

    /** Says whether what belongs to a layer, or to several by a rule, shows; remembers the names of those that do not. */
    boolean shows(COSDictionary content) {
        boolean shows = isMembership(content) ? membership(content) : shown(content);
        String name = content.getString(COSName.NAME);
        if (!shows && name != null) {
            hidden.add(name.strip());
        }
        return shows;
    }

    /** Returns the names of layers that something lies on and that do not show. */
    Set<String> hidden() {
        return hidden;
    }

    private static boolean isMembership(COSDictionary content) {
        return content.containsKey(COSName.OCGS) || content.containsKey(COSName.VE);
    }

    private boolean shown(COSDictionary layer) {
        return said.getOrDefault(layer, usual);
    }

    private boolean membership(COSDictionary content) {
        if (content.getDictionaryObject(COSName.VE) instanceof COSArray expression) {
            return holds(expression, 0);
        }
        COSBase of = content.getDictionaryObject(COSName.OCGS);
        if (of instanceof COSDictionary one) {
            COSArray alone = new COSArray();
            alone.add(one);
            of = alone;
        }
        int on = 0;
        int off = 0;
        if (of instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.getObject(i) instanceof COSDictionary layer) {
                    on += shown(layer) ? 1 : 0;
                    off += shown(layer) ? 0 : 1;
                }
            }
        }
        String rule = String.valueOf(content.getNameAsString(COSName.P));
        return on + off == 0
                || switch (rule) {
                    case "AllOn" -> off == 0;
                    case "AnyOff" -> off > 0;
                    case "AllOff" -> on == 0;
                    default -> on > 0;
                };
    }

    private boolean holds(@Nullable COSBase expression, int depth) {
        if (expression instanceof COSDictionary layer) {
            return shown(layer);
        }
        if (!(expression instanceof COSArray array) || array.size() == 0 || depth > DEEPEST) {
            return true;
        }
        boolean all = true;
        boolean any = false;
        for (int i = 1; i < array.size(); i++) {
            boolean one = holds(array.getObject(i), depth + 1);
            all &= one;
            any |= one;
        }
        return switch (String.valueOf(array.getName(0))) {
            case "And" -> all;
            case "Or" -> any;
            case "Not" -> !any;
            default -> true;
        };
    }
}
