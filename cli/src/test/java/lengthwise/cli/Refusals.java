package lengthwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lengthwise.cli.RandomClothJob.Patch;

/**
 * Every reason that a job on one cloth can be refused for, and what has to be true of the job where it is given: looked up
 * in the job itself, and where the reason names a width, worked out by hand. A reason that is not here is not known to be
 * true.
 */
final class Refusals {
    private static final List<Refusal> KNOWN = List.of(
            // questions
            patch(
                    "Which end of (P) is up\\?.*?either way round\\.",
                    (job, piece) -> job.hasUp()
                            && !piece.keys.containsKey("up")
                            && !(piece.headed && job.arrowMeans.equals("grain"))),
            patch(
                    "(P) is cut alike, but cloth lies [a-z -]+: .*?, or cut the piece as a pair\\.",
                    (job, piece) -> job.layersFace() && piece.kind == Patch.Kind.PANEL && piece.says("cut", "alike")),
            patch(
                    "Is the print of cloth its own mirror image\\? The left and the right (P) .*?along: lengthwise\\.",
                    (job, piece) -> !job.says("repeat", "mirrored")
                            && job.says("repeat", "crosswise")
                            && piece.says("match-point", "other-hand")),
            // shrinkage, stretch and grain
            patch(
                    "(P) is cut on the bias, but cloth shrinks differently .*?pre-wash\\)\\.",
                    (job, piece) -> isOnBias(piece) && addsUneven(job)),
            patch(
                    "(P) may run either way, but cloth shrinks differently .*?crosswise\\.",
                    (job, piece) -> piece.says("runs", "either") && addsUneven(job)),
            patch(
                    "(P) is cut on the bias \\(grain: bias\\), but its arrow means .*?for this piece\\.",
                    (job, piece) -> isOnBias(piece) && job.arrowMeans.equals("stretch")),
            patch(
                    "(P) is pulled two ways on cloth: .*?runs the other way\\.",
                    (job, piece) -> job.hasUp()
                            && (piece.says("up", "as-drawn") ? isTurnedByStretch(job) : piece.says("print", "follow"))),
            // spreading
            patch(
                    "(P) has an up end and cloth is one-way, but lies .*?: every second one would come out upside down\\. .*?\\)\\.",
                    (job, piece) -> job.hasUp()
                            && hasUpEnd(job, piece)
                            && (job.form().equals("fold-crosswise") || job.says("spread", "to-and-fro"))),
            patch(
                    "The fold edge of (P) runs across its grain; .*?single layer\\.",
                    (job, piece) -> piece.kind == Patch.Kind.HALF && isTurnedByStretch(job) && isFoldedAlong(job)),
            // the edges of the cloth
            patch(
                    "(P) keeps to the zone \\w+, and the layers of cloth .*?in plies face up\\.",
                    (job, piece) -> piece.keys.containsKey("zone") && hidesSelvedges(job)),
            patch(
                    "(P) keeps to the zone \\w+ of cloth, but has a match point .*?Say one of the two\\.",
                    (job, piece) -> piece.keys.containsKey("zone") && isMatched(job, piece)),
            patch(
                    "(P) keeps to the zone \\w+ of cloth, but lies on the fold\\. Say one of the two\\.",
                    (job, piece) -> piece.keys.containsKey("zone") && liesOnFoldAcross(job, piece)),
            numbers(
                    "(P) is (N) mm across the fabric; its zone (\\w+) of cloth is (N) mm wide\\. .*?\\.",
                    (job, m) -> number(m, 2) > number(m, 4)
                            && measures(job, m, number(m, 2))
                            && near(number(m, 4), job.zoneWidth(m.group(3)), 0.01)),
            patch(
                    "(P) is keyed to a border, and the layers of cloth .*?in plies face up\\.",
                    (job, piece) -> piece.keys.containsKey("border") && hidesSelvedges(job)),
            patch(
                    "(P) is keyed to a border of cloth, .*?, but nothing says which of its ends is up\\. .*?as-drawn\\.",
                    (job, piece) -> piece.keys.containsKey("border") && !hasUpEnd(job, piece)),
            patch(
                    "(P) is keyed to a border of cloth, .*?, but it is cut on the bias or runs either way\\. .*?border out\\.",
                    (job, piece) -> piece.keys.containsKey("border") && isOnBias(piece)),
            patch(
                    "(P) is keyed to a border of cloth, .*?, but it lies on the fold\\. .*?single layer\\.",
                    (job, piece) -> piece.keys.containsKey("border")
                            && piece.kind == Patch.Kind.HALF
                            && (isFoldedAlong(job) || liesOnFoldAcross(job, piece))),
            patch(
                    "(P) is keyed to a border of cloth, .*?, but it is matched .*?Say one of the two\\.",
                    (job, piece) -> piece.keys.containsKey("border") && isMatched(job, piece)),
            patch(
                    "(P) is keyed to a border of cloth and would reach N mm over .*?narrower\\.",
                    (job, piece) -> piece.keys.containsKey("border") && reachesOver(job, piece)),
            patch(
                    "(P) may lie on the selvedge \\(edge-on-selvedge\\), but it runs on the bias or either way.*?\\.",
                    (job, piece) -> isTiedToSelvedge(piece) && (isOnBias(piece) || piece.says("runs", "either"))),
            patch(
                    "(P) may lie on the selvedge \\(edge-on-selvedge\\), but on cloth no selvedge lies at a side .*?\\.",
                    (job, piece) -> isTiedToSelvedge(piece) && isFoldedTwice(job)),
            patch(
                    "(P) may lie on the selvedge \\(edge-on-selvedge\\), but cloth is a remnant .*?\\.",
                    (job, piece) -> isTiedToSelvedge(piece) && job.says("outline")),
            patch(
                    "(P) may lie on the selvedge \\(edge-on-selvedge\\), but it has no straight edge .*?\\.",
                    (job, piece) -> isTiedToSelvedge(piece) && (!piece.straightSides || isTurnedByStretch(job))),
            patch(
                    "(P) may lie on the selvedge \\(edge-on-selvedge\\), but its match point, its motifs, its border or its zone .*?\\.",
                    (job, piece) -> isTiedToSelvedge(piece)
                            && (piece.keys.containsKey("zone")
                                    || piece.keys.containsKey("border")
                                    || piece.mindsMotifs())),
            patch(
                    "Other pieces of cloth may lie on the selvedge \\(edge-on-selvedge\\), and (P) has its place in the print: .*?out\\.",
                    (job, piece) -> job.patches.stream().anyMatch(Refusals::isTiedToSelvedge)
                            && (isMatched(job, piece) || piece.mindsMotifs())),
            patch(
                    "Other pieces of cloth may lie on the selvedge \\(edge-on-selvedge\\), and (P) lies on a fold across the cloth: .*?out\\.",
                    (job, piece) ->
                            job.patches.stream().anyMatch(Refusals::isTiedToSelvedge) && liesOnFoldAcross(job, piece)),
            // the print
            patch(
                    "(P) is matched, and the print of the lower layers of cloth .*?pinned on each other\\.",
                    (job, piece) -> isMatched(job, piece) && !knowsLowerPrint(job)),
            patch(
                    "(P) is matched and lies on the fold of cloth: .*?\\.",
                    (job, piece) -> isMatched(job, piece) && piece.kind == Patch.Kind.HALF),
            numbers(
                    "(P) has a match point, and folded lengthwise the print of one layer of cloth lies (N) mm off .*?with origin\\.",
                    (job, m) -> job.form().equals("fold-lengthwise")
                            && isMatched(job, job.patch(m.group(1)))
                            && near(number(m, 2), job.offInLowerLayer(), 0.01)
                            && job.offInLowerLayer() > job.patch(m.group(1)).matchTolerance()),
            patch(
                    "(P) is matched to its other hand, and there is none on cloth: .*?another piece\\.",
                    (job, piece) -> piece.says("match-point", "other-hand") && piece.says("cut", "alike")),
            numbers(
                    "(P) is matched to (P) (lengthwise|crosswise), and P itself is not matched that way: .*?along\\.",
                    (job, m) -> job.patch(m.group(1)).says("match-point", m.group(2))
                            && !job.patch(m.group(1)).says("match-point", "along: " + other(m.group(3)))
                            && job.patch(m.group(2)).says("match-point", "along: " + other(m.group(3)))),
            patch(
                    "(P) is a filler and belongs to no garment, .*?leave filler out\\.?",
                    (job, piece) -> piece.keys.containsKey("filler")
                            && (piece.says("match-point", "piece:") || isMatched(job, piece))),
            numbers(
                    "The match points of (P) and (P) contradict each other on cloth: .*?out\\.",
                    (job, m) -> isMatched(job, job.patch(m.group(1))) && isMatched(job, job.patch(m.group(2)))),
            // motifs
            patch(
                    "(P) minds the motifs of cloth \\(rose\\), but the print of the lower layers .*?pinned on each other\\.",
                    (job, piece) -> piece.mindsMotifs() && !knowsLowerPrint(job)),
            patch(
                    "(P) minds the motifs of cloth \\(rose\\), but it lies on the fold\\. .*?single layer\\.",
                    (job, piece) -> piece.mindsMotifs()
                            && piece.kind == Patch.Kind.HALF
                            && job.form().equals("fold-lengthwise")),
            patch(
                    "(P) minds the motifs of cloth \\(rose\\), but it is matched to a piece .*?one of the two out\\.",
                    (job, piece) -> piece.mindsMotifs() && isMatched(job, piece)),
            patch(
                    "(P) minds the motifs of cloth \\(rose\\), but its zone or its border .*?Say one of the two\\.",
                    (job, piece) -> piece.mindsMotifs()
                            && (piece.keys.containsKey("zone") || piece.keys.containsKey("border"))),
            patch(
                    "(P) minds the motifs of cloth \\(rose\\), but no place within the repeat is left .*?smaller\\.",
                    (job, piece) -> piece.mindsMotifs()
                            && (isMatched(job, piece)
                                    || job.form().equals("fold-lengthwise")
                                    || (!piece.says("keep-off", "at:") && !fitsBesideMotif(job, piece)))),
            patch(
                    "(P) finds no place on cloth: where it minds the motifs .*?fewer of them\\.",
                    (job, piece) -> piece.mindsMotifs()),
            // off the grain
            patch(
                    "(P) may be tilted off its grain \\(grain-tolerance\\) on cloth, but it is cut on the bias .*?tolerance out\\.",
                    (job, piece) -> isTolerant(piece) && isOnBias(piece)),
            patch(
                    "(P) may be tilted off its grain \\(grain-tolerance\\) on cloth, but it lies on the fold\\. .*?tolerance out\\.",
                    (job, piece) -> isTolerant(piece)
                            && piece.kind == Patch.Kind.HALF
                            && (isFoldedAlong(job) || liesOnFoldAcross(job, piece))),
            patch(
                    "(P) may be tilted off its grain \\(grain-tolerance\\) on cloth, but it is matched to the print; .*?tolerance out\\.",
                    (job, piece) -> isTolerant(piece) && isMatched(job, piece)),
            patch(
                    "(P) may be tilted off its grain \\(grain-tolerance\\) on cloth, but it minds the motifs of the print; .*?tolerance out\\.",
                    (job, piece) -> isTolerant(piece) && piece.mindsMotifs()),
            patch(
                    "(P) may be tilted off its grain \\(grain-tolerance\\) on cloth, but it is keyed to a border; .*?tolerance out\\.",
                    (job, piece) -> isTolerant(piece) && piece.keys.containsKey("border")),
            patch(
                    "(P) may be tilted off its grain \\(grain-tolerance\\) on cloth, but its edge may lie on the selvedge; .*?tolerance out\\.",
                    (job, piece) -> isTolerant(piece) && isTiedToSelvedge(piece)),
            // shade
            words(
                    "cloth keeps left and right of a piece in a band across \\(shade: crosswise\\), .*?out of shade\\.",
                    job -> job.says("shade", "crosswise") && isFoldedAlong(job)),
            words(
                    "cloth keeps the pieces of a garment together \\(shade\\), .*?leave shade out\\.",
                    job -> job.says("shade")
                            && !isFoldedAlong(job)
                            && !job.form().equals("single-layer")),
            numbers(
                    "(P) is (N) mm (lengthwise|crosswise) as it lies, and cloth keeps .*? within (N) mm .*?more there\\.",
                    (job, m) -> number(m, 2) > number(m, 4) && near(job.shade(m.group(3)), number(m, 4), 0.01)),
            words(
                    "No layout of cloth was found that keeps together what is to be of one shade .*?wider cloth\\.",
                    job -> job.says("shade")),
            // no room
            numbers(
                    "(P) is (N) cm \\(N in\\) across the fabric; the cuttable width of cloth is (N) cm \\(N in\\)\\. .*?(?:join them|split the piece)\\.",
                    (job, m) -> number(m, 2) >= number(m, 3)
                            && measures(job, m, 10 * number(m, 2))
                            && near(10 * number(m, 3), job.cuttableWidth(), 0.6)),
            patch(
                    "(P) finds no place on cloth: the selvedges meet in the middle.*?one fold along it\\.",
                    (job, piece) -> job.form().equals("selvedges-to-middle")
                            && extents(job, piece).stream().anyMatch(range -> range[1] > job.besideJoin())),
            patch(
                    "(P) finds no place on cloth: where its match point meets the print .*?match point out\\.",
                    Refusals::isMatched),
            patch(
                    "(P) finds no place on cloth: flaws, or what it is tied to, leave no room .*?to less\\.",
                    (job, piece) -> job.says("flaws") || job.says("outline")),
            numbers(
                    "The pieces on the fold of cloth find no room side by side: .*?in a single layer\\.",
                    (job, m) -> job.patches.stream().anyMatch(piece -> liesOnFoldAcross(job, piece))));

