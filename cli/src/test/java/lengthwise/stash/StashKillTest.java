package lengthwise.stash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Real processes: killed while they work, and racing for the same cloth. */
class StashKillTest {
    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void put() throws Exception {
        file = folder.resolve("stash.db");
        try (Stash stash = Stash.openOrMake(file)) {
            stash.add(List.of(Bolts.bolt("long", 400_000)));
        }
    }

    /** Bolts come in by fours, and a bolt is shortened by a millimetre in one go: all of it or nothing, ever. */
    @Test
    void killedAtAnyMomentTheStoreIsWhole() throws Exception {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(5);
        int before = 0;
        for (int round = 0; round < 12; round++) {
            Process churn = StashWorker.start("churn", file);
            ready(churn);
            Thread.sleep(random.nextInt(300));
            churn.destroyForcibly().waitFor();
            assertThat(integrity()).isEqualTo("ok");
            try (Stash stash = Stash.open(file)) {
                Map<String, Integer> batches = new HashMap<>();
                int longs = 0;
                for (Stash.Entry entry : stash.entries()) {
                    String name = entry.cloth().name();
                    if (name.startsWith("batch-")) {
                        batches.merge(name.substring(0, name.lastIndexOf('-')), 1, Integer::sum);
                    } else {
                        longs++;
                        if (entry.state() == Stash.State.UNCLEAR) {
                            stash.giveBack(name);
                        }
                    }
                }
                assertThat(longs).isEqualTo(1);
                assertThat(batches.values()).containsOnly(4);
                assertThat(batches.size()).isGreaterThanOrEqualTo(before);
                before = batches.size();
            }
        }
        assertThat(before).isPositive();
    }

    /** Two processes go for thirty bolts at the same time: each bolt is got by one of them, and by one alone. */
    @Test
    void noTwoProcessesGetTheSameCloth() throws Exception {
        for (int round = 0; round < 3; round++) {
            List<String> names = new ArrayList<>();
            Path raced = folder.resolve("raced-" + round + ".db");
            try (Stash stash = Stash.openOrMake(raced)) {
                for (int i = 10; i < 40; i++) {
                    names.add("bolt-" + i);
                    stash.add(List.of(Bolts.bolt("bolt-" + i, 1000)));
                }
            }
            Process one = StashWorker.start("draw-all", raced);
            Process two = StashWorker.start("draw-all", raced);
            BufferedReader first = ready(one);
            BufferedReader second = ready(two);
            for (Process each : List.of(one, two)) {
                each.getOutputStream().write('\n');
                each.getOutputStream().flush();
            }
            List<String> got = new ArrayList<>();
            first.lines().filter(line -> line.startsWith("bolt-")).forEach(got::add);
            second.lines().filter(line -> line.startsWith("bolt-")).forEach(got::add);
            assertThat(one.waitFor()).isZero();
            assertThat(two.waitFor()).isZero();
            assertThat(got).containsExactlyInAnyOrderElementsOf(names);
            try (Stash stash = Stash.open(raced)) {
                assertThat(stash.entries()).isEmpty();
            }
        }
    }

    @Test
    void whatADeadRunHadReservedIsFree() throws Exception {
        Process run = StashWorker.start("reserve", file);
        ready(run);
        try (Stash stash = Stash.open(file);
                Draw draw = stash.draw()) {
            assertThat(stash.entries().get(0).state()).isEqualTo(Stash.State.IN_USE);
            assertThatThrownBy(() -> draw.reserve("long")).hasMessageContaining("still going");
            assertThatThrownBy(() -> stash.giveBack("long")).isInstanceOf(StashException.class);
            run.destroyForcibly().waitFor();
            assertThat(stash.entries().get(0).state()).isEqualTo(Stash.State.FREE);
            assertThat(draw.reserve("long")).isEqualTo(Bolts.bolt("long", 400_000));
        }
    }

    @Test
    void whatADeadRunWasWritingIsForTheMakerToSay() throws Exception {
        Process run = StashWorker.start("write", file);
        ready(run);
        run.destroyForcibly().waitFor();
        try (Stash stash = Stash.open(file);
                Draw draw = stash.draw()) {
            assertThat(stash.entries().get(0).state()).isEqualTo(Stash.State.UNCLEAR);
            assertThat(draw.free("canvas")).isEmpty();
            assertThatThrownBy(() -> draw.reserve("long")).hasMessageContaining("ended while it wrote its marker");
            stash.giveBack("long");
            draw.reserve("long");
        }
    }

    private static BufferedReader ready(Process process) throws IOException {
        BufferedReader said = process.inputReader();
        assertThat(said.readLine()).isEqualTo("ready");
        return said;
    }

    private String integrity() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet answer = statement.executeQuery("PRAGMA integrity_check")) {
            return answer.getString(1);
        }
    }
}
