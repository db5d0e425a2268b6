package lengthwise.job;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.Motif;
import lengthwise.model.OnHand;
import lengthwise.model.Repeat;
import lengthwise.model.Shrinkage;
import lengthwise.model.Spread;

/** Makes the fabric of a job one to cut from: what the maker did not say is assumed and noted. */
final class FabricMaking {
    /** Selvedges of about a centimetre are usual: common practice, no source. */
    private static final Length UNUSABLE_EDGE = Length.ofMillimetres(10);

    /** Ends of 1.5 to 2 cm for elastic cloth (Industrial Cutting of Textile Materials, p. 31). */
    private static final Length END_ALLOWANCE = Length.ofMillimetres(20);

    private static final Length SOLD_BY = Length.ofMillimetres(100);

    /** The assumption that may cost a whole piece of cloth; see {@link FabricOrder#otherwise}. */
    static final String EITHER_WAY_ASSUMED =
            "The cloth has neither print nor pile with an up and a down: pieces may lie either way round.";

    private FabricMaking() {}

    static Fabric of(JobFabric said, Assumptions assumed) {
        boolean tube = said.spread().form().equals(Optional.of(Spread.Form.TUBE));
        Fabric.UnusableEdge edge = said.unusableEdge().orElseGet(() -> {
            if (tube) {
                return Fabric.UnusableEdge.eachSide(Length.ZERO);
            }
            assumed.note("1 cm along each selvedge is left uncut.", "Say unusable-edge: {each-side: …} to change it.");
            return Fabric.UnusableEdge.eachSide(UNUSABLE_EDGE);
        });
        Spread.Form form = said.spread().form().orElseGet(() -> {
            assumed.note("The cloth is laid in a single layer, right side up.");
            return Spread.Form.SINGLE_LAYER;
        });
        Length ends = said.spread().endAllowance().orElseGet(() -> {
            assumed.note("2 cm are left at each cut end of the cloth.");
            return END_ALLOWANCE;
        });
        Shrinkage shrinkage = said.shrinkage().orElseGet(() -> {
            assumed.note("The cloth does not shrink, or the pattern allows for it.");
            return Shrinkage.NONE;
        });
        Length step = said.soldBy().orElseGet(() -> {
            assumed.note("The shop sells by 10 cm.");
            return SOLD_BY;
        });
        Fabric unmarked = new Fabric(
                said.name(),
                said.role(),
                said.width(),
                edge,
                direction(said, assumed),
                said.mostStretch(),
                Optional.empty(),
                shrinkage,
                said.spread().spread(form, ends),
                said.price(),
                step,
                List.of(),
                Optional.empty(),
                said.pile());
        return asItLies(unmarked, said);
    }

    private static Direction direction(JobFabric said, Assumptions assumed) {
        return said.direction().orElseGet(() -> {
            if (said.pile().isPresent()
                    || said.repeat().filter(JobFabric.PrintRepeat::uneven).isPresent()) {
                return Direction.ONE_WAY;
            }
            if (said.repeat().isPresent()) {
                assumed.note("The print has an up and a down: every piece lies one way.");
                return Direction.ONE_WAY;
            }
            assumed.note(EITHER_WAY_ASSUMED, "For one-way cloth say direction: one-way; it takes as much or more.");
            return Direction.EITHER_WAY;
        });
    }

    /** Carries the print's origin, the flaws and a remnant from the bought cloth to marker coordinates on the table. */
    private static Fabric asItLies(Fabric fabric, JobFabric said) {
        return new Fabric(
                fabric.name(),
                fabric.role(),
                fabric.width(),
                fabric.unusableEdge(),
                fabric.direction(),
                fabric.mostStretch(),
                said.repeat()
                        .map(print -> new Repeat(
                                print.lengthwise(),
                                print.crosswise(),
                                print.halfDrop(),
                                print.mirrored(),
                                along(fabric, print.fromStart()),
                                printAcross(fabric, print.fromSelvedge()))),
                fabric.shrinkage(),
                fabric.spread(),
                fabric.price(),
                fabric.soldBy(),
                said.flaws().stream().map(flaw -> flaw(fabric, flaw)).toList(),
                said.there().map(there -> onHand(fabric, there)),
                fabric.pile(),
                new Fabric.Buying(
                        said.buying().squaring(),
                        said.buying().flaws(),
                        said.buying().weight()),
                said.across().shade());
    }