    private Refusals() {}

    /** A reason: what it says, and whether that is true of a job. */
    private record Refusal(Pattern says, BiPredicate<RandomClothJob, MatchResult> isTrue) {}

    private static Refusal numbers(String says, BiPredicate<RandomClothJob, MatchResult> isTrue) {
        String words = says.replaceAll("\\bP\\b", "[a-z]+-\\\\d").replaceAll("\\bN\\b", "[0-9.]+");
        return new Refusal(Pattern.compile(words), isTrue);
    }

    private static Refusal words(String says, Predicate<RandomClothJob> isTrue) {
        return numbers(says, (job, found) -> isTrue.test(job));
    }

    private static Refusal patch(String says, BiPredicate<RandomClothJob, Patch> isTrue) {
        return numbers(says, (job, found) -> isTrue.test(job, job.patch(found.group(1))));
    }

    /** Returns what of a refusal is not known to be true of the job; nothing where all of it is. */
    static String untrue(RandomClothJob job, String said) {
        String rest = said.strip();
        while (!rest.isEmpty()) {
            int length = 0;
            for (Refusal known : KNOWN) {
                Matcher matcher = known.says().matcher(rest);
                if (matcher.lookingAt() && known.isTrue().test(job, matcher)) {
                    length = Math.max(length, matcher.end());
                }
            }
            if (length == 0) {
                return rest;
            }
            rest = rest.substring(length).strip();
        }
        return "";
    }

