package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.job.JobPiece.Grain;
import lengthwise.job.JobPiece.Lying;
import lengthwise.job.JobPiece.MatchMark;
import lengthwise.job.JobPiece.MotifMark;
import lengthwise.job.JobPiece.Up;
import lengthwise.job.JobStrip.PrintUse;
import lengthwise.job.JobStrip.Runs;
import lengthwise.model.Axis;
import lengthwise.model.Cut;
import lengthwise.model.GrainTolerance;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.Lying.Tie;
import lengthwise.model.MarkRef;
import lengthwise.model.MatchPoint.Partner;

/** Reads what the job file says about one piece. */
final class PieceReading {
    private static final Length LONGEST_STRIP = Length.ofMillimetres(100_000);
    private static final Length WIDEST_GAP = Length.ofMillimetres(1_000);
    private static final int MOST_CUT = 1_000;
    private static final Pattern CUT = Pattern.compile("([0-9]{1,9})(?: (pairs?|alike|on fold|on the fold))?");
    private static final String A_MOTIF_MARK = "{motif: rose, at: drill-hole 1}";
    private static final Pattern MARK = Pattern.compile("([a-z-]+) ([0-9]{1,4})");

    private static final Pattern DEGREES = Pattern.compile("([0-9]{1,3}(?:\\.[0-9]{1,17})?) ?(?:deg|degrees?|°)");
    private static final Length MOST_DEVIATION = Length.ofMillimetres(50);

    private final Measuring measuring;
    private final List<String> roles;

    PieceReading(Measuring measuring, List<String> roles) {
        this.measuring = measuring;
        this.roles = roles;
    }

    JobPiece read(Entry entry) throws JobException {
        Fields piece = entry.fields(
                "a block such as {cut: {shell: 1 pair}, up: as-drawn}",
                "cut",
                "up",
                "arrow-means",
                "drawn",
                "match-point",
                "keep-off",
                "keep-on",
                "gap",
                "filler",
                "grain",
                "grain-tolerance",
                "edge-on-selvedge",
                "border",
                "zone",
                "strip",
                "runs",
                "print");
        Optional<JobStrip> strip = piece.read("strip", e -> strip(e, piece));
        if (strip.isPresent()) {
            piece.need("cut", "{" + roles.get(0) + ": 1}");
            for (String key : List.of(
                    "up",
                    "arrow-means",
                    "drawn",
                    "match-point",
                    "keep-off",
                    "keep-on",
                    "grain",
                    "grain-tolerance",
                    "border")) {
                refuse(piece, key, "a strip has no drawing; leave this out (print: and runs: say how a strip lies)");
            }
        } else {
            refuse(
                    piece,
                    "runs",
                    "only a strip runs; a drawn piece lies by its grain line (add strip:, or leave this out)");
            refuse(
                    piece,
                    "print",
                    "only a strip ignores the print; for a drawn piece without an up end write up: none");
        }
        Optional<Integer> filler = piece.read("filler", PieceReading::filler);
        if (filler.isPresent() && strip.isPresent() && !strip.get().length().isFixed()) {
            throw piece.need("filler", "")
                    .keyError("a filler belongs to no wearer, so that it has no %s; give the strip a length of its own"
                            .formatted(
                                    strip.get().length().measures().isEmpty()
                                            ? "size"
                                            : strip.get().length().measures().get(0)));
        }
        return new JobPiece(
                entry.name(),
                piece.read("cut", this::cut).orElse(List.of()),
                piece.read("up", e -> e.word(Up.class, Set.of())),
                piece.read("arrow-means", e -> e.word(ArrowMeaning.class, Set.of())),
                piece.read("drawn", e -> e.word(Hand.class, List.of("left", "right"), Set.of())),
                piece.read("match-point", this::matchPoint),
                piece.read("gap", this::gap),
                filler,
                new Lying(
                        piece.read("grain", e -> e.word(Grain.class, Set.of())),
                        FabricReading.isYes(piece, "edge-on-selvedge"),
                        piece.read("border", PieceReading::border),
                        piece.read("zone", e -> e.text("the name of a zone of the fabric")),
                        piece.read("grain-tolerance", this::grainTolerance),
                        motifs(piece)),
                strip);
    }

    /** Degrees, or a length over the grain line. */
    private GrainTolerance grainTolerance(Entry entry) throws JobException {
        String text = entry.text("an angle such as 1 deg, or a length over the grain line such as 3 mm");
        Matcher degrees = DEGREES.matcher(text);
        if (!degrees.matches()) {
            return new GrainTolerance.Deviation(measuring.positive(entry, MOST_DEVIATION));
        }
        double value = Double.parseDouble(degrees.group(1));
        if (value <= 0 || value > GrainTolerance.MOST_DEGREES) {
            throw entry.error("found %s; write more than 0 and at most %d deg"
                    .formatted(Quote.of(text), GrainTolerance.MOST_DEGREES));
        }
        return new GrainTolerance.Degrees(value);
    }

    private static Tie border(Entry entry) throws JobException {
        String example = "hem, or a mark of the piece that lies on the border's line, such as notch 2";
        String text = entry.text(example);
        if (text.equals("hem")) {
            return Tie.LOWEST_POINT;
        }
        Matcher mark = MARK.matcher(text);
        for (Tie.Kind kind : List.of(Tie.Kind.NOTCH, Tie.Kind.DRILL_HOLE)) {
            if (mark.matches() && mark.group(1).equals(Entry.word(kind)) && Integer.parseInt(mark.group(2)) > 0) {
                return new Tie(kind, Integer.parseInt(mark.group(2)));
            }
        }
        throw entry.error("found " + Quote.of(text) + "; write " + example);
    }

