package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import lengthwise.model.Length;
import lengthwise.model.Size;
import lengthwise.workshop.SizeTable;
import lengthwise.workshop.SizeTable.Range;
import lengthwise.workshop.SizeTable.Row;

/** Reads which measures of the body each size is made for. */
final class SizesReading {
    /** How the table of the standard is asked for. */
    static final String STANDARD = "EN 13402-3";

    private static final String EXAMPLE = STANDARD + ", or {S: {bust: {from: 82 cm, to: 90 cm}}}";

    private static final Length LONGEST_MEASURE = Length.ofMillimetres(10_000);

    private final Measuring measuring;

    SizesReading(Measuring measuring) {
        this.measuring = measuring;
    }

    SizeTable read(Entry entry) throws JobException {
        if (entry.isText()) {
            String text = entry.text(EXAMPLE);
            if (!text.equals(STANDARD)) {
                throw entry.error("found %s; write %s".formatted(Quote.of(text), EXAMPLE));
            }
            return SizeTable.EN_13402_3;
        }
        List<Row> rows = new ArrayList<>();
        for (Entry size : entry.named(EXAMPLE).values()) {
            List<Range> ranges = new ArrayList<>();
            for (Entry measure : size.named("{bust: {from: 82 cm, to: 90 cm}}").values()) {
                ranges.add(range(measure));
            }
            if (ranges.isEmpty()) {
                throw size.error("found no measure; write {bust: {from: 82 cm, to: 90 cm}}");
            }
            rows.add(new Row(new Size(size.name()), ranges));
        }
        if (rows.isEmpty()) {
            throw entry.error("found no size; write " + EXAMPLE);
        }
        return new SizeTable(rows);
    }

    private Range range(Entry entry) throws JobException {
        if (OrderReading.KEYS.contains(entry.name())) {
            throw entry.keyError("%s is a key of its own in the order; give the measure another name"
                    .formatted(Quote.of(entry.name())));
        }
        if (entry.isText()) {
            Length value = measuring.positive(entry, LONGEST_MEASURE);
            return new Range(entry.name(), value, value);
        }
        Fields range = entry.fields("92 cm, or {from: 90 cm, to: 98 cm}", "from", "to");
        Length from = measuring.positive(range.need("from", "90 cm"), LONGEST_MEASURE);
        Length to = measuring.positive(range.need("to", "98 cm"), LONGEST_MEASURE);
        if (from.compareTo(to) > 0) {
            throw entry.error("it ends at %s, before it begins at %s"
                    .formatted(LengthText.print(to, LengthUnit.CM), LengthText.print(from, LengthUnit.CM)));
        }
        return new Range(entry.name(), from, to);
    }
}