    private static boolean knowsLowerPrint(RandomClothJob job) {
        return Stream.of("single-layer", "fold-lengthwise", "plies-face-up").anyMatch(job.form()::equals);
    }

    private static boolean isTolerant(Patch piece) {
        return piece.keys.containsKey("grain-tolerance");
    }

    /** The piece is surely shorter or narrower than what the motif leaves of the repeat, so that it fits beside it. */
    private static boolean fitsBesideMotif(RandomClothJob job, Patch piece) {
        return (job.says("repeat", "crosswise")
                        && extents(job, piece).stream()
                                .allMatch(range -> range[1] < 0.95 * job.besideMotif("crosswise")))
                || (job.says("repeat", "lengthwise")
                        && extents(job, piece, !isTurnedByStretch(job)).stream()
                                .allMatch(range -> range[1] < 0.95 * job.besideMotif("lengthwise")));
    }

    private static boolean isOnBias(Patch piece) {
        return piece.says("grain", "bias") || piece.says("runs", "bias");
    }

    private static boolean addsUneven(RandomClothJob job) {
        return job.says("shrinkage", "add-to-pieces") && job.shrinks("lengthwise") != job.shrinks("crosswise");
    }

    /** The arrow lies across the cloth. */
    private static boolean isTurnedByStretch(RandomClothJob job) {
        return job.arrowMeans.equals("stretch") && job.says("most-stretch", "crosswise");
    }

