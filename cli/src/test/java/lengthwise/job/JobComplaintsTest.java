package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a maker is told about a job file that cannot be used: always one line, with the place and what to do. */
class JobComplaintsTest {
    private static final String CASE = "=== ";
    private static final String COMPLAINT = "\n>>> ";

    /** Runs every case of {@code complaints.txt}, which is also the list to read for the wording. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void oneLineForEachSlip(String title, String yaml, String complaint) {
        assertThat(complaint(yaml)).as(title).isEqualTo(complaint);
    }

    static Stream<Arguments> cases() throws IOException {
        String text = JobReaderTest.resource("complaints.txt");
        return Arrays.stream(text.split("(?m)^" + CASE, -1)).skip(1).map(one -> {
            int titleEnd = one.indexOf('\n');
            int yamlEnd = one.indexOf(COMPLAINT);
            return Arguments.of(
                    one.substring(0, titleEnd),
                    one.substring(titleEnd + 1, yamlEnd + 1),
                    one.substring(yamlEnd + COMPLAINT.length()).strip());
        });
    }

    private static String complaint(String yaml) {
        return message(() -> JobReader.read(Path.of("job.yaml"), yaml));
    }

    private static String message(ThrowingCallable reading) {
        JobException complaint = catchThrowableOfType(JobException.class, reading);
        assertThat(complaint).isNotNull();
        assertThat(complaint.getMessage()).doesNotContain("\n", "\r");
        return complaint.getMessage();
    }

    @Test
    void aTabIsNamed() {
        assertThat(complaint("version: 1\nfabrics:\n\treef-print:\n\t\twidth: 150 cm\n"))
                .isEqualTo("job.yaml:3:1: this line is indented with a tab; indent with spaces");
    }

    @Test
    void anAliasBombIsRefusedAtItsFirstAlias() {
        StringBuilder bomb = new StringBuilder("version: 1\na0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 40; i++) {
            String alias = "*a" + (i - 1);
            bomb.append("a%d: &a%d [%s, %s, %s, %s, %s]\n".formatted(i, i, alias, alias, alias, alias, alias));
        }
        assertThat(complaint(bomb.toString())).isEqualTo("job.yaml:3:10: found an alias (*name); write the values out");
    }

    @Test
    void deepNestingIsRefusedWithoutRunningOutOfStack() {
        assertThat(complaint("job: " + "[".repeat(100_000))).contains("nested deeper than 20 levels");
    }

    @Test
    void aCharacterThatNoTextHas() {
        assertThat(complaint("version: 1\njob: Plo\0ver\n"))
                .isEqualTo("job.yaml:1:1: the file has a character that no text has (code 0000, character 20); "
                        + "save it as plain text in UTF-8");
    }

    @Test
    void invisibleLettersAreShown() {
        assertThat(complaint("version: \"1\\u202e\"\n")).contains("says version \"1\\u202e\"");
    }

    @Test
    void aMissingFile(@TempDir Path folder) {
        Path file = folder.resolve("plover.yaml");
        assertThat(message(() -> JobReader.read(file)))
                .isEqualTo(file + ": there is no such file; check the spelling and the folder");
    }

    @Test
    void aFolder(@TempDir Path folder) {
        assertThat(message(() -> JobReader.read(folder)))
                .isEqualTo(
                        folder + ": this is a folder; name the job file in it, such as " + folder.resolve("job.yaml"));
    }

    @Test
    void aFileOfAnotherKind(@TempDir Path folder) throws IOException {
        Path file = Files.write(folder.resolve("photo.yaml"), new byte[] {(byte) 0x89, 'P', 'N', 'G', (byte) 0xC3});
        assertThat(message(() -> JobReader.read(file)))
                .isEqualTo(file + ": the file is not text in UTF-8; save it as UTF-8 in your editor");
    }

    @Test
    void aFileThatIsTooLarge(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("large.yaml"), "# waste\n".repeat(1 << 17) + "version: 1\n");
        assertThat(message(() -> JobReader.read(file)))
                .isEqualTo(file + ": the file is larger than 1 MiB; a job file is a few kilobytes of text");
    }

    @Test
    void aTextLongerThanAnyKeyNeeds() {
        assertThat(complaint("version: 1\njob: " + "x".repeat(600)
                        + "\nfabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\norder: [{make: 1}]\n"))
                .startsWith("job.yaml:2:6: key job: found \"" + "x".repeat(60) + "…\", which is too long");
    }
}
