package lengthwise.model;

/** One unit of the order. Numbers run from 1 through the whole order. */
public record Garment(int number, Size size) {}
