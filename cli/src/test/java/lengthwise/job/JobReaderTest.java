package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.ScaleStatement;
import lengthwise.job.JobFabric.PrintRepeat;
import lengthwise.job.JobPiece.Up;
import lengthwise.job.JobStrip.PrintUse;
import lengthwise.job.JobStrip.Runs;
import lengthwise.job.OrderLine.Measure;
import lengthwise.model.Axis;
import lengthwise.model.Cut.Manner;
import lengthwise.model.Direction;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.Length;
import lengthwise.model.Shrinkage;
import lengthwise.model.Shrinkage.Handling;
import lengthwise.model.Size;
import lengthwise.model.Spread.Form;
import org.junit.jupiter.api.Test;

/** Every line of one whole job file, read to the values its maker means. */
class JobReaderTest {
    private static final Path FILE = Path.of("work", "plover.yaml");

    static String plover() throws IOException {
        return resource("plover.yaml");
    }

    static String resource(String name) throws IOException {
        try (InputStream in = JobReaderTest.class.getResourceAsStream(name)) {
            return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }

    @Test
    void theHeadOfTheFile() throws Exception {
        JobFile file = JobReader.read(FILE, plover());
        Job job = file.job();
        assertThat(job.title()).isEqualTo("Plover swim set, trial run");
        assertThat(job.units()).contains(LengthUnit.CM);
        assertThat(job.gap()).contains(mm(3));
        assertThat(job.drawings())
                .containsExactly(new JobDrawing(
                        "plover.svg",
                        new ScaleStatement(
                                OptionalDouble.empty(), Optional.of(new ScaleStatement.ScaleBox("box", mm(100)))),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(SeamAllowance.INCLUDED),
                        Optional.of(ArrowMeaning.GRAIN)));
        assertThat(file.path(job.drawings().get(0))).isEqualTo(Path.of("work", "plover.svg"));
        assertThat(file.warnings()).isEmpty();
    }

    @Test
    void theFabrics() throws Exception {
        Job job = JobReader.read(FILE, plover()).job();
        assertThat(job.fabrics())
                .containsExactly(
                        new JobFabric(
                                "reef-print",
                                "shell",
                                mm(1500),
                                Optional.of(UnusableEdge.eachSide(mm(20))),
                                Optional.of(Direction.ONE_WAY),
                                Optional.of(Axis.LENGTHWISE),
                                Optional.empty(),
                                Optional.of(new PrintRepeat(
                                        mm(320),
                                        mm(160),
                                        false,
                                        false,
                                        false,
                                        mm(0),
                                        mm(0),
                                        List.of(),
                                        Optional.empty())),
                                Optional.of(new Shrinkage(0.03, 0.02, Handling.PRE_WASH)),
                                new JobSpread(
                                        Optional.of(Form.SINGLE_LAYER),
                                        Optional.empty(),
                                        Optional.empty(),
                                        Optional.of(mm(20)),
                                        Optional.empty()),
                                Optional.of(new Price(14.5, mm(1000))),
                                Optional.of(mm(100)),
                                List.of(),
                                Optional.empty(),
                                Optional.empty()),
                        new JobFabric(
                                "sand-lining",
                                "lining",
                                // 58 × 25.4 mm; 36 in / 8 = 4.5 in (trade.md U1, U2: the 1959 agreement)
                                mm(1473.2),
                                Optional.empty(),
                                Optional.of(Direction.EITHER_WAY),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                new JobSpread(
                                        Optional.of(Form.FOLD_LENGTHWISE),
                                        Optional.empty(),
                                        Optional.empty(),
                                        Optional.empty(),
                                        Optional.empty()),
                                Optional.of(new Price(6, mm(914.4))),
                                Optional.of(mm(114.3)),
                                List.of(),
                                Optional.empty(),
                                Optional.empty()));
    }

    @Test
    void thePieces() throws Exception {
        Job job = JobReader.read(FILE, plover()).job();
        assertThat(job.pieces())
                .containsExactly(
                        drawn(
                                "cup",
                                new CutRequest("shell", 1, Optional.of(Manner.PAIR)),
                                new CutRequest("lining", 1, Optional.of(Manner.PAIR))),
                        drawn(
                                "brief-back",
                                new CutRequest("shell", 1, Optional.of(Manner.ON_FOLD)),
                                new CutRequest("lining", 1, Optional.of(Manner.ON_FOLD))),
                        tie("neck-tie", LengthRule.of(mm(460)), 2),
                        tie(
                                "rib-tie",
                                new LengthRule(List.of(
                                        new LengthRule.Part(new LengthRule.Source.OfMeasure("ribcage"), 1, mm(300)))),
                                1));
    }

    private static JobPiece drawn(String name, CutRequest... cut) {
        return new JobPiece(
                name,
                List.of(cut),
                Optional.of(Up.AS_DRAWN),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static JobPiece tie(String name, LengthRule length, int count) {
        return new JobPiece(
                name,
                List.of(new CutRequest("shell", count, Optional.empty())),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new JobStrip(mm(32), length, Optional.of(Runs.CROSSWISE), Optional.of(PrintUse.IGNORE))));
    }

    @Test
    void theOrder() throws Exception {
        Job job = JobReader.read(FILE, plover()).job();
        assertThat(job.order())
                .containsExactly(
                        new OrderLine(new Size("S"), 3, List.of(new Measure("ribcage", mm(700)))),
                        new OrderLine(new Size("M"), 4, List.of(new Measure("ribcage", mm(760)))));
        JobStrip ribTie = job.piece("rib-tie").orElseThrow().strip().orElseThrow();
        // "a rib tie is the rib measure + …": common practice, no source
        assertThat(ribTie.length().lengthFor(job.order().get(0))).isEqualTo(mm(1000));
        assertThat(ribTie.length().lengthFor(job.order().get(1))).isEqualTo(mm(1060));
    }

    @Test
    void theDrawingUnitIsNotRoundedToTheGrid() throws Exception {
        Job job = JobReader.read(FILE, """
                        version: 1
                        drawings: [{file: a.svg, drawing-unit: 1/96 in, size: M}]
                        fabrics: {cotton: {width: 140 cm}}
                        order: [{size: M, make: 1}]
                        """).job();
        // 1 in = 96 px (W3C CSS Values and Units), so 1 px = 25.4/96 mm
        assertThat(job.drawings().get(0).scale().millimetresPerUnit().orElseThrow())
                .isEqualTo(25.4 / 96, within(1e-15));
    }

    @Test
    void theLeastFileThatSaysEnough() throws Exception {
        JobFile file = JobReader.read(
                Path.of("top.job.yaml"),
                "version: 1\ndrawings: [top.svg]\nfabrics: {cotton: {width: 140 cm}}\norder: [{make: 1}]\n");
        Job job = file.job();
        assertThat(job.title()).isEqualTo("top.job");
        assertThat(job.units()).isEmpty();
        assertThat(job.fabrics().get(0).role()).isEqualTo("cotton");
        assertThat(job.order()).containsExactly(new OrderLine(Size.ONE, 1, List.of()));
        assertThat(job.pieces()).isEmpty();
        assertThat(file.warnings()).isEmpty();
    }

    @Test
    void aComplaintOfALaterReaderNamesTheSamePlace() throws Exception {
        JobFile file = JobReader.read(FILE, plover());
        assertThat(file.error("pieces.cup", "no drawing has this piece").getMessage())
                .isEqualTo("work/plover.yaml:20:3: key pieces.cup: no drawing has this piece");
        assertThat(file.error("order[2].size", "no drawing has this size").getMessage())
                .startsWith("work/plover.yaml:27:6: key order[2].size: ");
        assertThat(file.error("fabrics.sand-lining.direction", "x").getMessage())
                .startsWith("work/plover.yaml:18:44: ");
        assertThat(file.error("pieces.cup.drawn", "say left or right").getMessage())
                .startsWith("work/plover.yaml:20:3: key pieces.cup.drawn: ");
    }
}
