package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Ring;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.OnHand;
import org.junit.jupiter.api.Test;

/** From the cloth as it is measured to marker coordinates, worked out by hand. */
class ClothOnHandTest {
    /** 2.3 m less 2 cm at each end are 2.26 m. */
    @Test
    void theLengthThereIsLessTheEndsIsRoom() throws Exception {
        assertThat(fabric("length: 2.3 m").room()).contains(Length.ofMillimetres(2260));
    }

    /** From the cut end 2 cm go off lengthwise, from the selvedge 1 cm crosswise. */
    @Test
    void theCornersOfARemnantAreCarriedToTheMarker() throws Exception {
        Fabric fabric =
                fabric("outline: [{from-start: 0 cm, from-selvedge: 0 cm}, {from-start: 90 cm, from-selvedge: 0 cm},"
                        + " {from-start: 50 cm, from-selvedge: 60 cm}]");
        assertThat(fabric.onHand().flatMap(OnHand::outline))
                .contains(Outline.of(Ring.of(-20_000, -10_000, 880_000, -10_000, 480_000, 590_000)));
        assertThat(fabric.room()).contains(Length.ofMillimetres(860));
    }

    @Test
    void aFlawMayGoOverTheWholeWidthOrAllAlong() throws Exception {
        assertThat(fabric("flaws: [{from-start: 40 cm, length: 1 cm}]").flaws())
                .containsExactly(new Box(380_000, -10_000, 390_000, 990_000));
        assertThat(fabric("length: 2 m, flaws: [{from-selvedge: 30 cm, width: 2 cm}]")
                        .flaws())
                .containsExactly(new Box(-20_000, 290_000, 1_980_000, 310_000));
    }

    /**
     * Cloth of 100 cm is folded at 50 cm, and y counts from the fold. 10 to 12 cm from the near selvedge lie 38 to 40 cm
     * from the fold; 70 to 75 cm lie in the other layer, 20 to 25 cm from it; 45 to 52 cm lie over it, up to 5 cm.
     */
    @Test
    void onFoldedClothAFlawOfEitherLayerCounts() throws Exception {
        assertThat(folded("from-selvedge: 10 cm, width: 2 cm")).isEqualTo(new Box(-20_000, 380_000, 10_000, 400_000));
        assertThat(folded("from-selvedge: 70 cm, width: 5 cm")).isEqualTo(new Box(-20_000, 200_000, 10_000, 250_000));
        assertThat(folded("from-selvedge: 45 cm, width: 7 cm")).isEqualTo(new Box(-20_000, 0, 10_000, 50_000));
    }

    private static Box folded(String across) throws JobException {
        return fabric("spread: {form: fold-lengthwise}, flaws: [{from-start: 0 cm, length: 3 cm, " + across + "}]")
                .flaws()
                .get(0);
    }

    private static Fabric fabric(String more) throws JobException {
        JobFile file = JobReader.read(Path.of("job.yaml"), """
                version: 1
                fabrics: {cloth: {width: 100 cm, %s}}
                pieces: {tie: {strip: {cut-width: 3 cm, length: 20 cm}, cut: 1}}
                order: [{make: 2}]
                """.formatted(more));
        return Orders.of(file).fabrics().get(0).order().fabric();
    }
}
