package lengthwise.stash;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A process of its own that works on a stash, for tests that kill it or let it race. */
final class StashWorker {
    private StashWorker() {}

    static Process start(String what, Path stash) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        "-XX:TieredStopAtLevel=1",
                        StashWorker.class.getName(),
                        what,
                        stash.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    public static void main(String... words) throws Exception {
        Path file = Path.of(words[1]);
        switch (words[0]) {
            case "churn" -> churn(file);
            case "draw-all" -> drawAll(file);
            case "reserve" -> hold(file, false);
            case "write" -> hold(file, true);
            default -> throw new IllegalArgumentException(words[0]);
        }
    }

    /** Puts in bolts by fours and spends the bolt "long" bit by bit, without end. */
    private static void churn(Path file) throws StashException {
        try (Stash stash = Stash.openOrMake(file)) {
            int batch = stash.entries().size();
            say("ready");
            while (true) {
                List<StashCloth> four = new ArrayList<>();
                for (int i = 0; i < 4; i++) {
                    four.add(Bolts.bolt("batch-%d-%d".formatted(batch, i), 1000 + i));
                }
                stash.add(four);
                batch++;
                try (Draw draw = stash.draw()) {
                    StashCloth bolt = draw.reserve("long");
                    draw.writesTo(file);
                    Optional<StashCloth> rest = bolt.withoutStart(lengthwise.model.Length.ofMillimetres(1));
                    draw.spend(List.of(new Draw.Spent("long", rest.stream().toList())), List.of(), "a millimetre");
                }
            }
        }
    }

    /** Says which bolts it got and spent. */
    private static void drawAll(Path file) throws Exception {
        try (Stash stash = Stash.open(file)) {
            say("ready");
            int go = System.in.read();
            List<String> names =
                    stash.entries().stream().map(entry -> entry.cloth().name()).toList();
            for (String name : go < 0 ? List.<String>of() : names) {
                try (Draw draw = stash.draw()) {
                    draw.reserve(name);
                    draw.writesTo(file);
                    draw.spend(List.of(new Draw.Spent(name, List.of())), List.of(), "raced for");
                    say(name);
                } catch (StashException theOtherHasIt) {
                    say("not " + theOtherHasIt.getMessage());
                }
            }
        }
    }

    /** Reserves "long" and keeps it until it is killed. */
    private static void hold(Path file, boolean writing) throws Exception {
        try (Stash stash = Stash.open(file);
                Draw draw = stash.draw()) {
            draw.reserve("long");
            if (writing) {
                draw.writesTo(Path.of("/markers"));
            }
            say("ready");
            Thread.sleep(120_000);
        }
    }

    private static void say(String line) {
        System.out.println(line);
        System.out.flush();
    }
}
