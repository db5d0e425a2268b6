package lengthwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.job.FabricOrder;
import lengthwise.job.FabricOrder.Freer;
import lengthwise.job.Instead;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SpreadWords;
import lengthwise.plan.Purchase;
import lengthwise.solver.Search;
import lengthwise.solver.SearchResult.StopReason;

/** Finds out, beside a marker, what the rules of its fabric cost and what another choice would take. */
record Costs(Budget budget, long seed, int workers, BooleanSupplier interrupted) {
    /** What is called nothing: less than hands can cut. */
    private static final Length NOTHING = Length.ofMillimetres(1);

    /** Says whether there is anything to find out for a fabric. */
    static boolean areAsked(FabricOrder fabric) {
        return !fabric.freer().isEmpty()
                || !fabric.instead().isEmpty()
                || isTolerant(fabric)
                || fabric.comparison().isPresent()
                || fabric.otherwise().isPresent();
    }

    /** Returns a sentence for each rule and comparison; those that an interrupt leaves no time for are left out. */
    List<String> of(FabricOrder fabric, MarkerAnswer.Made made) {
        List<String> sentences = new ArrayList<>();
        if (isTolerant(fabric)) {
            ofTolerance(made).ifPresent(sentences::add);
        }
        for (Freer freer : fabric.freer()) {
            ofRule(freer, made).ifPresent(sentences::add);
        }
        for (Instead other : fabric.instead()) {
            ofWish(other, made.marker()).ifPresent(sentences::add);
        }
        fabric.comparison().flatMap(order -> ofSpreading(order, made)).ifPresent(sentences::add);
        return List.copyOf(sentences);
    }

    private static boolean isTolerant(FabricOrder fabric) {
        return fabric.order().lying().values().stream()
                .anyMatch(lying -> lying.tolerance().isPresent());
    }

    /** Says what tilting saves; nothing where the marker that the search began with was tilted already. */
    private static Optional<String> ofTolerance(MarkerAnswer.Made made) {
        if (made.onGrain().isPresent()) {
            Length onGrain = made.onGrain().get();
            Length saved = onGrain.minus(made.marker().length());
            return Optional.of(
                    "Tilting within the grain tolerance saves %s: with every piece on its grain %s was found."
                            .formatted(
                                    LengthWords.both(cloth(
                                                    saved, made.marker().order().fabric()))
                                            + costs(saved, made.marker().order().fabric(), " and costs %s less"),
                                    LengthWords.both(onGrain)));
        }
        return made.marker().placements().stream()
                        .anyMatch(placement -> placement.pose().orientation().isTilted())
                ? Optional.empty()
                : Optional.of("The grain tolerance is not used: no tilt was found that shortens the marker.");
    }

    private Optional<String> ofRule(Freer freer, MarkerAnswer.Made made) {
        Search search = search(budget.aside(freer.order(), seed, workers));
        return answer(() -> MarkerMaking.loosen(freer.order(), made.marker(), search))
                .filter(MarkerAnswer.Made.class::isInstance)
                .map(answer -> ofRule(freer.rule(), made.marker(), (MarkerAnswer.Made) answer));
    }

    private static String ofRule(String rule, Marker strict, MarkerAnswer.Made freer) {
        Length adds = strict.length().minus(freer.marker().length());
        if (adds.compareTo(NOTHING) >= 0) {
            return ("%s adds %s: without it a search of a fifth of the time, begun with this marker, found %s. That is"
                            + " what was found, not a proof.")
                    .formatted(
                            rule,
                            LengthWords.both(cloth(adds, strict.order().fabric()))
                                    + costs(adds, strict.order().fabric(), " and costs %s more"),
                            LengthWords.both(freer.marker().length()));
        }
        return adds.micrometres() == 0 && freer.reason() == StopReason.PROVEN_SHORTEST
                ? rule + " adds nothing: without it no marker is shorter."
                : rule + " adds nothing that a search of a fifth of the time found; that is no proof.";
    }

    private Optional<String> ofWish(Instead other, Marker marker) {
        Search search = search(budget.aside(other.order(), seed, workers));
        return answer(() -> MarkerMaking.make(other.order(), search, (better, progress) -> {}))
                .map(answer -> ofWish(other, marker, answer));
    }

