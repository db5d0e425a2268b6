package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.mm;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.placed;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import lengthwise.model.Fabric;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import org.junit.jupiter.api.Test;

class ZoneBandTest {
    /** A block 30 mm high in a zone from 100 to 140 mm. */
    @Test
    void aPieceStaysInItsZone() {
        Lying.Zone zone = new Lying.Zone("plain", new Fabric.Band(mm(100), mm(140)));
        MarkerOrder order = order(cloth(), bundle(ONE, alike(block(), 1)))
                .withLying(Map.of("block", new Lying(false, Optional.empty(), Optional.of(zone))));
        assertThat(check(order, placed(block(), ONE, 0, 100_000))).isEmpty();
        assertThat(check(order, placed(block(), ONE, 0, 110_000))).isEmpty();
        for (long y : new long[] {99_800, 110_200}) {
            Violation.OutOfZone out = only(Violation.OutOfZone.class, check(order, placed(block(), ONE, 0, y)));
            assertThat(out.by()).isEqualTo(0.2);
            assertThat(out.sentence()).isEqualTo("block S of garment 1 reaches 0.2 mm out of the zone plain.");
        }
    }
}
