package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Holds {@code docs/job-file.md} to what the reader does. */
class JobFileDocumentTest {
    private static final Path JOB = Path.of("job.yaml");

    private static String document() throws IOException {
        return Files.readString(Path.of("..", "docs", "job-file.md"));
    }

    static Stream<String> wholeFiles() throws IOException {
        return Pattern.compile("(?s)```yaml\n(version.*?)```")
                .matcher(document())
                .results()
                .map(found -> found.group(1));
    }

    @ParameterizedTest
    @MethodSource("wholeFiles")
    void everyWholeFileReads(String yaml) throws JobException {
        assertThat(JobReader.read(JOB, yaml).warnings()).isEmpty();
    }

    @Test
    void thereAreWholeFiles() throws IOException {
        assertThat(wholeFiles()).hasSize(9);
    }

    /** The reader lists the keys it allows when it meets one that it does not. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "nonsense: 1",
                "drawings: [{nonsense: 1}]\nfabrics: {a: {width: 1 m}}",
                "drawings: [{scale-box: {nonsense: 1}}]\nfabrics: {a: {width: 1 m}}",
                "drawings: [{tiles: {nonsense: 1}}]\nfabrics: {a: {width: 1 m}}",
                "fabrics: {a: {nonsense: 1}}",
                "fabrics: {a: {width: 1 m, unusable-edge: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m, repeat: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m, repeat: {lengthwise: 1 m, origin: {nonsense: 1}}}}",
                "fabrics: {a: {width: 1 m, repeat: {lengthwise: 1 m, motifs: {b: {nonsense: 1}}}}}",
                "fabrics: {a: {width: 1 m, shrinkage: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m, spread: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m, spread: {end-allowance: {nonsense: 1}}}}",
                "fabrics: {a: {width: 1 m, flaws: [{nonsense: 1}]}}",
                "fabrics: {a: {width: 1 m, outline: [{nonsense: 1}, {}, {}]}}",
                "fabrics: {a: {width: 1 m, already-cut: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\npieces: {b: {nonsense: 1}}",
                "fabrics: {a: {width: 1 m}}\npieces: {b: {filler: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\npieces: {b: {match-point: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\npieces: {b: {keep-off: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\npieces: {b: {strip: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\npieces: {b: {cut: 1, strip: {cut-width: 1 m, length: {nonsense: 1}}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\norder: [{make: 1, nonsense: 1}]",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsizes: {S: {bust: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {nonsense: 1}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {edges: {b: {drawn: {nonsense: 1}}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {edges: {b: {drawn: {piece: c, edge: nonsense}}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {edges: {b: {drawn: {piece: c, counts: nonsense}}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {edges: {b: {drawn: {piece: c, edge: whole-outline}, nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {elastic: {b: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {elastic: {b: {length: {nonsense: 1}}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {seams: {b: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {thread: {nonsense: 1}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {bindings: {b: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\nsewing: {labels: {b: {nonsense: 1}}}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\norder: [{make: 1}]\nplan: {nonsense: 1}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\norder: [{make: 1}]\nplan: {bolts: [{nonsense: 1}]}",
                "fabrics: {a: {width: 1 m}}\ndrawings: [a.svg]\norder: [{make: 1}]\nplan: {least: nonsense}",
                "fabrics: {a: {width: 1 m, direction: nonsense}}",
                "fabrics: {a: {width: 1 m, most-stretch: nonsense}}",
                "fabrics: {a: {width: 1 m, pile: nonsense}}",
                "fabrics: {a: {width: 1 m, spread: {form: plies-face-to-face, plies-run: nonsense}}}",
                "fabrics: {a: {width: 1 m, right-side: nonsense}}",
                "fabrics: {a: {width: 1 m, shrinkage: {handled: nonsense}}}",
                "fabrics: {a: {width: 1 m, spread: {form: nonsense}}}",
                "fabrics: {a: {width: 1 m}}\npieces: {b: {up: nonsense}}",
                "fabrics: {a: {width: 1 m}}\npieces: {b: {drawn: nonsense}}",
                "fabrics: {a: {width: 1 m}}\npieces: {b: {arrow-means: nonsense}}",
                "units: nonsense",
            })
    void everyAllowedWordIsDescribed(String yaml) throws IOException {
        JobException complaint =
                catchThrowableOfType(JobException.class, () -> JobReader.read(JOB, "version: 1\n" + yaml + "\n"));
        assertThat(complaint.getMessage()).contains("nonsense", "allowed: ");
        String allowed = complaint.getMessage().replaceFirst(".*allowed: ", "");
        assertThat(Pattern.compile("[a-z-]+")
                        .matcher(allowed.replace(" or ", " "))
                        .results()
                        .map(MatchResult::group))
                .isNotEmpty()
                .allSatisfy(word -> assertThat(document()).containsPattern("[`{ ]" + word + "[`: }]"));
    }
}