    private static int filler(Entry entry) throws JobException {
        Fields filler = entry.fields("{at-most: 12}", "at-most");
        return Measuring.count(filler.need("at-most", "12"), MOST_CUT, "how many at most in the whole job, such as 12");
    }

    private static void refuse(Fields piece, String key, String why) throws JobException {
        Optional<Entry> entry = piece.get(key);
        if (entry.isPresent()) {
            throw entry.get().keyError(why);
        }
    }

    Length gap(Entry entry) throws JobException {
        return measuring.notNegative(entry, WIDEST_GAP);
    }

    private List<CutRequest> cut(Entry entry) throws JobException {
        if (entry.isText() && roles.size() == 1) {
            return List.of(cut(entry, roles.get(0)));
        }
        Map<String, Entry> byRole = entry.named("from which fabric, such as {" + roles.get(0) + ": 1 pair}");
        if (byRole.isEmpty()) {
            throw entry.error("found no fabric; write {" + roles.get(0) + ": 1 pair}");
        }
        List<CutRequest> cuts = new ArrayList<>();
        for (Entry request : byRole.values()) {
            if (!roles.contains(request.name())) {
                throw request.unknown("no fabric is for this", roles);
            }
            cuts.add(cut(request, request.name()));
        }
        return cuts;
    }

    private static CutRequest cut(Entry entry, String role) throws JobException {
        String example = "1 pair, 2 alike, 1 on fold, or a count";
        String text = entry.text(example).replaceAll("\\s+", " ");
        Matcher cut = CUT.matcher(text);
        if (!cut.matches()) {
            throw entry.error("found " + Quote.of(text) + "; write " + example);
        }
        int count = Integer.parseInt(cut.group(1));
        if (count < 1 || count > MOST_CUT) {
            throw entry.error(
                    "found %s; a piece is cut from 1 to %d times for one garment".formatted(Quote.of(text), MOST_CUT));
        }
        String counted = cut.group(2);
        if (counted == null) {
            return new CutRequest(role, count, Optional.empty());
        }
        Cut.Manner manner = switch (counted) {
            case "pair", "pairs" -> Cut.Manner.PAIR;
            case "alike" -> Cut.Manner.ALIKE;
            default -> Cut.Manner.ON_FOLD;
        };
        return new CutRequest(role, count, Optional.of(manner));
    }

    private MatchMark matchPoint(Entry entry) throws JobException {
        Fields match = entry.fields("{at: drill-hole 1, tolerance: 2 mm}", "at", "tolerance", "along", "to");
        return new MatchMark(
                mark(match.need("at", "drill-hole 1")),
                match.read("tolerance", e -> measuring.notNegative(e, WIDEST_GAP)),
                match.read("along", e -> e.word(Axis.class, Set.of())),
                match.read("to", PieceReading::partner));
    }

    private static List<MotifMark> motifs(Fields piece) throws JobException {
        List<MotifMark> motifs = new ArrayList<>();
        for (String key : List.of("keep-off", "keep-on")) {
            Optional<Entry> said = piece.get(key);
            if (said.isPresent()) {
                for (Entry item : said.get().isMapping()
                        ? List.of(said.get())
                        : said.get().items(A_MOTIF_MARK)) {
                    motifs.add(motif(item, key.equals("keep-on")));
                }
            }
        }
        return motifs;
    }

    private static MotifMark motif(Entry entry, boolean on) throws JobException {
        Fields motif = entry.fields(A_MOTIF_MARK, "motif", "at");
        String name = motif.need("motif", "rose").text("the name of a motif of the fabric's repeat");
        return new MotifMark(
                name,
                on,
                on ? Optional.of(mark(motif.need("at", "drill-hole 1"))) : motif.read("at", PieceReading::mark));
    }

    private static Partner partner(Entry entry) throws JobException {
        String example = "other-hand, or {piece: front, at: notch 2}";
        if (entry.isText()) {
            String text = entry.text(example);
            if (!text.equals("other-hand")) {
                throw entry.error("found %s; write %s%s"
                        .formatted(Quote.of(text), example, Entry.meant(text, List.of("other-hand"))));
            }
            return new Partner.OtherHand();
        }
        Fields mate = entry.fields(example, "piece", "at");
        return new Partner.Mate(
                mate.need("piece", "front").text("the name of another piece"), mark(mate.need("at", "notch 2")));
    }

    private static MarkRef mark(Entry at) throws JobException {
        String example = "drill-hole or notch and its number on the piece, such as notch 2";
        String text = at.text(example);
        Matcher mark = MARK.matcher(text);
        for (MarkRef.Kind kind : MarkRef.Kind.values()) {
            if (mark.matches() && mark.group(1).equals(Entry.word(kind)) && Integer.parseInt(mark.group(2)) > 0) {
                return new MarkRef(kind, Integer.parseInt(mark.group(2)));
            }
        }
        throw at.error("found " + Quote.of(text) + "; write " + example);
    }

    private JobStrip strip(Entry entry, Fields piece) throws JobException {
        Fields strip = entry.fields("{cut-width: 32 mm, length: 46 cm}", "cut-width", "length");
        return new JobStrip(
                measuring.positive(strip.need("cut-width", "32 mm"), LONGEST_STRIP),
                new LengthReading(measuring).read(strip.need("length", "46 cm (or {measure: ribcage, plus: 30 cm})")),
                piece.read("runs", e -> e.word(Runs.class, Set.of())),
                piece.read("print", e -> e.word(PrintUse.class, Set.of())));
    }
}
