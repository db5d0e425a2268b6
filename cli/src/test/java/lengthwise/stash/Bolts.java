package lengthwise.stash;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import lengthwise.job.JobFabric.Corner;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.job.JobFabric.There;
import lengthwise.model.Direction;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.Length;
import lengthwise.model.Shrinkage;

/** Cloths for the tests. */
final class Bolts {
    private Bolts() {}

    /** A bolt of canvas of 1 m width. */
    static StashCloth bolt(String name, double millimetres) {
        return new StashCloth(
                name,
                "canvas",
                Optional.empty(),
                Length.ofMillimetres(1000),
                new There(Length.ofMillimetres(millimetres), List.of()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    /** A cloth of any kind, to the micrometre. */
    static StashCloth any(String name, RandomGenerator random) {
        Length width = new Length(random.nextLong(20_000, 10_000_000));
        Length length = new Length(random.nextLong(20_000, 500_000_000));
        List<Corner> corners = new ArrayList<>();
        if (random.nextBoolean()) {
            corners.add(new Corner(Length.ZERO, Length.ZERO));
            corners.add(new Corner(length, new Length(random.nextLong(width.micrometres()))));
            corners.add(new Corner(new Length(random.nextLong(length.micrometres())), width));
        }
        List<Flaw> flaws = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            flaws.add(new Flaw(
                    new Length(random.nextLong(length.micrometres())),
                    new Length(random.nextLong(1, length.micrometres())),
                    new Length(random.nextLong(width.micrometres() / 2)),
                    new Length(random.nextLong(1, width.micrometres() / 2))));
        }
        return new StashCloth(
                name,
                "fabric " + random.nextInt(3),
                maybe(random, "red"),
                width,
                new There(length, corners),
                maybe(random, new UnusableEdge(new Length(random.nextLong(9_000)), new Length(random.nextLong(9_000)))),
                maybe(random, one(random, Direction.values())),
                maybe(
                        random,
                        new Shrinkage(
                                random.nextInt(500_000) / 1e6,
                                random.nextInt(500_000) / 1e6,
                                one(random, Shrinkage.Handling.values()))),
                maybe(
                        random,
                        new Price(random.nextLong(1_000_000_000) / 1e6, new Length(random.nextLong(1, 1_000_000)))),
                maybe(
                        random,
                        new Corner(
                                new Length(random.nextLong(-900_000, 900_000)), new Length(random.nextLong(20_000)))),
                flaws);
    }

    private static <T> T one(RandomGenerator random, T[] values) {
        return values[random.nextInt(values.length)];
    }

    private static <T> Optional<T> maybe(RandomGenerator random, T value) {
        return random.nextBoolean() ? Optional.of(value) : Optional.empty();
    }
}
