package lengthwise.check;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.model.Hand;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Spread;

/**
 * Every garment gets what it needs of each piece, in the right hands, and nothing besides.
 *
 * <p>A placed outline gives a piece in each layer that is cut. Where the layers lie face to face it gives by turns one as
 * drawn and one mirrored; where the two are the same, they are alike, and may serve several garments. Fewer than one cut
 * gives may be left over, since cloth in layers cannot give any number. A half on the fold opens to one whole piece.
 */
final class Count {
    private final Spread spread;

    Count(Spread spread) {
        this.spread = spread;
    }

    /** One cut piece that a placed outline gives, and how it can be read. */
    record CutOut(PlacedPiece from, boolean canBeAsDrawn, boolean canBeMirrored) {
        boolean isEither() {
            return canBeAsDrawn && canBeMirrored;
        }

        CutOut otherLayer() {
            return new CutOut(from, /* canBeAsDrawn= */ canBeMirrored, /* canBeMirrored= */ canBeAsDrawn);
        }
    }

    /**
     * What one piece of cloth gives of what a garment needs of a piece.
     *
     * @param spread how that cloth lies
     */
    record Share(Spread spread, Wanted wanted, List<CutOut> cut) {
        private boolean isEither() {
            return cut.stream().allMatch(CutOut::isEither);
        }

        /** Says whether it is cut through layers face to face though as many of one hand as of the other are not wanted. */
        private boolean isUnlike() {
            return spread.mirrors() && !wanted.onFold() && !isEither() && wanted.asDrawn() != wanted.mirrored();
        }

        /** Returns how many may be left over: all but one of the cuts that a last contour of each hand gives. */
        private int spare() {
            if (wanted.onFold() || cut.isEmpty()) {
                return 0;
            }
            if (spread.mirrors()) {
                return isEither() ? spread.layers() - 1 : spread.layers() - 2;
            }
            return (spread.layers() - 1) * (wanted.mirrored() > 0 ? 2 : 1);
        }

        /** Says whether what is cut as drawn and mirrored here does not come in pairs. */
        boolean isHalfAPair() {
            long asDrawn = cut.stream().filter(piece -> !piece.canBeMirrored()).count();
            long mirrored = cut.stream().filter(piece -> !piece.canBeAsDrawn()).count();
            return wanted.mirrored() > 0 && (cut.size() % 2 == 1 || 2 * Math.max(asDrawn, mirrored) > cut.size());
        }
    }

    List<Violation> violations(List<Wanted> wanted, List<Laid> laid) {
        return wanted.stream()
                .flatMap(one -> violations(List.of(share(one, laid))).stream())
                .toList();
    }

    /** Returns what a garment gets of a piece where the pieces of one marker lie. */
    Share share(Wanted wanted, List<Laid> laid) {
        return new Share(
                spread,
                wanted,
                laid.stream()
                        .filter(piece -> piece.wanted().contains(wanted))
                        .flatMap(piece -> cutOuts(wanted, piece))
                        .toList());
    }

    /** Returns what is wrong with all that a garment gets of a piece, from one piece of cloth or from several. */
    static List<Violation> violations(List<Share> shares) {
        if (shares.stream().anyMatch(Share::isUnlike)) {
            return shares.stream()
                    .filter(Share::isUnlike)
                    .flatMap(share -> share.cut.stream())
                    .map(Count::notAlike)
                    .toList();
        }
        Wanted wanted = shares.get(0).wanted;
        List<CutOut> cut = shares.stream().flatMap(share -> share.cut.stream()).toList();
        int needed = wanted.asDrawn() + wanted.mirrored();
        int surplus = cut.size() - needed;
        List<Violation> violations = new ArrayList<>();
        if (surplus > shares.stream().mapToInt(Share::spare).sum()) {
            violations.add(new Violation.Surplus(cut.get(cut.size() - 1).from(), surplus));
        }
        List<CutOut> wrong = wrongHanded(wanted, cut);
        wrong.stream()
                .limit(Math.max(0, wrong.size() - Math.max(0, surplus)))
                .forEach(piece -> violations.add(wrongHand(wanted, piece)));
        if (surplus < 0) {
            violations.add(new Violation.Missing(
                    wanted.name(), wanted.size(), wanted.garment().called(), lacking(wanted, cut), -surplus));
        }
        return violations;
    }

    /** Returns what a garment gets of a placed outline: its layers are shared out equally to those that it names. */
    private Stream<CutOut> cutOuts(Wanted wanted, Laid laid) {
        if (wanted.onFold()) {
            return Stream.of(new CutOut(laid.placed(), isOpenedAsDrawn(wanted, laid), !isOpenedAsDrawn(wanted, laid)));
        }
        CutOut upper = new CutOut(
                laid.placed(),
                laid.readings().stream().anyMatch(reading -> !reading.flipped()),
                laid.readings().stream().anyMatch(Reading::flipped));
        List<Integer> named = laid.placed().garments();
        int share = spread.layers() / named.size();
        return IntStream.range(0, named.size() * share)
                .filter(layer -> named.get(layer / share) == wanted.garment().number())
                .mapToObj(layer -> spread.mirrors() && layer % 2 == 1 ? upper.otherLayer() : upper);
    }

    /** A whole that the fold runs through lengthwise is its own mirror image; across it only where up does not matter. */
    private boolean isOpenedAsDrawn(Wanted wanted, Laid laid) {
        return !spread.isFoldedCrosswise()
                || !wanted.upMatters()
                || laid.readings().stream().anyMatch(reading -> !reading.flipped());
    }

    /** Returns those that lie one way beyond the number wanted that way, the last ones first to be blamed. */
    private static List<CutOut> wrongHanded(Wanted wanted, List<CutOut> cut) {
        List<CutOut> onlyAsDrawn =
                cut.stream().filter(piece -> !piece.canBeMirrored()).toList();
        List<CutOut> onlyMirrored =
                cut.stream().filter(piece -> !piece.canBeAsDrawn()).toList();
        return Stream.concat(
                        onlyAsDrawn.stream().skip(wanted.asDrawn()),
                        onlyMirrored.stream().skip(wanted.mirrored()))
                .toList();
    }

    private static Violation wrongHand(Wanted wanted, CutOut piece) {
        String lies = piece.canBeAsDrawn() ? "lies as drawn" : "lies mirrored";
        String should = wanted.mirrored() == 0
                ? "all %d have to lie as drawn".formatted(wanted.asDrawn())
                : "%d have to lie as drawn and %d mirrored".formatted(wanted.asDrawn(), wanted.mirrored());
        return new Violation.WrongHand(piece.from(), lies + ", but of this garment's " + should);
    }

    private static Violation notAlike(CutOut piece) {
        return new Violation.WrongHand(
                piece.from(),
                "is cut through layers face to face, which gives one as drawn and one mirrored; the order wants them"
                        + " alike");
    }

    private static String lacking(Wanted wanted, List<CutOut> cut) {
        if (wanted.mirrored() == 0) {
            return "";
        }
        long asDrawn = cut.stream().filter(piece -> !piece.canBeMirrored()).count();
        long mirrored = cut.stream().filter(piece -> !piece.canBeAsDrawn()).count();
        boolean lacksAsDrawn = asDrawn < wanted.asDrawn();
        boolean lacksMirrored = mirrored < wanted.mirrored();
        if (lacksAsDrawn == lacksMirrored) {
            return "as drawn and mirrored";
        }
        Hand hand = wanted.hand(lacksMirrored);
        return (lacksMirrored ? "mirrored" : "as drawn") + (hand == Hand.NONE ? "" : " (" + hand.letter() + ")");
    }
}
