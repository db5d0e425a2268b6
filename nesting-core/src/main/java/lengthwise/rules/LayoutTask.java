package lengthwise.rules;

import java.util.List;

/**
 * What the search gets: place every demand inside a strip of the given height (y from 0 to {@code height}, x from 0),
 * as short as possible. Micrometres.
 */
public record LayoutTask(long height, List<Demand> demands, List<Obstacle> obstacles, List<Bond> bonds) {
    public LayoutTask {
        demands = List.copyOf(demands);
        obstacles = List.copyOf(obstacles);
        bonds = List.copyOf(bonds);
    }
}
