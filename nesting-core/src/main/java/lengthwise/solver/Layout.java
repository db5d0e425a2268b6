package lengthwise.solver;

import java.util.List;
import lengthwise.geometry.Pose;

/** A legal layout: the pose of each demand, in the order of the task, and the length used, in micrometres. */
public record Layout(List<Pose> poses, long length) {
    public Layout {
        poses = List.copyOf(poses);
    }
}
