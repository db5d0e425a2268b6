package lengthwise.rules;

import static org.assertj.core.api.Assertions.assertThat;

import lengthwise.model.MarkerOrder;

/** What the rules make of an order, where a test knows which it is. */
final class Rulings {
    private Rulings() {}

    static Ruling.Task ruled(MarkerOrder order) {
        Ruling ruling = Ruling.of(order);
        assertThat(ruling).isInstanceOf(Ruling.Task.class);
        return (Ruling.Task) ruling;
    }

    static String refusal(MarkerOrder order) {
        Ruling ruling = Ruling.of(order);
        assertThat(ruling).isInstanceOf(Ruling.Refused.class);
        return ((Ruling.Refused) ruling).reason();
    }
}
