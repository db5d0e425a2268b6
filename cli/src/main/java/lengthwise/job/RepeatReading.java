package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.job.JobFabric.PrintMotif;
import lengthwise.job.JobFabric.PrintRepeat;
import lengthwise.model.Length;

/** Reads the repeat of a print and the motifs in it. */
final class RepeatReading {
    private static final String A_MOTIF = "{lengthwise: 8 cm, crosswise: 5 cm, radius: 3 cm}";

    private final Measuring measuring;

    RepeatReading(Measuring measuring) {
        this.measuring = measuring;
    }

    PrintRepeat read(Entry entry) throws JobException {
        Fields repeat = entry.fields(
                "{lengthwise: 32 cm, crosswise: 16 cm}",
                "lengthwise",
                "crosswise",
                "half-drop",
                "mirrored",
                "uneven",
                "origin",
                "motifs",
                "image");
        Optional<Length> lengthwise = repeat.read("lengthwise", e -> measuring.positive(e, FabricReading.WIDEST));
        Optional<Length> crosswise = repeat.read("crosswise", e -> measuring.positive(e, FabricReading.WIDEST));
        if (lengthwise.isEmpty() && crosswise.isEmpty()) {
            throw entry.error(
                    "a repeat needs lengthwise, crosswise or both; write {lengthwise: 32 cm, crosswise: 16 cm}");
        }
        boolean halfDrop = FabricReading.isYes(repeat, "half-drop");
        if (halfDrop && (lengthwise.isEmpty() || crosswise.isEmpty())) {
            throw entry.error("a half-drop repeat needs both lengthwise and crosswise");
        }
        Optional<Fields> origin = repeat.read(
                "origin", e -> e.fields("{from-start: 5 cm, from-selvedge: 3 cm}", "from-start", "from-selvedge"));
        return new PrintRepeat(
                lengthwise.orElse(Length.ZERO),
                crosswise.orElse(Length.ZERO),
                halfDrop,
                FabricReading.isYes(repeat, "mirrored"),
                FabricReading.isYes(repeat, "uneven"),
                within(origin, "from-start"),
                within(origin, "from-selvedge"),
                repeat.read("motifs", e -> motifs(e, lengthwise, crosswise)).orElse(List.of()),
                repeat.read("image", e -> image(e, lengthwise.isPresent() && crosswise.isPresent())));
    }

    private static String image(Entry entry, boolean whole) throws JobException {
        if (!whole) {
            throw entry.keyError(
                    "the picture shows one repeat along and across the cloth; say lengthwise and crosswise");
        }
        return JobReader.path(entry, "the path of a picture of one repeat, seen from the folder of the job file");
    }

    private Length within(Optional<Fields> part, String key) throws JobException {
        return part.isPresent() ? part.get().read(key, measuring::notNegative).orElse(Length.ZERO) : Length.ZERO;
    }

    private List<PrintMotif> motifs(Entry entry, Optional<Length> lengthwise, Optional<Length> crosswise)
            throws JobException {
        List<PrintMotif> motifs = new ArrayList<>();
        for (Entry item : entry.named("rose: " + A_MOTIF).values()) {
            motifs.add(motif(item, lengthwise, crosswise));
        }
        return motifs;
    }

    private PrintMotif motif(Entry entry, Optional<Length> lengthwise, Optional<Length> crosswise) throws JobException {
        Fields motif = entry.fields(
                A_MOTIF + ", or length and width in place of radius",
                "lengthwise",
                "crosswise",
                "radius",
                "length",
                "width");
        Optional<Entry> radius = motif.get("radius");
        if (radius.isPresent()) {
            if (lengthwise.isEmpty() || crosswise.isEmpty()) {
                throw radius.get()
                        .keyError("the print repeats one way only, so that its motifs are stripes; write "
                                + (crosswise.isEmpty() ? "length" : "width"));
            }
            if (motif.get("length").isPresent() || motif.get("width").isPresent()) {
                throw radius.get().keyError("a motif is round or not; write radius, or length and width");
            }
        }
        Length length = size(motif, "length", lengthwise, radius);
        Length width = size(motif, "width", crosswise, radius);
        return new PrintMotif(
                entry.name(),
                middle(motif, "lengthwise", lengthwise),
                middle(motif, "crosswise", crosswise),
                length,
                width,
                radius.isPresent());
    }

    private Length middle(Fields motif, String key, Optional<Length> repeat) throws JobException {
        if (repeat.isEmpty()) {
            refuseAlongStripe(motif, key);
            return Length.ZERO;
        }
        return motif.read(key, e -> measuring.notNegative(e, FabricReading.WIDEST))
                .orElse(Length.ZERO);
    }

    private Length size(Fields motif, String key, Optional<Length> repeat, Optional<Entry> radius) throws JobException {
        if (repeat.isEmpty()) {
            refuseAlongStripe(motif, key);
            return Length.ZERO;
        }
        Entry said = radius.isPresent() ? radius.get() : motif.need(key, "6 cm (or radius: 3 cm)");
        Length size = measuring.positive(said, FabricReading.WIDEST).times(radius.isPresent() ? 2 : 1);
        if (size.compareTo(repeat.get()) >= 0) {
            throw said.error("the motif is %s %s and comes again every %s; make it smaller than the repeat"
                    .formatted(
                            LengthText.print(size, LengthUnit.CM),
                            key.equals("length") ? "long" : "wide",
                            LengthText.print(repeat.get(), LengthUnit.CM)));
        }
        return size;
    }

    private static void refuseAlongStripe(Fields motif, String key) throws JobException {
        Optional<Entry> said = motif.get(key);
        if (said.isPresent()) {
            throw said.get()
                    .keyError("the print does not repeat that way, so that the motif is a stripe; leave this out");
        }
    }
}
