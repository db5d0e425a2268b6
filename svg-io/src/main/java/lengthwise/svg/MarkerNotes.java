package lengthwise.svg;

import java.util.List;

/**
 * What is written beside a marker and cannot be told from it.
 *
 * @param job name of the job
 * @param madeBy the program and its version
 * @param buy how much of the fabric to buy, in words; empty where it is there already
 * @param assumptions what was not said and therefore assumed, a sentence each
 * @param remarks what is cut and not ordered, and other warnings, a sentence each
 */
public record MarkerNotes(String job, String madeBy, String buy, List<String> assumptions, List<String> remarks) {
    public MarkerNotes {
        assumptions = List.copyOf(assumptions);
        remarks = List.copyOf(remarks);
    }
}
