package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All files of all commands are the same whatever language the machine speaks, but for the time that searches took. */
@Tag("written")
class EveryLanguageTest {
    private static final String DRAWING = """
            <svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            <g id="flap"><path class="cut" d="M100 100 H130.5 L260.25 400.125 H100 Z"/>
            <line class="grain" x1="120" y1="340" x2="120" y2="130" marker-end="url(#head)"/></g>
            </svg>
            """;

    private static final String JOB = """
            version: 1
            job: flaps
            units: in
            drawings: [{file: flap.svg, seam-allowance: included, arrow-means: grain}]
            fabrics:
              canvas: {for: shell, width: 58 1/2, direction: one-way, unusable-edge: {each-side: 1/2},
                       shrinkage: {lengthwise: 3.5 %, crosswise: 2 %, handled: pre-wash},
                       price: 12.75 per yd, sold-by: 1/8 yd, widths: [45, 58 1/2]}
            pieces: {flap: {cut: 4 alike}}
            gap: 1/16
            plan: {max-plies: 2, table-length: 3 yd}
            order: [{size: M, make: 3}]
            """;

    @TempDir
    private Path path;

    @Test
    void theSameFiles() throws Exception {
        Map<String, String> english = written("en-US");
        assertThat(english.keySet()).anyMatch(name -> name.endsWith(".pdf")).anyMatch(name -> name.startsWith("hpgl"));
        for (String language : List.of("de-DE", "ar-EG-u-nu-arab")) {
            Map<String, String> other = written(language);
            assertThat(other.keySet()).isEqualTo(english.keySet());
            other.forEach(
                    (name, text) -> assertThat(text).as(language + ": " + name).isEqualTo(english.get(name)));
        }
    }

    private Map<String, String> written(String language) throws IOException {
        Path to = Files.createDirectory(path.resolve(language));
        JobFolder folder = new JobFolder(to);
        folder.write("flap.svg", DRAWING);
        folder.write("job.yaml", JOB);
        String job = folder.path("job.yaml");
        String marker = folder.path("out/canvas.svg");
        runs(language, folder, "marker", job, "--iterations", "20", "--workers", "1", "--out", folder.path("out"));
        runs(language, folder, "check", marker, "--job", job);
        runs(language, folder, "inspect", folder.path("flap.svg"), "--picture", folder.path("seen.svg"));
        runs(
                language,
                folder,
                "estimate",
                job,
                "--iterations",
                "20",
                "--workers",
                "1",
                "--out",
                folder.path("estimate"));
        runs(language, folder, "chart", job, "--iterations", "20", "--out", folder.path("chart"));
        runs(language, folder, "plan", job, "--iterations", "20", "--workers", "1", "--out", folder.path("plan"));
        runs(language, folder, "print", marker, "--paper", "Letter", "--out", folder.path("letter.pdf"));
        runs(language, folder, "print", marker, "--projector", "--out", folder.path("projector.pdf"));
        for (String as : List.of("dxf", "dxf-lines", "hpgl", "cutter-svg")) {
            runs(language, folder, "export", marker, "--as", as, "--out", folder.path(as + ".out"));
        }
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(to)) {
            for (Path file : all.filter(Files::isRegularFile).collect(Collectors.toList())) {
                files.put(to.relativize(file).toString(), Files.readString(file, StandardCharsets.ISO_8859_1));
            }
        }
        return files;
    }

    private static void runs(String language, JobFolder folder, String... words) {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(language));
            assertThat(folder.run(words))
                    .as(() -> String.join(" ", words) + "\n" + folder.said())
                    .isZero();
        } finally {
            Locale.setDefault(before);
        }
    }
}
