package lengthwise.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lengthwise.model.Length;

/** Writes what is sewn on and along, in a job file. */
final class SewingWriting {
    private final JobText text;
    private final LengthRuleWriting lengths;

    SewingWriting(JobText text) {
        this.text = text;
        this.lengths = new LengthRuleWriting(text);
    }

    void write(JobSewing sewing) {
        text.section("sewing");
        named(
                "edges",
                sewing.edges().entrySet().stream()
                        .map(edge -> JobText.quoted(edge.getKey()) + ": " + edge(edge.getValue())));
        named("elastic", sewing.elastic().stream().map(one -> JobText.quoted(one.name()) + ": " + elastic(one)));
        named("seams", sewing.seams().stream().map(one -> JobText.quoted(one.name()) + ": " + seam(one)));
        sewing.thread().ifPresent(thread -> text.line("  thread: " + thread(thread)));
        named("bindings", sewing.bindings().stream().map(one -> JobText.quoted(one.name()) + ": " + binding(one)));
        named("labels", sewing.labels().stream().map(one -> JobText.quoted(one.name()) + ": " + label(one)));
    }

    private void named(String key, Stream<String> items) {
        List<String> all = items.toList();
        if (!all.isEmpty()) {
            text.line("  " + key + ":");
            all.forEach(item -> text.line("    " + item));
        }
    }

    private String edge(JobSewing.Edge edge) {
        if (edge.drawn().isEmpty()) {
            return lengths.rule(edge.length().orElseThrow());
        }
        List<String> drawn = edge.drawn().stream().map(SewingWriting::drawn).toList();
        List<String> parts = new ArrayList<>();
        parts.add("drawn: " + (drawn.size() == 1 ? drawn.get(0) : "[" + String.join(", ", drawn) + "]"));
        edge.length().ifPresent(stated -> parts.add("stated: " + lengths.rule(stated)));
        return JobText.braces(parts);
    }

    private static String drawn(DrawnEdge edge) {
        List<String> parts = new ArrayList<>(List.of("piece: " + JobText.quoted(edge.piece())));
        if (edge.between().isPresent()) {
            DrawnEdge.Between ends = edge.between().get();
            parts.add("from: " + ends.from().called());
            parts.add("to: " + ends.to().called());
            ends.past().ifPresent(past -> parts.add("past: " + past.called()));
        } else {
            parts.add("edge: " + Entry.word(DrawnEdge.Edge.WHOLE_OUTLINE));
        }
        edge.counts().ifPresent(counts -> parts.add("counts: " + Entry.word(counts)));
        return JobText.braces(parts);
    }

    private String elastic(JobSewing.Elastic elastic) {
        List<String> parts = new ArrayList<>();
        elastic.width().ifPresent(width -> parts.add("width: " + lengths.rule(width)));
        parts.add("length: " + lengths.rule(elastic.length()));
        each(elastic.each(), parts);
        if (!elastic.join().equals(Length.ZERO)) {
            parts.add("join: " + text.length(elastic.join()));
        }
        elastic.price().ifPresent(price -> parts.add("price: " + PriceText.print(price)));
        elastic.soldBy().ifPresent(step -> parts.add("sold-by: " + text.length(step)));
        return JobText.braces(parts);
    }

    private String seam(JobSewing.Seam seam) {
        List<String> parts = new ArrayList<>(List.of("stitch: " + seam.stitch()));
        if (seam.ratio().isPresent()) {
            parts.add("ratio: " + JobText.plain(BigDecimal.valueOf(seam.ratio().getAsDouble())));
        }
        parts.add("length: " + lengths.rule(seam.length()));
        each(seam.each(), parts);
        return JobText.braces(parts);
    }

    private String thread(JobSewing.Spools thread) {
        List<String> parts = new ArrayList<>();
        thread.spool().ifPresent(spool -> parts.add("spool: " + text.length(spool)));
        if (thread.price().isPresent()) {
            parts.add("price: " + amount(thread.price().getAsDouble()) + " per spool");
        }
        if (thread.waste().isPresent()) {
            parts.add("waste: " + JobText.percent(thread.waste().getAsDouble()));
        }
        return JobText.braces(parts);
    }

    private String binding(JobSewing.Binding binding) {
        List<String> parts = new ArrayList<>(List.of(
                "from: " + JobText.quoted(binding.role()),
                "cut-width: " + text.length(binding.cutWidth()),
                "length: " + lengths.rule(binding.length())));
        each(binding.each(), parts);
        parts.add("cut: " + Entry.word(binding.cut()));
        return JobText.braces(parts);
    }

    private static String label(JobSewing.Label label) {
        List<String> parts = new ArrayList<>();
        each(label.each(), parts);
        label.price()
                .ifPresent(price -> parts.add("price: " + amount(price.amount())
                        + (price.pieces() == 1 ? " each" : " per " + price.pieces())));
        label.soldBy().ifPresent(step -> parts.add("sold-by: " + step));
        return JobText.braces(parts);
    }

    private static void each(int each, List<String> parts) {
        if (each != 1) {
            parts.add("each: " + each);
        }
    }

    private static String amount(double amount) {
        BigDecimal exact = BigDecimal.valueOf(amount);
        return exact.setScale(Math.max(2, exact.stripTrailingZeros().scale())).toPlainString();
    }
}