    private static String ofWish(Instead other, Marker marker, MarkerAnswer answer) {
        if (answer instanceof MarkerAnswer.Impossible impossible) {
            return "%s cannot be compared to %s: %s".formatted(other.asked(), other.than(), impossible.reason());
        }
        if (!(answer instanceof MarkerAnswer.Made made)) {
            return "%s makes it fit; %s does not, as far as a search of a fifth of the time found."
                    .formatted(other.asked(), other.than());
        }
        Fabric fabric = marker.order().fabric();
        Length more = marker.length().minus(made.marker().length());
        String difference = Math.abs(more.micrometres()) < NOTHING.micrometres()
                ? "as much as"
                : difference(
                        new Length(Math.abs(more.micrometres())), fabric, more.micrometres() > 0 ? "more" : "less");
        return "%s takes %s %s, for which a search of a fifth of the time found %s. That is what was found, not a proof."
                .formatted(
                        other.asked(),
                        difference,
                        other.than(),
                        LengthWords.both(made.marker().length()));
    }

    private static String difference(Length marker, Fabric fabric, String word) {
        String costs = costs(marker, fabric, ", and costs %s " + word + ",");
        return "%s %s%s than".formatted(LengthWords.both(cloth(marker, fabric)), word, costs);
    }

    /** Returns how much cloth a length of marker stands for. */
    private static Length cloth(Length marker, Fabric fabric) {
        return marker.scaled(fabric.spread().lengths() / fabric.lengthKept());
    }

    /** Returns what that costs, in the words given; nothing where the price is not known. */
    private static String costs(Length marker, Fabric fabric, String words) {
        return fabric.price()
                .map(price -> words.formatted(String.format(
                        Locale.ROOT,
                        "%.2f",
                        price.amount()
                                * cloth(marker, fabric).micrometres()
                                / price.per().micrometres())))
                .orElse("");
    }

    private Optional<String> ofSpreading(MarkerOrder other, MarkerAnswer.Made made) {
        Search search = search(budget.next(other, seed, workers));
        return answer(() -> MarkerMaking.make(other, search, (marker, progress) -> {}))
                .map(answer -> ofSpreading(other.fabric(), answer, made.marker()));
    }

    private static String ofSpreading(Fabric other, MarkerAnswer answer, Marker marker) {
        String laid = SpreadWords.laid(other.spread());
        if (answer instanceof MarkerAnswer.Impossible impossible) {
            return "Laid %s there is no marker: %s".formatted(laid, impossible.reason());
        }
        if (!(answer instanceof MarkerAnswer.Made compared)) {
            return "Laid %s it does not fit on the cloth there is.".formatted(laid);
        }
        Fabric fabric = marker.order().fabric();
        Length here = Purchase.of(marker.length(), fabric).buy();
        Length there = Purchase.of(compared.marker().length(), other).buy();
        int more = there.compareTo(here);
        String difference = more == 0
                ? "as much as"
                : more > 0
                        ? LengthWords.both(there.minus(here)) + " more than"
                        : LengthWords.both(here.minus(there)) + " less than";
        return "Laid %s the marker is %s and %s are to be bought, %s %s."
                .formatted(
                        laid,
                        LengthWords.both(compared.marker().length()),
                        LengthWords.toBuy(there),
                        difference,
                        SpreadWords.laid(fabric.spread()));
    }

    /** Says what it would cost if the cloth were one-way after all, where that was assumed away. */
    FabricOrder withOtherChoice(FabricOrder fabric, MarkerAnswer.Made made) {
        return fabric.otherwise()
                .flatMap(order -> {
                    Search search = search(budget.aside(order, seed, workers));
                    return answer(() -> MarkerMaking.make(order, search, (marker, progress) -> {}));
                })
                .filter(MarkerAnswer.Made.class::isInstance)
                .map(answer -> ((MarkerAnswer.Made) answer).marker().length())
                .map(oneWay -> fabric.withOtherChoice(
                        otherChoice(oneWay, oneWay.minus(made.marker().length()))))
                .orElse(fabric);
    }

    private static String otherChoice(Length oneWay, Length more) {
        return more.micrometres() > 0
                ? "One-way it takes %s, %s more, by a short search; say direction: one-way."
                        .formatted(LengthWords.both(oneWay), LengthWords.both(more))
                : "One-way it takes no more, by a short search; say direction: one-way to be safe.";
    }

    private Search search(Search search) {
        return search.cancelledBy(interrupted);
    }

    private Optional<MarkerAnswer> answer(Supplier<MarkerAnswer> asked) {
        if (interrupted.getAsBoolean()) {
            return Optional.empty();
        }
        MarkerAnswer answer = asked.get();
        return interrupted.getAsBoolean() ? Optional.empty() : Optional.of(answer);
    }
}
