package lengthwise.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import lengthwise.job.LengthRule.Source;
import lengthwise.model.Length;

/** Writes lengths of a job file that follow from measures, edges or sizes. */
final class LengthRuleWriting {
    private final JobText text;

    LengthRuleWriting(JobText text) {
        this.text = text;
    }

    String rule(LengthRule rule) {
        return rule.parts().size() == 1
                ? part(rule.parts().get(0))
                : rule.parts().stream().map(this::part).collect(Collectors.joining(", ", "[", "]"));
    }

    private String part(LengthRule.Part part) {
        List<String> said = new ArrayList<>();
        if (part.source() instanceof Source.Fixed fixed) {
            if (part.times() == 1 && part.plus().equals(Length.ZERO)) {
                return text.length(fixed.length());
            }
            said.add("length: " + text.length(fixed.length()));
        } else if (part.source() instanceof Source.OfMeasure of) {
            said.add("measure: " + JobText.quoted(of.measure()));
        } else if (part.source() instanceof Source.OfEdge of) {
            said.add("edge: " + JobText.quoted(of.edge()));
        } else if (part.source() instanceof Source.BySize by) {
            said.add("by-size: "
                    + JobText.braces(by.lengths().entrySet().stream()
                            .map(size -> JobText.quoted(size.getKey()) + ": " + text.length(size.getValue()))
                            .toList()));
        }
        if (part.times() != 1) {
            said.add("times: " + JobText.plain(BigDecimal.valueOf(part.times())));
        }
        if (!part.plus().equals(Length.ZERO)) {
            said.add("plus: " + text.length(part.plus()));
        }
        return JobText.braces(said);
    }
}
