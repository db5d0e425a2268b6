package lengthwise.job;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.drawing.DrawingException;
import lengthwise.model.Bundle;
import lengthwise.model.CutAlready;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerSvgReader;

/** Finds out from the marker that was cut from what is cut already. */
final class CuttingRead {
    private final JobCutAlready said;
    private final MarkerDrawing drawing;

    private CuttingRead(JobCutAlready said, MarkerDrawing drawing) {
        this.said = said;
        this.drawing = drawing;
    }

    /**
     * Returns an order that goes on where its cloth is cut already. A filler that is cut counts as ordered.
     *
     * @param folder what the marker's path is relative to
     * @throws JobException if the marker cannot be read, is for another cloth, or has no piece of a number
     */
    static MarkerOrder order(MarkerOrder whole, JobCutAlready said, Path folder) throws JobException {
        Path file = folder.resolve(said.marker()).normalize();
        if (!Files.isRegularFile(file)) {
            throw new JobException("%s: there is no such marker (looked in %s)."
                    .formatted(said.marker(), folder.toAbsolutePath().normalize()));
        }
        MarkerDrawing drawing;
        try {
            drawing = MarkerSvgReader.read(file);
        } catch (DrawingException unreadable) {
            throw new JobException(String.valueOf(unreadable.getMessage()));
        }
        refuseOtherCloth(drawing, said.marker(), whole.fabric());
        CutAlready cut = new CuttingRead(said, drawing)
                .cut(whole.fabric())
                .under(whole.fabric().flaws());
        Set<Integer> garments = Stream.concat(cut.pieces().stream(), cut.spoilt().stream())
                .flatMap(piece -> piece.garments().stream())
                .collect(Collectors.toSet());
        List<Bundle> ordered = new ArrayList<>(whole.bundles());
        List<Bundle> fillers = new ArrayList<>();
        for (Bundle filler : whole.fillers()) {
            (garments.contains(filler.garment().number()) ? ordered : fillers).add(filler);
        }
        return whole.withBundles(ordered).withFillers(fillers).withCutAlready(cut);
    }

    private static void refuseOtherCloth(MarkerDrawing drawing, String marker, Fabric fabric) throws JobException {
        if (!drawing.fabric().equals(fabric.name())) {
            throw new JobException("%s is a marker for %s, and this fabric is %s; name its own marker."
                    .formatted(marker, drawing.fabric(), fabric.name()));
        }
        if (!drawing.cuttableWidth().equals(fabric.cuttableWidth())) {
            throw new JobException(
                    ("%s was cut on a cuttable width of %s, and this fabric has %s; what is cut lies where it lies: keep its"
                                    + " width, its unusable edge and its spread as they were.")
                            .formatted(
                                    marker,
                                    LengthText.print(drawing.cuttableWidth(), LengthUnit.CM),
                                    LengthText.print(fabric.cuttableWidth(), LengthUnit.CM)));
        }
    }

    private CutAlready cut(Fabric fabric) throws JobException {
        for (int number : said.numbers()) {
            refuseUnknown(number);
        }
        Length before = said.upTo()
                .map(length -> length.minus(fabric.spread().startAllowance()))
                .orElse(Length.ZERO);
        boolean[] cut = new boolean[drawing.pieces().size()];
        for (int i = 0; i < cut.length; i++) {
            cut[i] = said.numbers().contains(drawing.numbers().get(i)) || end(i).compareTo(before) <= 0;
        }
        Set<Integer> spoilt = new TreeSet<>(said.spoilt());
        for (int number : spoilt) {
            refuseUnknown(number);
            if (!cut[drawing.numbers().indexOf(number)]) {
                throw new JobException("number %s is spoilt, and not among what is cut; name it there too."
                        .formatted(Integer.toString(number)));
            }
        }
        Length upTo = IntStream.range(0, cut.length)
                .filter(i -> cut[i])
                .mapToObj(this::end)
                .reduce(before, Length::max);
        List<PlacedPiece> planned = IntStream.range(0, cut.length)
                .filter(i -> !cut[i])
                .mapToObj(drawing.pieces()::get)
                .toList();
        return new CutAlready(
                pieces(cut, number -> !spoilt.contains(number)), pieces(cut, spoilt::contains), upTo, planned);
    }

    private Length end(int index) {
        return new Length(drawing.pieces().get(index).outline().box().maxX());
    }

    private List<PlacedPiece> pieces(boolean[] cut, IntPredicate which) {
        return IntStream.range(0, cut.length)
                .filter(i -> cut[i] && which.test(drawing.numbers().get(i)))
                .mapToObj(drawing.pieces()::get)
                .toList();
    }

    private void refuseUnknown(int number) throws JobException {
        long count = drawing.numbers().stream().filter(one -> one == number).count();
        if (count == 0) {
            int last = drawing.numbers().stream().mapToInt(one -> one).max().orElse(0);
            throw new JobException("%s has no number %s; they go up to %s."
                    .formatted(said.marker(), Integer.toString(number), Integer.toString(last)));
        }
        if (count > 1) {
            throw new JobException("%s has the number %s on more than one piece, copied maybe; give each its own."
                    .formatted(said.marker(), Integer.toString(number)));
        }
    }
}
