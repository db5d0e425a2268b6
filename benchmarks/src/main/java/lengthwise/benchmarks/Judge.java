package lengthwise.benchmarks;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.solver.Layout;

/** Says whether a layout of free demands is legal, from the outlines as they lie; shares no code with the search. */
final class Judge {
    private Judge() {}

    static boolean isLegal(LayoutTask task, Layout layout) {
        if (layout.poses().size() != task.demands().size()) {
            return false;
        }
        Box strip = new Box(0, 0, layout.length(), task.height());
        List<Outline> placed = new ArrayList<>();
        for (int i = 0; i < task.demands().size(); i++) {
            Demand demand = task.demands().get(i);
            Outline outline = layout.poses().get(i).apply(demand.outline());
            boolean allowed = demand.domain()
                    .orientations()
                    .contains(layout.poses().get(i).orientation());
            if (!allowed || !strip.contains(outline.box())) {
                return false;
            }
            placed.add(outline);
        }
        return areApart(placed);
    }

    private static boolean areApart(List<Outline> placed) {
        List<Box> boxes = placed.stream().map(Outline::box).toList();
        List<PlacedArea> areas = placed.stream().map(PlacedArea::of).toList();
        for (int i = 0; i < placed.size(); i++) {
            for (int j = i + 1; j < placed.size(); j++) {
                if (boxes.get(i).overlaps(boxes.get(j)) && areas.get(i).overlaps(areas.get(j), 0)) {
                    return false;
                }
            }
        }
        return true;
    }
}
