package lengthwise.testing;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.OnHand;
import lengthwise.model.Repeat;
import lengthwise.model.Shade;
import lengthwise.model.Shrinkage;
import lengthwise.model.Spread;

/** A plain fabric, 150 cm wide with 2 cm unusable each side, that a test changes where it matters. */
public final class TestFabric {
    private String name = "test-cloth";
    private Length width = Length.ofMillimetres(1500);
    private Length edge = Length.ofMillimetres(20);
    private Direction direction = Direction.EITHER_WAY;
    private Spread spread = new Spread(Spread.Form.SINGLE_LAYER, Length.ZERO);
    private Length endAllowance = Length.ZERO;
    private Shrinkage shrinkage = Shrinkage.NONE;
    private Optional<Repeat> repeat = Optional.empty();
    private Optional<Fabric.Price> price = Optional.empty();
    private Length soldBy = new Length(1);
    private List<Box> flaws = List.of();
    private Optional<OnHand> onHand = Optional.empty();
    private Fabric.Buying buying = Fabric.Buying.JUST_ENOUGH;

    private Optional<Shade> shade = Optional.empty();

    private TestFabric() {}

    public static TestFabric plain() {
        return new TestFabric();
    }

    public TestFabric named(String value) {
        name = value;
        return this;
    }

    public TestFabric width(double millimetres, double edgeMillimetres) {
        width = Length.ofMillimetres(millimetres);
        edge = Length.ofMillimetres(edgeMillimetres);
        return this;
    }

    public TestFabric direction(Direction value) {
        direction = value;
        return this;
    }

    public TestFabric folded() {
        return spread(Spread.Form.FOLD_LENGTHWISE);
    }

    public TestFabric spread(Spread.Form form) {
        spread = new Spread(form, Length.ZERO);
        return this;
    }

    public TestFabric plies(Spread.Form form, int plies, Spread.PlyRun run) {
        spread = new Spread(form, Length.ZERO, plies, run);
        return this;
    }

    public TestFabric endAllowance(double millimetres) {
        endAllowance = Length.ofMillimetres(millimetres);
        return this;
    }

    public TestFabric shrinkage(double lengthwise, double crosswise, Shrinkage.Handling handled) {
        shrinkage = new Shrinkage(lengthwise, crosswise, handled);
        return this;
    }

    public TestFabric repeat(double lengthwiseMillimetres, double crosswiseMillimetres) {
        return repeat(new Repeat(
                Length.ofMillimetres(lengthwiseMillimetres),
                Length.ofMillimetres(crosswiseMillimetres),
                false,
                Length.ZERO,
                Length.ZERO));
    }

    public TestFabric repeat(Repeat value) {
        repeat = Optional.of(value);
        return this;
    }

    public TestFabric price(double amount, Length per) {
        price = Optional.of(new Fabric.Price(amount, per));
        return this;
    }

    public TestFabric soldBy(Length step) {
        soldBy = step;
        return this;
    }

    public TestFabric buying(Fabric.Buying value) {
        buying = value;
        return this;
    }

    public TestFabric flaws(Box... boxes) {
        flaws = List.of(boxes);
        return this;
    }

    /** There is just so much of it. */
    public TestFabric onHand(double millimetres) {
        onHand = Optional.of(OnHand.of(Length.ofMillimetres(millimetres)));
        return this;
    }

    /** A remnant with these corners, x and y in turn, in millimetres and in marker coordinates. */
    public TestFabric remnant(double... millimetres) {
        Outline outline = Outline.of(TestPieces.ring(millimetres));
        onHand = Optional.of(new OnHand(new Length(outline.box().maxX()), Optional.of(outline)));
        return this;
    }

    /** The pieces of a garment lie within so many millimetres lengthwise. */
    public TestFabric shadeLengthwise(double millimetres) {
        shade = Optional.of(new Shade(Optional.of(Length.ofMillimetres(millimetres)), Optional.empty()));
        return this;
    }

    /** Left and right of a piece lie in a band of so many millimetres. */
    public TestFabric shadeCrosswise(double millimetres) {
        shade = Optional.of(new Shade(Optional.empty(), Optional.of(Length.ofMillimetres(millimetres))));
        return this;
    }

    public Fabric fabric() {
        return new Fabric(
                name,
                "shell",
                width,
                Fabric.UnusableEdge.eachSide(edge),
                direction,
                Optional.empty(),
                repeat,
                shrinkage,
                new Spread(spread.form(), endAllowance, spread.layers(), spread.plyRun()),
                price,
                soldBy,
                flaws,
                onHand,
                Optional.empty(),
                buying,
                shade);
    }
}
