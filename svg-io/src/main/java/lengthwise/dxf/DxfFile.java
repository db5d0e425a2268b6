package lengthwise.dxf;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lengthwise.drawing.DrawingException;
import lengthwise.dxf.GroupReader.Mark;

/**
 * What a DXF file holds: layers, blocks, and what is drawn, each thing by its place in the file. The groups of a thing
 * are read when it is drawn, so a large file takes little more memory than its own size.
 */
final class DxfFile {
    private static final int MOST_BYTES = 64 << 20;
    private static final int MOST_THINGS = 300_000;

    /** Groups that may be read while drawing; things in blocks are read again for each use. */
    private static final long MOST_READ = 20_000_000;

    private static final Set<String> VARIABLES = Set.of("$INSUNITS", "$MEASUREMENT");
    private static final Set<String> PARTS = Set.of("VERTEX", "SEQEND", "ENDBLK", "ENDSEC");

    private final String name;
    private final GroupReader groups;
    private final Map<String, String> header = new HashMap<>();
    private final Map<String, Layer> layers = new LinkedHashMap<>();
    private final Map<String, Block> blocks = new LinkedHashMap<>();
    private final List<Thing> things = new ArrayList<>();
    /** Where the reading is; a file without sections holds drawn things alone. */
    private String section = "ENTITIES";

    private Optional<Block> block = Optional.empty();
    private boolean complete;
    private int lastLine;
    private int count;
    private long read;

    private DxfFile(String name, byte[] bytes) throws DrawingException {
        this.name = name;
        byte[] unmarked = startsWithMark(bytes) ? Arrays.copyOfRange(bytes, 3, bytes.length) : bytes;
        this.groups = new GroupReader(name, unmarked, charset(bytes));
    }

    /** A layer: whether what lies on it is hidden, and the name of its kind of line. */
    record Layer(boolean hidden, boolean frozen, String lineType) {}

    /** Things to be drawn together wherever the block is inserted, measured from a base point. */
    record Block(String name, double baseX, double baseY, List<Thing> things) {}

    /**
     * Something drawn.
     *
     * @param name of the block, if it inserts one
     */
    record Thing(String kind, String layer, boolean closed, String name, int line, Mark mark) {}

    static DxfFile read(Path file) throws DrawingException {
        return read(file.toString(), bytes(file));
    }

    static DxfFile read(String name, byte[] bytes) throws DrawingException {
        refuseOtherFormats(name, bytes);
        DxfFile file = new DxfFile(name, bytes);
        file.read();
        return file;
    }