    /** Returns where the line of a border lies in the marker. */
    static Length line(Fabric fabric, JobFabric.Border border) {
        return across(
                fabric,
                border.selvedge() == Lying.Selvedge.NEAR
                        ? border.fromSelvedge()
                        : fabric.width().minus(border.fromSelvedge()));
    }

    /** Returns where a zone lies in the marker, as far as pieces may lie in it. */
    static Lying.Zone zone(Fabric fabric, JobFabric.Zone zone) {
        Length from = Length.max(Length.ZERO, across(fabric, zone.from()));
        Length past = Length.max(Length.ZERO, across(fabric, zone.to()).minus(fabric.cuttableWidth()));
        return new Lying.Zone(
                zone.name(), new Fabric.Band(from, across(fabric, zone.to()).minus(past)));
    }

    /** Returns a motif as it lies from the print's origin, washed if the cloth is; on folded cloth y counts from the fold. */
    static Motif motif(Fabric fabric, JobFabric.PrintMotif motif) {
        long x = motif.lengthwise().scaled(fabric.lengthKept()).micrometres();
        long fromOrigin = motif.crosswise().scaled(fabric.widthKept()).micrometres();
        long y = fabric.spread().form() == Spread.Form.FOLD_LENGTHWISE ? -fromOrigin : fromOrigin;
        long length = motif.length().scaled(fabric.lengthKept()).micrometres();
        long width = motif.width().scaled(fabric.widthKept()).micrometres();
        Point corner = new Point(x - length / 2, y - width / 2);
        return new Motif(motif.name(), new Box(0, 0, length, width).moved(corner), motif.round());
    }

    private static Box flaw(Fabric fabric, JobFabric.Flaw flaw) {
        long from = across(fabric, flaw.fromSelvedge()).micrometres();
        long to = across(fabric, flaw.fromSelvedge().plus(flaw.width())).micrometres();
        long start = along(fabric, flaw.fromStart()).micrometres();
        long end = along(fabric, flaw.fromStart().plus(flaw.length())).micrometres();
        if (fabric.spread().form() == Spread.Form.FOLD_LENGTHWISE) {
            return onFold(fabric, flaw, start, end);
        }
        return new Box(start, from, end, to);
    }

    /** On folded cloth y counts from the fold, and a flaw of either layer spoils both. */
    private static Box onFold(Fabric fabric, JobFabric.Flaw flaw, long start, long end) {
        long middle = fabric.width().micrometres() / 2;
        long one = flaw.fromSelvedge().micrometres() - middle;
        long other = one + flaw.width().micrometres();
        boolean overFold = one < 0 && other > 0;
        long near = overFold ? 0 : Math.min(Math.abs(one), Math.abs(other));
        long far = Math.max(Math.abs(one), Math.abs(other));
        return new Box(
                start,
                new Length(near).scaled(fabric.widthKept()).micrometres(),
                end,
                new Length(far).scaled(fabric.widthKept()).micrometres());
    }

    private static OnHand onHand(Fabric fabric, JobFabric.There there) {
        if (there.corners().isEmpty()) {
            return OnHand.of(there.length());
        }
        Ring outline = Ring.of(there.corners().stream()
                .map(corner -> new Point(
                        along(fabric, corner.fromStart()).micrometres(),
                        across(fabric, corner.fromSelvedge()).micrometres()))
                .toList());
        return new OnHand(there.length(), Optional.of(Outline.of(outline)));
    }

    private static Length along(Fabric fabric, Length fromStart) {
        return fromStart.scaled(fabric.lengthKept()).minus(fabric.spread().startAllowance());
    }

    /** On folded cloth y counts from the fold. */
    private static Length printAcross(Fabric fabric, Length fromSelvedge) {
        return fabric.spread().form() == Spread.Form.FOLD_LENGTHWISE
                ? new Length(fabric.width().micrometres() / 2)
                        .minus(fromSelvedge)
                        .scaled(fabric.widthKept())
                : across(fabric, fromSelvedge);
    }

    private static Length across(Fabric fabric, Length fromSelvedge) {
        return fromSelvedge.minus(fabric.unusableEdge().near()).scaled(fabric.widthKept());
    }
}