    private static boolean hasUpEnd(RandomClothJob job, Patch piece) {
        if (piece.kind == Patch.Kind.STRIP) {
            return piece.says("print", "follow");
        }
        return piece.says("up", "as-drawn")
                || (!piece.says("up", "none") && piece.headed && job.arrowMeans.equals("grain"));
    }

    private static boolean isFoldedTwice(RandomClothJob job) {
        return job.form().equals("tube") || job.form().equals("selvedges-to-middle");
    }

    private static boolean isFoldedAlong(RandomClothJob job) {
        return job.form().equals("fold-lengthwise") || isFoldedTwice(job);
    }

    private static boolean hidesSelvedges(RandomClothJob job) {
        return isFoldedAlong(job) || job.form().equals("plies-face-to-face");
    }

    /** A half lies on a fold across the cloth where its fold edge does: the stretch turns it so. */
    private static boolean liesOnFoldAcross(RandomClothJob job, Patch piece) {
        return job.form().equals("fold-crosswise") && piece.kind == Patch.Kind.HALF && isTurnedByStretch(job);
    }

    private static boolean isTiedToSelvedge(Patch piece) {
        return piece.keys.containsKey("edge-on-selvedge");
    }

    private static boolean isMatched(RandomClothJob job, Patch piece) {
        return job.says("repeat")
                && (piece.keys.containsKey("match-point")
                        || job.patches.stream()
                                .anyMatch(other -> other.says("match-point", "piece: " + piece.name + ",")));
    }

