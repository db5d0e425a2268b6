package lengthwise.job;

import java.util.List;
import java.util.Optional;
import lengthwise.model.Length;

/**
 * What is cut already of a fabric, by the marker that it was cut from.
 *
 * @param marker path of the marker's file, seen from the folder of the job file
 * @param numbers of the pieces that are cut, as on the marker; empty where {@code upTo} says it
 * @param upTo everything is cut that lies before this, measured on the table from the cut end
 * @param spoilt the numbers of those among them that are of no use
 */
public record JobCutAlready(String marker, List<Integer> numbers, Optional<Length> upTo, List<Integer> spoilt) {
    public JobCutAlready {
        numbers = List.copyOf(numbers);
        spoilt = List.copyOf(spoilt);
    }

    JobCutAlready withMarker(String path) {
        return new JobCutAlready(path, numbers, upTo, spoilt);
    }
}
