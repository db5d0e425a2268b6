package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import lengthwise.FabricRun.Assumption;
import lengthwise.model.Length;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A bare drawing and a width: the job file written for it says every choice, and changes none. */
class FilledJobTest {
    @TempDir
    private Path folder;

    private Path drawing;

    @BeforeEach
    void draw() throws Exception {
        drawing = folder.resolve("flap.svg");
        Files.writeString(drawing, """
                <svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600">
                <g id="flap"><path class="cut" d="M100 100 H200 V260 H140 Z"/>
                <line class="grain" x1="170" y1="240" x2="170" y2="130"/>
                <text x="150" y="200">cut 1 pair</text></g>
                </svg>
                """);
    }

    private Job bare(Length width) throws JobException {
        return BareJob.of(List.of(drawing), folder, new BareJob.Wishes(width, Optional.empty(), List.of(), 2));
    }

    @Test
    void theFilledFileGivesTheSameOrders() throws Exception {
        Job job = bare(Length.ofMillimetres(1500));
        Orders orders = Orders.of(job, folder);
        String text = FilledJob.text(job, orders);
        Path file = Files.writeString(folder.resolve("job.yaml"), text);
        JobFile filled = JobReader.read(file);
        assertThat(filled.job()).isEqualTo(FilledJob.of(job, orders));
        Orders again = Orders.of(filled);
        assertThat(again.fabrics().get(0).order())
                .isEqualTo(orders.fabrics().get(0).order());
        assertThat(text)
                .contains("# Assumed for ", "direction: either-way ", "unusable-edge: {each-side: 1 cm}", "gap: 3 mm ");
        // what is left to assume is about single pieces; of the cloth everything is said
        assertThat(again.fabrics().get(0).assumptions().stream().map(Assumption::text))
                .noneMatch(assumption -> assumption.contains("cloth is laid")
                        || assumption.contains("selvedge is")
                        || assumption.contains("apart")
                        || assumption.contains("shop"));
    }

    @ParameterizedTest
    @ValueSource(longs = {0, -1_500_000, 20_000_000})
    void aWidthThatNoClothHasIsRefused(long micrometres) {
        assertThatThrownBy(() -> bare(new Length(micrometres)))
                .isInstanceOf(JobException.class)
                .hasMessageStartingWith("The cloth cannot be ");
    }

    @Test
    void aWidthThatTheSelvedgesTakeIsRefused() throws Exception {
        Job job = bare(Length.ofMillimetres(15));
        assertThatThrownBy(() -> Orders.of(job, folder))
                .isInstanceOf(JobException.class)
                .hasMessage("nothing is left to cut from: cloth is 1.5 cm wide and its selvedges take 1 cm and 1 cm");
    }
}