    /** The line lies nearer to an edge of the cuttable width than the piece reaches from its tied point. */
    private static boolean reachesOver(RandomClothJob job, Patch piece) {
        double reach = extents(job, piece, !isTurnedByStretch(job)).stream()
                .mapToDouble(range -> range[1])
                .max()
                .orElse(0);
        return job.borderLine() < (piece.says("border", "hem") ? 0 : reach)
                || job.cuttableWidth() - job.borderLine() < reach;
    }

    private static boolean measures(RandomClothJob job, MatchResult found, double millimetres) {
        return extents(job, job.patch(found.group(1))).stream()
                .anyMatch(range -> range[0] - 0.6 <= millimetres && millimetres <= range[1] + 0.6);
    }

    private static List<double[]> extents(RandomClothJob job, Patch piece) {
        return extents(job, piece, isTurnedByStretch(job));
    }

    /** What a piece may measure across the cloth, from … to …: halves opened or not, corners of its allowance long or short. */
    private static List<double[]> extents(RandomClothJob job, Patch piece, boolean turned) {
        double across = turned ? piece.along : piece.across;
        double along = turned ? piece.across : piece.along;
        double kept = job.says("shrinkage", "add-to-pieces") ? 1 - job.shrinks("crosswise") : 1;
        double seam = piece.kind == Patch.Kind.STRIP ? 0 : job.seam();
        List<double[]> extents = new ArrayList<>();
        if (isOnBias(piece)) {
            extents.add(
                    new double[] {Math.min(across, along) / 2, (2 * across + 2 * along) / Math.sqrt(2) + 12 * seam});
        } else if (piece.kind == Patch.Kind.STRIP) {
            extents.add(new double[] {across, across});
            extents.add(new double[] {along, along});
        } else {
            extents.add(new double[] {across + seam, across + 12 * seam});
            if (piece.kind == Patch.Kind.HALF) {
                extents.add(new double[] {2 * across + 2 * seam, 2 * across + 12 * seam});
            }
        }
        return extents.stream()
                .map(range -> new double[] {range[0] / kept, range[1] / kept})
                .toList();
    }

    private static double number(MatchResult found, int group) {
        return Double.parseDouble(found.group(group));
    }

    private static boolean near(double one, double other, double by) {
        return Math.abs(one - other) <= by;
    }

    private static String other(String axis) {
        return axis.equals("lengthwise") ? "crosswise" : "lengthwise";
    }
}
