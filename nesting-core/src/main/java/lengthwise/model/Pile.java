package lengthwise.model;

/**
 * Which way the pile runs on the body: brushed that way it lies smooth. The trade lets short pile run up, which looks
 * darker and richer, and pile of more than 10 mm down (<i>Industrial Cutting of Textile Materials</i>, pp. 34, 279).
 */
public enum Pile {
    /** From hem to neck; on the table to the end of the marker. */
    UP,
    /** From neck to hem; on the table to the start of the marker. */
    DOWN
}
