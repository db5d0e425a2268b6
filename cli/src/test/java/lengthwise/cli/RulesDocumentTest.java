package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What {@code docs/cloth-rules.md} names as held by a test or shown by a demo is there. */
class RulesDocumentTest {
    private static final Path ROOT = Path.of("..");

    static Stream<MatchResult> tests() throws IOException {
        return named("`((?:\\w+/)?\\w+Test)\\.(\\w+)`");
    }

    static Stream<MatchResult> demos() throws IOException {
        return named("`([a-z-]+/[a-z-]+\\.yaml)`");
    }

    private static Stream<MatchResult> named(String pattern) throws IOException {
        return Pattern.compile(pattern)
                .matcher(Files.readString(ROOT.resolve("docs/cloth-rules.md")))
                .results();
    }

    @Test
    void somethingIsNamed() throws IOException {
        assertThat(tests()).hasSizeGreaterThan(50);
        assertThat(demos()).hasSizeGreaterThan(15);
    }

    @ParameterizedTest
    @MethodSource("tests")
    void everyTestIsThere(MatchResult named) throws IOException {
        String file = "/" + named.group(1) + ".java";
        boolean found = false;
        for (String module : List.of("nesting-core", "svg-io", "cli")) {
            try (Stream<Path> files = Files.walk(ROOT.resolve(module).resolve("src/test/java"))) {
                for (Path test :
                        files.filter(path -> path.toString().endsWith(file)).toList()) {
                    found |= Files.readString(test).contains("void " + named.group(2) + "(");
                }
            }
        }
        assertThat(found).as(named.group()).isTrue();
    }

    @ParameterizedTest
    @MethodSource("demos")
    void everyDemoIsThere(MatchResult named) {
        assertThat(ROOT.resolve("demo-markers").resolve(named.group(1))).isRegularFile();
    }
}