    private static byte[] bytes(Path file) throws DrawingException {
        if (Files.isDirectory(file)) {
            throw new DrawingException(file + " is a folder; name a DXF file.");
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                throw new DrawingException(
                        file + ": more than 64 MB of drawing; export the pattern's own layers alone.");
            }
            return bytes;
        } catch (NoSuchFileException e) {
            throw new DrawingException("There is no file " + file + "; check the name and the folder.", e);
        } catch (IOException e) {
            throw new DrawingException(file + ": cannot be opened: " + e.getMessage(), e);
        }
    }

    private static void refuseOtherFormats(String name, byte[] bytes) throws DrawingException {
        String start = new String(bytes, 0, Math.min(22, bytes.length), StandardCharsets.ISO_8859_1);
        if (start.isBlank()) {
            throw new DrawingException(name + " is empty; export the drawing again.");
        }
        if (start.startsWith("AutoCAD Binary DXF")) {
            throw new DrawingException(name + ", line 1: this is a binary DXF; export it as ASCII DXF.");
        }
        if (start.matches("(?s)AC1[0-9]{3}.*")) {
            throw new DrawingException(name + ", line 1: this is a DWG drawing; export it as ASCII DXF.");
        }
        if (start.startsWith("\u00ff\u00fe") || start.startsWith("\u00fe\u00ff")) {
            throw new DrawingException(name + ", line 1: two bytes a letter; export it as plain ASCII DXF.");
        }
    }

    /** Since AC1021 texts are in UTF-8, before in the code page that the header names. */
    private static Charset charset(byte[] bytes) {
        String version = headerWord(bytes, "$ACADVER");
        if (version.compareTo("AC1021") >= 0 || startsWithMark(bytes)) {
            return StandardCharsets.UTF_8;
        }
        String page = headerWord(bytes, "$DWGCODEPAGE").toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "");
        String charset = switch (page) {
            case "ANSI932", "DOS932" -> "windows-31j";
            case "ANSI936", "GB2312" -> "GBK";
            case "ANSI949" -> "x-windows-949";
            case "ANSI950", "BIG5" -> "Big5";
            default ->
                page.startsWith("ANSI")
                        ? "windows-" + page.substring(4)
                        : page.startsWith("DOS")
                                ? "IBM" + page.substring(3)
                                : page.startsWith("ISO8859") ? "ISO-8859-" + page.substring(7) : "windows-1252";
        };
        return Charset.isSupported(charset) ? Charset.forName(charset) : StandardCharsets.ISO_8859_1;
    }

    private static boolean startsWithMark(byte[] bytes) {
        return bytes.length > 2 && bytes[0] == (byte) 0xef && bytes[1] == (byte) 0xbb && bytes[2] == (byte) 0xbf;
    }

    /** Returns the value of a variable near the start of the file; texts can be read only once it is known. */
    private static String headerWord(byte[] bytes, String variable) {
        String start = new String(bytes, 0, Math.min(200_000, bytes.length), StandardCharsets.ISO_8859_1);
        int at = start.indexOf(variable);
        if (at < 0) {
            return "";
        }
        String[] lines = start.substring(at, Math.min(at + 200, start.length())).split("\r\n|\r|\n", 4);
        return lines.length < 3 ? "" : lines[2].strip();
    }

    String name() {
        return name;
    }

    /** Returns the value of a variable of the header, if the file has it. */
    Optional<String> header(String variable) {
        return Optional.ofNullable(header.get(variable));
    }

    Optional<Layer> layer(String named) {
        return Optional.ofNullable(layers.get(key(named)));
    }

    Map<String, Block> blocks() {
        return blocks;
    }

    Optional<Block> block(String named) {
        return Optional.ofNullable(blocks.get(key(named)));
    }

    List<Thing> things() {
        return things;
    }

    /** Says whether the file ends as it must, with EOF. */
    boolean complete() {
        return complete;
    }

    int lastLine() {
        return lastLine;
    }

    /** Names are the same in capitals and small letters. */
    static String key(String name) {
        return name.toUpperCase(Locale.ROOT);
    }

    /** Returns a thing with its groups. */
    Entity entity(Thing thing) throws DrawingException {
        Entity entity = Entity.read(name, thing.kind, groups.from(thing.mark));
        spend(entity, thing);
        return entity;
    }

    /** Returns what follows a thing as its parts, such as the vertices of a polyline. */
    List<Entity> parts(Thing thing, String kind) throws DrawingException {
        GroupReader reader = groups.from(thing.mark);
        spend(Entity.read(name, thing.kind, reader), thing);
        List<Entity> parts = new ArrayList<>();
        while (reader.code() == 0 && reader.is(kind)) {
            Entity part = Entity.read(name, kind, reader);
            parts.add(part);
            spend(part, thing);
        }
        return parts;
    }

    private void spend(Entity entity, Thing thing) throws DrawingException {
        read += 1 + entity.groups().size();
        if (read > MOST_READ) {
            throw new DrawingException(
                    name + ", line " + thing.line
                            + ": blocks repeat so much that the drawing has too many parts to be a pattern; export it without them.");
        }
    }

    /** A thing whose groups are being read. */
    private static final class Open {
        private final String kind;
        private final int line;
        private final Mark mark;
        private String layer = "0";
        private String name = "";
        private String lineType = "";
        private String flags = "0";
        private String colour = "0";
        private double x;
        private double y;

        Open(String kind, GroupReader groups) {
            this.kind = kind;
            this.line = groups.line();
            this.mark = groups.mark();
        }

        boolean flag(int bit) {
            return flags.matches("-?\\d{1,6}") && (Integer.parseInt(flags) & bit) != 0;
        }
    }

    private void read() throws DrawingException {
        Optional<Open> open = Optional.empty();
        String variable = "";
        while (groups.next()) {
            lastLine = groups.line();
            if (groups.code() == 0) {
                if (open.isPresent()) {
                    close(open.get());
                }
                if (groups.is("EOF")) {
                    complete = true;
                    break;
                }
                open = Optional.of(new Open(groups.word(), groups));
            } else if (groups.code() == 9) {
                variable = groups.word();
            } else if (section.equals("HEADER") && VARIABLES.contains(variable)) {
                header.putIfAbsent(variable, groups.word());
            }
            if (open.isPresent()) {
                note(open.get());
            }
        }
        if (!complete && !things.isEmpty() && isUnfinished(open)) {
            things.remove(things.size() - 1);
        }
    }

    /** A polyline without its end is not whole. */
    private boolean isUnfinished(Optional<Open> open) {
        return section.equals("ENTITIES")
                && open.filter(last -> last.kind.equals("VERTEX")).isPresent()
                && things.get(things.size() - 1).kind.equals("POLYLINE");
    }

    private void note(Open open) throws DrawingException {
        switch (groups.code()) {
            case 2 -> {
                // Only the first names the thing: variables of the header have such groups as well.
                if (open.name.isEmpty()) {
                    open.name = groups.text();
                    section = open.kind.equals("SECTION") ? open.name.toUpperCase(Locale.ROOT) : section;
                }
            }
            case 6 -> open.lineType = groups.word();
            case 8 -> open.layer = groups.text();
            case 10 -> open.x = open.kind.equals("BLOCK") ? number() : 0;
            case 20 -> open.y = open.kind.equals("BLOCK") ? number() : 0;
            case 62 -> open.colour = groups.word();
            case 70 -> open.flags = groups.word();
            default -> {
                // Read when it is drawn.
            }
        }
    }

    private double number() throws DrawingException {
        Entity.Group group = new Entity.Group(groups.code(), groups.text(), groups.line());
        return new Entity(name, "BLOCK", group.line(), List.of(group)).number(group);
    }

    private void close(Open open) throws DrawingException {
        switch (open.kind) {
            case "SECTION", "TABLE", "ENDTAB" -> {
                // They hold things.
            }
            case "ENDSEC" -> {
                section = "";
                block = Optional.empty();
            }
            case "LAYER" -> {
                count(open);
                boolean off = open.colour.startsWith("-") || open.name.equalsIgnoreCase("Defpoints");
                layers.putIfAbsent(key(open.name), new Layer(off, open.flag(1), open.lineType));
            }
            case "BLOCK" -> {
                count(open);
                Block begun = new Block(open.name, open.x, open.y, new ArrayList<>());
                block = Optional.of(begun);
                blocks.putIfAbsent(key(open.name), begun);
            }
            case "ENDBLK" -> block = Optional.empty();
            default -> add(open);
        }
    }

    private void add(Open open) throws DrawingException {
        if (PARTS.contains(open.kind) || !(section.equals("ENTITIES") || section.equals("BLOCKS"))) {
            return;
        }
        count(open);
        Thing thing = new Thing(open.kind, open.layer, open.flag(1), open.name, open.line, open.mark);
        if (section.equals("ENTITIES")) {
            things.add(thing);
        } else {
            block.ifPresent(into -> into.things.add(thing));
        }
    }

    private void count(Open open) throws DrawingException {
        if (++count > MOST_THINGS) {
            throw new DrawingException(name + ", line " + open.line + ": more than " + MOST_THINGS
                    + " lines and shapes are too many for a pattern; export the pattern's own layers alone.");
        }
    }
}
