package lengthwise.rules;

import java.util.List;

/**
 * What the search gets: place every demand inside a strip of the given height (y from {@code fromY} to {@code fromY +
 * height}, x from 0), as short as possible. Micrometres.
 */
public record LayoutTask(long fromY, long height, List<Demand> demands, List<Obstacle> obstacles, List<Bond> bonds) {
    public LayoutTask {
        demands = List.copyOf(demands);
        obstacles = List.copyOf(obstacles);
        bonds = List.copyOf(bonds);
    }

    /** A strip from y = 0. */
    public LayoutTask(long height, List<Demand> demands, List<Obstacle> obstacles, List<Bond> bonds) {
        this(0, height, demands, obstacles, bonds);
    }

    /** Returns another task on the same strip. */
    public LayoutTask with(List<Demand> otherDemands, List<Obstacle> otherObstacles, List<Bond> otherBonds) {
        return new LayoutTask(fromY, height, otherDemands, otherObstacles, otherBonds);
    }
}
