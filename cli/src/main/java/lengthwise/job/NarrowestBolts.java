package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.job.JobPlan.Bolt;
import lengthwise.model.Length;

/**
 * A job whose fabrics are as wide as the narrowest of their bolts: plies of several bolts lie on each other, and a marker must
 * fit them all (Industrial Cutting of Textile Materials, p. 19: the width of the marker follows the narrowest roll of the lot).
 *
 * @param words what is narrower than the job says, a sentence each
 */
record NarrowestBolts(JobFile file, List<String> words) {
    static NarrowestBolts of(JobFile file) {
        Job job = file.job();
        if (job.plan().isEmpty() || job.plan().get().bolts().isEmpty()) {
            return new NarrowestBolts(file, List.of());
        }
        List<Bolt> bolts = job.plan().get().bolts();
        List<Bolt> wide = new ArrayList<>();
        List<String> words = new ArrayList<>();
        Job narrowed = job;
        for (JobFabric fabric : job.fabrics()) {
            List<Bolt> ofFabric = bolts.stream()
                    .filter(bolt -> bolt.of().equals(fabric.name()))
                    .map(bolt -> bolt.withWidth(bolt.width().orElse(fabric.width())))
                    .toList();
            wide.addAll(ofFabric);
            Optional<Length> narrowest =
                    ofFabric.stream().flatMap(bolt -> bolt.width().stream()).min(Length::compareTo);
            if (narrowest.isPresent() && narrowest.get().compareTo(fabric.width()) < 0) {
                narrowed = narrowed.withFabric(fabric.at(new JobBuying.Offer(narrowest.get(), Optional.empty())));
                words.add("%s: its narrowest bolt is %s wide, and so are the markers; the job says %s."
                        .formatted(
                                fabric.name(),
                                LengthText.print(narrowest.get(), LengthUnit.CM),
                                LengthText.print(fabric.width(), LengthUnit.CM)));
            }
        }
        return new NarrowestBolts(file.with(narrowed.withPlan(job.plan().get().withBolts(wide))), words);
    }
}
