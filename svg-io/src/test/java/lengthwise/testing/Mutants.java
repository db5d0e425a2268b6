package lengthwise.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Damaged copies of whole files, read one after the other: each is read, or refused with one line, in a bounded time, and nothing
 * else happens: nothing is written to the standard error stream either. The build runs these tests with a heap of 512 MiB, which bounds the memory that a reader takes.
 *
 * <p>The seed alone says what a copy is. Where {@code FUZZ_SECONDS} is set, as in the build for all, copies follow until that
 * time is over; what goes wrong is kept in {@code target/failures}.
 *
 * @param format names the files, as an ending does
 * @param refusal what says that a file cannot be read
 */
public record Mutants(
        String format, List<byte[]> whole, Damage damage, Class<? extends Exception> refusal, Reader reader) {
    /** For one file, on a machine that is busy. */
    private static final Duration LONGEST = Duration.ofSeconds(60);

    private static final int FEWEST = 300;

    /** Reads a file, or throws what says that it cannot be read. */
    public interface Reader {
        void read(byte[] file) throws Exception;
    }

    /** What a copy came to. */
    private static final class Reading implements Runnable {
        private final Mutants mutants;
        private final byte[] copy;
        private volatile @Nullable Throwable thrown;

        Reading(Mutants mutants, byte[] copy) {
            this.mutants = mutants;
            this.copy = copy;
        }

        @Override
        public void run() {
            try {
                mutants.reader.read(copy);
            } catch (Throwable all) {
                thrown = all;
            }
        }
    }

    /**
     * Reads a few copies, or as many as there is time for.
     *
     * @param share of the time that a format gets
     */
    public void few(double share) throws Exception {
        read(0, Duration.ofMillis(Math.round(1000 * share * seconds(0))));
    }

    /** Reads other copies than {@link #few} does, for an hour or for as long as is said. */
    public void many() throws Exception {
        read(1L << 32, Duration.ofSeconds(seconds(3600)));
    }

    private static long seconds(long unlessSaid) {
        String said = System.getenv("FUZZ_SECONDS");
        return said == null ? unlessSaid : Long.parseLong(said);
    }

    private void read(long from, Duration time) throws Exception {
        long end = System.nanoTime() + time.toNanos();
        long seed = from;
        int refused = 0;
        PrintStream before = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        System.setErr(new PrintStream(said, true, StandardCharsets.UTF_8));
        try {
            for (; seed < from + FEWEST || System.nanoTime() < end; seed++) {
                RandomGenerator random =
                        RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
                byte[] copy = damage.to(whole.get(random.nextInt(whole.size())), random);
                refused += isRead(seed, copy) ? 0 : 1;
                if (said.size() > 0) {
                    throw new AssertionError(
                            kept(seed, copy) + ", not read in silence:\n" + said.toString(StandardCharsets.UTF_8));
                }
            }
        } finally {
            System.setErr(before);
        }
        System.out.printf("%s: %d damaged files, of which %d were refused%n", format, seed - from, refused);
    }

    private boolean isRead(long seed, byte[] copy) throws Exception {
        Reading reading = new Reading(this, copy);
        Thread thread = new Thread(reading, format);
        thread.setDaemon(true);
        thread.start();
        thread.join(LONGEST.toMillis());
        if (thread.isAlive()) {
            String where = Arrays.stream(thread.getStackTrace())
                    .map(StackTraceElement::toString)
                    .collect(Collectors.joining("\n  "));
            throw new AssertionError("no end after " + LONGEST + ", " + kept(seed, copy) + ":\n  " + where);
        }
        Throwable thrown = reading.thrown;
        if (thrown == null) {
            return true;
        }
        if (!refusal.isInstance(thrown) || isOfTheMachine(thrown)) {
            throw new AssertionError(kept(seed, copy), thrown);
        }
        assertThat(thrown.getMessage()).as(() -> kept(seed, copy)).isNotBlank().doesNotContain("\n");
        return false;
    }

    /** Says whether memory or stack gave out first, though the reader made a refusal of it. */
    private static boolean isOfTheMachine(Throwable thrown) {
        return thrown instanceof VirtualMachineError
                || (thrown.getCause() != null && isOfTheMachine(thrown.getCause()));
    }

    private String kept(long seed, byte[] copy) {
        try {
            Path folder = Files.createDirectories(Path.of("target", "failures"));
            return "seed " + seed + ", kept as " + Files.write(folder.resolve(seed + "." + format), copy);
        } catch (IOException e) {
            return "seed " + seed + ", not kept: " + e;
        }
    }
}
