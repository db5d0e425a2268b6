package lengthwise.rules;

import lengthwise.geometry.Outline;

/** A region of the strip whose inside no piece may touch: a flaw, the outside of a remnant. In marker coordinates. */
public record Obstacle(Outline region) {}
