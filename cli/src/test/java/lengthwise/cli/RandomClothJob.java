package lengthwise.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A seeded job on one cloth, as a maker might write it, with its drawing: cloth, spreading, rules and pieces at random, so
 * that any two rules meet sooner or later. Contradictions are rarer than in a draw of words, that there be markers.
 *
 * <p>A rule of the cloth is a method in {@link #CLOTH_RULES}; one of a piece, a method in {@link #PIECE_RULES}.
 */
final class RandomClothJob {
    private static final List<Consumer<RandomClothJob>> CLOTH_RULES = List.of(
            RandomClothJob::spread,
            RandomClothJob::edges,
            RandomClothJob::repeat,
            RandomClothJob::direction,
            RandomClothJob::pile,
            RandomClothJob::stretch,
            RandomClothJob::rightSide,
            RandomClothJob::shrinkage,
            RandomClothJob::border,
            RandomClothJob::zones,
            RandomClothJob::flaws,
            RandomClothJob::there,
            RandomClothJob::shade,
            RandomClothJob::motifs);

    private static final List<Consumer<Patch>> PIECE_RULES = List.of(
            Patch::cut,
            Patch::up,
            Patch::match,
            Patch::bias,
            Patch::ownGap,
            Patch::tied,
            Patch::selvedge,
            Patch::filler);

    /** Rules of a piece that go by what the other pieces say. */
    private static final List<Consumer<Patch>> LAST_PIECE_RULES = List.of(Patch::motif, Patch::tolerance);

    /** What the job says of the cloth, by its keys. */
    final Map<String, String> cloth = new LinkedHashMap<>();

    final List<Patch> patches = new ArrayList<>();
    final String arrowMeans;
    final String seamAllowance;

    private final SplittableRandom random;
    /** For rules that came later, so that a seed still draws what it drew before them. */
    private final SplittableRandom later;

    private final String gap;
    private final int make;
    private String form = "single-layer";
    private final int width;

    RandomClothJob(long seed) {
        this.random = new SplittableRandom(seed);
        this.later = new SplittableRandom(~seed);
        int inches = oneIn(10) ? between(10, 16) : between(24, 63);
        this.width = (int) (25.4 * inches);
        cloth.put("width", oneIn(4) ? inches + " in" : width + " mm");
        CLOTH_RULES.forEach(rule -> rule.accept(this));
        this.arrowMeans = cloth.containsKey("most-stretch") && oneIn(5) ? "stretch" : "grain";
        this.seamAllowance = oneIn(4) ? between(3, 12) + " mm" : "included";
        int count = between(1, 5);
        for (int i = 0; i < count; i++) {
            Patch patch = new Patch(i);
            patches.add(patch);
            PIECE_RULES.forEach(rule -> rule.accept(patch));
        }
        LAST_PIECE_RULES.forEach(patches::forEach);
        this.gap = between(0, 8) / 2.0 + " mm";
        this.make = between(1, 3);
    }

    /** Returns the same job on cloth of which there is as much as need be. */
    String onEndlessCloth() {
        Map<String, String> endless = new LinkedHashMap<>(cloth);
        endless.remove("length");
        endless.remove("outline");
        return text(endless);
    }

    String text() {
        return text(cloth);
    }

    private String text(Map<String, String> said) {
        String pieces = patches.stream().map(Patch::text).collect(Collectors.joining());
        boolean drawn = patches.stream().anyMatch(patch -> patch.kind != Patch.Kind.STRIP);
        String drawings = drawn
                ? "drawings: [{file: patches.svg, seam-allowance: %s, arrow-means: %s}]\n"
                        .formatted(seamAllowance, arrowMeans)
                : "";
        return """
                version: 1
                job: cloth at random
                %sfabrics:
                  cloth: %s
                pieces:
                %sgap: %s
                order: [{make: %d}]
                """.formatted(drawings, flow(said), pieces, gap, make);
    }

    String drawing() {
        StringBuilder svg = new StringBuilder("""
                <svg xmlns="http://www.w3.org/2000/svg" width="4000mm" height="800mm" viewBox="0 0 4000 800">
                <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
                """);
        patches.forEach(patch -> svg.append(patch.svg));
        return svg.append("</svg>\n").toString();
    }

    String form() {
        return form;
    }

    /** Says whether one layer lies right side down on another. */
    boolean layersFace() {
        return !form.equals("single-layer") && !form.equals("plies-face-up");
    }

    /** Returns what the job says of the cloth by a key, nothing where it does not. */
    private String said(String key) {
        return cloth.getOrDefault(key, "");
    }

    boolean says(String key) {
        return cloth.containsKey(key);
    }

    boolean says(String key, String words) {
        return said(key).contains(words);
    }

    /** Returns the share that the cloth loses along an axis. */
    double shrinks(String axis) {
        return says("shrinkage") ? number(said("shrinkage"), axis) / 100 : 0;
    }

    /** Returns what is added all round a drawn piece. */
    double seam() {
        return seamAllowance.equals("included") ? 0 : number(seamAllowance, "");
    }

    /** Returns the cuttable width by hand: half of it if folded along, less the edges, and what is left after washing. */
    double cuttableWidth() {
        double laid = boughtWidth() / (form.equals("fold-lengthwise") || form.equals("selvedges-to-middle") ? 2 : 1);
        double lost = switch (form) {
            case "fold-lengthwise" -> Math.max(edge("near"), edge("far"));
            case "tube", "selvedges-to-middle" -> 0;
            default -> edge("near") + edge("far");
        };
        return (laid - lost) * widthKept();
    }

    /** Returns the wider of the parts beside the join of two selvedges, of each of which a millimetre at least is lost. */
    double besideJoin() {
        double quarter = boughtWidth() / 4;
        return widthKept() * Math.max(quarter - Math.max(1, edge("near")), quarter - Math.max(1, edge("far")));
    }

    /** Returns what of a zone lies in the cuttable width. */
    double zoneWidth(String name) {
        String zone = said("zones").substring(said("zones").indexOf(name + ":"));
        double from = Math.max(number(zone, "from-selvedge"), edge("near"));
        double to = Math.min(number(zone, "to"), boughtWidth() - edge("far"));
        return Math.max(0, to - from) * widthKept();
    }

    /** Returns how far the border's line lies from the near edge of the cuttable width. */
    double borderLine() {
        double fromSelvedge = number(said("border"), "from-selvedge");
        double fromNear = says("border", "near") ? fromSelvedge : boughtWidth() - fromSelvedge;
        return (fromNear - edge("near")) * widthKept();
    }

    /** Returns how far the print of the lower half of folded cloth lies off that of the upper, which it meets at the fold. */
    double offInLowerLayer() {
        double repeat = number(said("repeat"), "crosswise") * (says("repeat", "half-drop") ? 2 : 1);
        double twice = 2 * (boughtWidth() / 2 - number(said("repeat"), "from-selvedge"));
        return Math.abs(Math.IEEEremainder(twice, repeat)) * widthKept();
    }

    /** Returns how long a marker there is cloth for: what is there, washed, shared by the plies, less the ends of each. */
    double room() {
        double bought = says("length") ? number(said("length"), "") : reach(said("outline"));
        double kept = says("shrinkage", "pre-wash") ? 1 - shrinks("lengthwise") : 1;
        double ends = number(said("spread"), "each-end");
        return switch (form) {
            case "fold-crosswise" -> bought * kept / 2 - ends;
            case "plies-face-up", "plies-face-to-face" -> bought * kept / number(said("spread"), "plies: ") - 2 * ends;
            default -> bought * kept - 2 * ends;
        };
    }

    private static double reach(String outline) {
        return Pattern.compile("from-start: (\\d+)")
                .matcher(outline)
                .results()
                .mapToDouble(found -> Double.parseDouble(found.group(1)))
                .max()
                .orElse(0);
    }

    /** Returns how far apart along an axis may lie what is of one shade. */
    double shade(String axis) {
        return number(said("shade"), axis);
    }

    private double boughtWidth() {
        String said = said("width");
        return said.endsWith("in") ? 25.4 * number(said, "") : number(said, "");
    }

    private double edge(String side) {
        String said = said("unusable-edge");
        return said.isEmpty() ? 0 : number(said, said.contains("each-side") ? "each-side" : side);
    }

    private double widthKept() {
        return says("shrinkage", "pre-wash") ? 1 - shrinks("crosswise") : 1;
    }

    /** Returns the first number behind a word. */
    private static double number(String said, String word) {
        Matcher number = Pattern.compile("[0-9.]+").matcher(said.substring(said.indexOf(word)));
        if (!number.find()) {
            throw new IllegalArgumentException(said + " has no number behind " + word);
        }
        return Double.parseDouble(number.group());
    }

    /** Says whether pieces with an up end have to agree with the print's, all of them or those of a garment. */
    boolean hasUp() {
        String direction = said("direction");
        return direction.startsWith("one-way") || (direction.isEmpty() && (says("repeat") || says("pile")));
    }

    Patch patch(String name) {
        return patches.stream()
                .filter(patch -> patch.name.equals(name))
                .findFirst()
                .orElseThrow();
    }

    private void spread() {
        form = oneIn(2)
                ? "single-layer"
                : one(
                        "fold-lengthwise",
                        "fold-lengthwise",
                        "fold-crosswise",
                        "selvedges-to-middle",
                        "tube",
                        "plies-face-up",
                        "plies-face-to-face");
        String spread = "form: " + form + ", end-allowance: {each-end: " + between(0, 30) + " mm}";
        if (form.startsWith("plies")) {
            spread += ", plies: " + 2 * between(1, 3);
        }
        if (form.equals("plies-face-to-face")) {
            spread += ", plies-run: " + one("same-way", "to-and-fro");
        }
        if (form.startsWith("fold") && oneIn(6)) {
            spread += ", compare: single-layer";
        }
        cloth.put("spread", "{" + spread + "}");
    }

    private void edges() {
        if (!form.equals("tube")) {
            cloth.put(
                    "unusable-edge",
                    oneIn(3)
                            ? "{near: %d mm, far: %d mm}".formatted(between(0, 30), between(0, 30))
                            : "{each-side: %d mm}".formatted(between(0, 25)));
        }
    }

    private void repeat() {
        if (oneIn(2)) {
            String along = "lengthwise: " + between(50, 320) + " mm";
            String across = "crosswise: " + between(50, 160) + " mm";
            String repeat = one(along, across, along + ", " + across, along + ", " + across + ", half-drop: yes");
            cloth.put(
                    "repeat",
                    "{%s%s, origin: {from-start: %d mm, from-selvedge: %d mm}}"
                            .formatted(repeat, oneIn(3) ? ", mirrored: yes" : "", between(0, 90), between(0, 90)));
        }
    }

    private void direction() {
        if (!oneIn(3)) {
            cloth.put("direction", one("either-way", "either-way", "one-way", "one-way-per-garment"));
        }
    }

    private void pile() {
        if (oneIn(6) && !said("direction").equals("either-way")) {
            cloth.remove("direction");
            cloth.put("pile", one("up", "down"));
        }
    }

    private void stretch() {
        if (oneIn(3)) {
            cloth.put("most-stretch", one("lengthwise", "crosswise"));
        }
    }

    private void rightSide() {
        if (oneIn(5)) {
            cloth.put("right-side", "body");
        }
    }

    private void shrinkage() {
        if (oneIn(3)) {
            int along = between(0, 50);
            cloth.put(
                    "shrinkage",
                    "{lengthwise: %s %%, crosswise: %s %%, handled: %s}"
                            .formatted(
                                    along / 10.0,
                                    (oneIn(3) ? along : between(0, 50)) / 10.0,
                                    one("pre-wash", "add-to-pieces", "in-pattern")));
        }
    }

    private void border() {
        if (oneIn(6) && !hasUp()) {
            cloth.put("direction", "either-way");
            cloth.put("border", "{from-selvedge: %d mm, selvedge: %s}".formatted(between(20, 80), one("near", "far")));
        }
    }

    private void zones() {
        if (oneIn(6)) {
            int at = between(150, width - 50);
            cloth.put(
                    "zones",
                    "{one: {from-selvedge: 0 mm, to: %d mm}, other: {from-selvedge: %d mm, to: %d mm}}"
                            .formatted(at, at, width));
        }
    }

    private void flaws() {
        boolean taken = form.equals("single-layer") || form.equals("fold-lengthwise");
        if (taken && oneIn(3)) {
            String across = oneIn(4)
                    ? ""
                    : ", from-selvedge: %d mm, width: %d mm".formatted(between(0, width - 60), between(1, 60));
            cloth.put(
                    "flaws",
                    "[{from-start: %d mm, length: %d mm%s}]".formatted(between(0, 500), between(1, 60), across));
        }
    }

    private void there() {
        if (oneIn(5)) {
            int length = between(300, 4000);
            if (form.equals("single-layer") && oneIn(2)) {
                cloth.put(
                        "outline",
                        "[{from-start: 0 mm, from-selvedge: 0 mm}, {from-start: %d mm, from-selvedge: 0 mm}, {from-start: %d mm, from-selvedge: %d mm}, {from-start: 0 mm, from-selvedge: %d mm}]"
                                .formatted(length, between(150, length), width, width));
            } else {
                cloth.put("length", length + " mm");
            }
        }
    }

    private void shade() {
        if (oneIn(8)) {
            String along = "lengthwise: " + between(200, 1500) + " mm";
            String across = "crosswise: " + between(100, Math.min(900, width)) + " mm";
            cloth.put("shade", "{" + one(along, across, along + ", " + across) + "}");
        }
    }

    /** One motif, smaller than the repeat; on stripes a bar. */
    private void motifs() {
        if (says("repeat")) {
            List<String> keys = new ArrayList<>();
            boolean round = says("repeat", "lengthwise") && says("repeat", "crosswise") && later.nextBoolean();
            int least = Integer.MAX_VALUE;
            for (String axis : List.of("lengthwise", "crosswise")) {
                if (says("repeat", axis)) {
                    int repeat = (int) number(said("repeat"), axis);
                    least = Math.min(least, repeat);
                    keys.add("%s: %d mm".formatted(axis, later.nextInt(repeat)));
                    if (!round) {
                        String size = axis.equals("lengthwise") ? "length" : "width";
                        keys.add("%s: %d mm".formatted(size, later.nextInt(5, repeat / 2)));
                    }
                }
            }
            if (round) {
                keys.add("radius: %d mm".formatted(later.nextInt(5, least / 3)));
            }
            cloth.put(
                    "repeat",
                    said("repeat").replaceFirst("}$", ", motifs: {rose: {" + String.join(", ", keys) + "}}}"));
        }
    }

    /** Returns what of a repeat the motif leaves along an axis; nothing where it does not repeat that way. */
    double besideMotif(String axis) {
        String motif = said("repeat").substring(said("repeat").indexOf("rose"));
        double size = motif.contains("radius")
                ? 2 * number(motif, "radius")
                : number(motif, axis.equals("lengthwise") ? "length:" : "width:");
        return number(said("repeat"), axis) - size;
    }

    private boolean oneIn(int n) {
        return random.nextInt(n) == 0;
    }

    private int between(int least, int most) {
        return random.nextInt(least, most + 1);
    }

    private String one(String... words) {
        return words[random.nextInt(words.length)];
    }

    private static String flow(Map<String, String> keys) {
        return keys.entrySet().stream()
                .map(key -> key.getKey() + ": " + key.getValue())
                .collect(Collectors.joining(", ", "{", "}"));
    }

    /** A piece of the job. Drawn ones stand upright on the page, about a middle of their own; millimetres. */
    final class Patch {
        final String name;
        final Map<String, String> keys = new LinkedHashMap<>();
        final Kind kind;

        /** What it measures across and along its grain as drawn; of a half, one half. */
        double across;

        double along;
        boolean headed;
        /** Whether its outermost edges run along its grain. */
        boolean straightSides = true;

        private final double x;
        private final double y = 400;
        private String svg = "";

        /** What a piece is drawn as. */
        enum Kind {
            PANEL,
            EVEN,
            HALF,
            STRIP
        }

        Patch(int number) {
            this.kind = Kind.values()[Math.max(0, between(-1, 3))];
            this.name = kind.name().toLowerCase(Locale.ROOT) + "-" + number;
            this.x = 400 + 700.0 * number;
            this.headed = !oneIn(20);
            switch (kind) {
                case PANEL -> panel();
                case EVEN -> even();
                case HALF -> half();
                case STRIP -> strip();
            }
        }

        boolean says(String key, String words) {
            return keys.getOrDefault(key, "").contains(words);
        }

        /** How far its match point may be off. */
        double matchTolerance() {
            return number(keys.getOrDefault("match-point", ""), "tolerance");
        }

        private void panel() {
            int corners = between(5, 10);
            List<double[]> ring = new ArrayList<>();
            for (int i = 0; i < corners; i++) {
                double angle = 2 * Math.PI * (i + 0.7 * random.nextDouble()) / corners;
                double radius = between(45, 140);
                ring.add(new double[] {radius * Math.cos(angle), radius * Math.sin(angle)});
            }
            draw(ring, 30, "");
        }

        private void even() {
            double half = between(30, 120);
            double top = between(40, 140);
            double shoulder = between(20, 120);
            straightSides = shoulder <= half;
            draw(
                    List.of(
                            new double[] {-half, top},
                            new double[] {half, top},
                            new double[] {half, -top / 2},
                            new double[] {shoulder, -top},
                            new double[] {-shoulder, -top},
                            new double[] {-half, -top / 2}),
                    30,
                    "");
        }

        private void half() {
            double long_ = between(50, 150);
            double wide = between(60, 140);
            double waist = between(50, 100);
            draw(
                    List.of(
                            new double[] {0, long_},
                            new double[] {wide, long_ - between(0, 20)},
                            new double[] {waist, 0},
                            new double[] {wide * 0.8, -long_},
                            new double[] {0, -long_}),
                    30,
                    "<path class=\"fold\" d=\"M%s %s V%s\"/>".formatted(mm(x), mm(y - long_), mm(y + long_)));
        }

        private void strip() {
            across = between(20, 60);
            along = between(100, 450);
            keys.put("strip", "{cut-width: %s mm, length: %s mm}".formatted(mm(across), mm(along)));
            keys.put("runs", one("lengthwise", "crosswise", "either", "bias"));
            keys.put("print", one("ignore", "ignore", "follow"));
        }

        private void draw(List<double[]> ring, double halfGrain, String more) {
            across = span(ring, 0);
            along = span(ring, 1);
            String outline = ring.stream()
                    .map(at -> mm(x + at[0]) + " " + mm(y + at[1]))
                    .collect(Collectors.joining(" L", "M", " Z"));
            double shift = kind == Kind.HALF ? 25 : 0;
            StringBuilder drawn =
                    new StringBuilder("<g id=\"%s\"><path class=\"cut\" d=\"%s\"/>".formatted(name, outline));
            drawn.append("<line class=\"grain\" x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"%s/>"
                    .formatted(
                            mm(x + shift),
                            mm(y + halfGrain),
                            mm(x + shift),
                            mm(y - halfGrain),
                            headed ? " marker-end=\"url(#head)\"" : ""));
            if (kind == Kind.PANEL) {
                for (double[] at : new double[][] {{-14, 8}, {13, -9}}) {
                    drawn.append("<circle class=\"drill\" cx=\"%s\" cy=\"%s\" r=\"1.5\"/>"
                            .formatted(mm(x + at[0]), mm(y + at[1])));
                }
                notch(drawn, ring.get(0), ring.get(1));
                notch(drawn, ring.get(2), ring.get(3));
            }
            svg = drawn.append(more).append("</g>\n").toString();
        }

        private void notch(StringBuilder drawn, double[] from, double[] to) {
            double[] at = {(from[0] + to[0]) / 2, (from[1] + to[1]) / 2};
            double share = 1 - 5 / Math.hypot(at[0], at[1]);
            drawn.append("<path class=\"notch\" d=\"M%s %s L%s %s\"/>"
                    .formatted(mm(x + at[0]), mm(y + at[1]), mm(x + share * at[0]), mm(y + share * at[1])));
        }

        private void cut() {
            keys.put(
                    "cut",
                    switch (kind) {
                        case PANEL -> layersFace() && !oneIn(12) ? "1 pair" : one("1 pair", "1 alike", "2 alike");
                        case EVEN -> one("1", "2", "1 pair");
                        case HALF -> "1 on fold";
                        case STRIP -> one("1", "2", "3");
                    });
        }

        private void up() {
            if (kind != Kind.STRIP && oneIn(5)) {
                keys.put("up", one("as-drawn", "none"));
            }
        }

        private void match() {
            if (kind != Kind.PANEL || !RandomClothJob.this.says("repeat") || !oneIn(2)) {
                return;
            }
            String at = one("drill-hole 1", "notch 2");
            String along = oneIn(4) ? ", along: " + one("lengthwise", "crosswise") : "";
            List<String> earlier = patches.stream()
                    .filter(other -> other != this && other.kind == Kind.PANEL)
                    .map(other -> other.name)
                    .toList();
            String to = "";
            if (oneIn(3)) {
                to = ", to: other-hand";
            } else if (!earlier.isEmpty() && oneIn(2)) {
                to = ", to: {piece: %s, at: drill-hole 2}".formatted(earlier.get(between(0, earlier.size() - 1)));
            }
            keys.put("match-point", "{at: %s, tolerance: %s mm%s%s}".formatted(at, between(0, 6) / 2.0, along, to));
        }

        private void bias() {
            if (kind != Kind.STRIP && oneIn(10)) {
                keys.put("grain", "bias");
            }
        }

        private void ownGap() {
            if (oneIn(5)) {
                keys.put("gap", between(0, 9) + " mm");
            }
        }

        private void tied() {
            if (kind == Kind.STRIP) {
                return;
            }
            if (RandomClothJob.this.says("border") && oneIn(2)) {
                keys.put("border", kind == Kind.PANEL && oneIn(2) ? one("notch 1", "drill-hole 2") : "hem");
            } else if (RandomClothJob.this.says("zones") && oneIn(2)) {
                keys.put("zone", one("one", "other"));
            }
        }

        private void selvedge() {
            if ((kind == Kind.EVEN || kind == Kind.STRIP) && oneIn(8)) {
                keys.put("edge-on-selvedge", "yes");
            }
        }

        private void filler() {
            if (kind != Kind.HALF && patches.size() > 1 && oneIn(12)) {
                keys.put("filler", "{at-most: %d}".formatted(between(1, 4)));
            }
        }

        private void motif() {
            boolean known =
                    List.of("single-layer", "fold-lengthwise", "plies-face-up").contains(form);
            boolean tied = keys.containsKey("border")
                    || keys.containsKey("zone")
                    || keys.containsKey("edge-on-selvedge")
                    || says("match-point", "to:")
                    || isMatchedTo()
                    || (kind == Kind.HALF && form.equals("fold-lengthwise"));
            boolean goes = kind != Kind.STRIP && RandomClothJob.this.says("repeat", "motifs");
            if (!goes || later.nextInt(!known || tied ? 40 : keys.containsKey("match-point") ? 8 : 2) > 0) {
                return;
            }
            List<String> marks = List.of("drill-hole 1", "notch 2");
            boolean fits = Stream.of("lengthwise", "crosswise")
                    .anyMatch(axis ->
                            RandomClothJob.this.says("repeat", axis) && Math.max(across, along) < besideMotif(axis));
            boolean marked = kind == Kind.PANEL && later.nextInt(fits ? 4 : 30) > 0;
            if (!marked && !fits && later.nextInt(12) > 0) {
                return;
            }
            String at = marked ? ", at: " + marks.get(later.nextInt(2)) : "";
            keys.put(marked && later.nextInt(3) == 0 ? "keep-on" : "keep-off", "{motif: rose" + at + "}");
        }

        private void tolerance() {
            boolean tied = keys.containsKey("border")
                    || keys.containsKey("grain")
                    || keys.containsKey("edge-on-selvedge")
                    || keys.containsKey("match-point")
                    || isMatchedTo()
                    || mindsMotifs()
                    || (kind == Kind.HALF && !form.equals("single-layer"));
            if (kind != Kind.STRIP && later.nextInt(tied ? 50 : 5) == 0) {
                keys.put("grain-tolerance", List.of("1 deg", "2.5 deg", "3 mm").get(later.nextInt(3)));
            }
        }

        private boolean isMatchedTo() {
            return patches.stream().anyMatch(other -> other.says("match-point", "piece: " + name + ","));
        }

        boolean mindsMotifs() {
            return keys.containsKey("keep-off") || keys.containsKey("keep-on");
        }

        private String text() {
            return "  %s: %s\n".formatted(name, flow(keys));
        }

        private static double span(List<double[]> ring, int axis) {
            return ring.stream().mapToDouble(at -> at[axis]).max().orElseThrow()
                    - ring.stream().mapToDouble(at -> at[axis]).min().orElseThrow();
        }

        private static String mm(double value) {
            return String.format(Locale.ROOT, "%.3f", value);
        }
    }
}
