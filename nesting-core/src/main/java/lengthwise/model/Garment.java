package lengthwise.model;

import java.util.Collection;
import java.util.stream.Collectors;

/**
 * One unit of the order. Numbers run from 1 through the whole order.
 *
 * @param customer the name of whom it is made for; empty where it is made for nobody by name
 */
public record Garment(int number, Size size, String customer) {
    /** A garment that is made for nobody by name. */
    public Garment(int number, Size size) {
        this(number, size, "");
    }

    /** Returns its number, and after it the name of whom it is made for: "3 Wren". */
    public String called() {
        return customer.isEmpty() ? Integer.toString(number) : number + " " + customer;
    }

    /** Returns what some garments are called, each once: "3 Wren + 4". */
    public static String called(Collection<Garment> garments) {
        return garments.stream().map(Garment::called).distinct().collect(Collectors.joining(" + "));
    }

    /** Returns the names of whom some garments are made for, each once: "Wren + Teal"; empty where none has one. */
    public static String customers(Collection<Garment> garments) {
        return garments.stream()
                .map(Garment::customer)
                .filter(name -> !name.isEmpty())
                .distinct()
                .collect(Collectors.joining(" + "));
    }
}
