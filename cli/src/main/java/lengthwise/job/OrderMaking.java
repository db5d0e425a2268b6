package lengthwise.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lengthwise.model.Bundle;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.MatchPoint.Partner;
import lengthwise.model.Spread;

/** Brings a job together with its drawings, fabric by fabric. */
final class OrderMaking {
    /** Pieces lie this far apart where the job does not say: scissors and rotary cutters, common practice, no source. */
    private static final Length GAP = Length.ofMillimetres(3);

    private final Job job;
    private final PatternBook book;
    private final Path folder;
    private final Orders.Complaints complaints;
    private final List<String> warnings;
    private final GarmentMaking garments;

    /** @param warnings grows by what is found out */
    OrderMaking(Job job, PatternBook book, Path folder, Orders.Complaints complaints, List<String> warnings) {
        this.job = job;
        this.book = book;
        this.folder = folder;
        this.complaints = complaints;
        this.warnings = warnings;
        this.garments = new GarmentMaking(job, book, complaints, warnings);
    }

    Orders orders() throws JobException {
        refuseColours();
        refuseUnknownPieces();
        LyingMaking.refuseUntied(job, complaints);
        SharedCloth sharedCloth = new SharedCloth(job, complaints);
        sharedCloth.refuseUntied();
        warnings.addAll(sharedCloth.differences());
        List<FabricOrder> orders = new ArrayList<>();
        for (JobFabric said : job.fabrics()) {
            Assumptions assumed = new Assumptions();
            Fabric fabric = shown(FabricMaking.of(said, assumed), said);
            refuseNoWidth(said, fabric);
            warnOfSlidingPile(fabric);
            Length gap = job.gap().orElseGet(() -> {
                String tool = job.cuttingTool()
                        .map(with -> ", as is usual for cutting with " + with.called())
                        .orElse("");
                Length usual = job.cuttingTool().map(CuttingTool::gap).orElse(GAP);
                assumed.note(
                        "Pieces lie %s apart%s.".formatted(LengthText.print(usual, LengthUnit.MM), tool),
                        "With gap: 0 mm they may touch.");
                return usual;
            });
            List<Bundle> bundles = garments.bundles(said, fabric, assumed);
            if (bundles.stream().allMatch(bundle -> bundle.pieces().isEmpty())) {
                warnings.add("Nothing is cut from %s (%s): it gets no marker.".formatted(said.name(), said.role()));
            } else {
                MarkerOrder order = LyingMaking.tied(
                        new MarkerOrder(fabric, gap, ownGaps(), bundles)
                                .withFillers(garments.fillers(said, fabric, assumed)),
                        job,
                        said,
                        complaints);
                Optional<MarkerOrder> comparison = comparison(order, said);
                orders.add(new FabricOrder(goingOn(order, said), assumed.list(), comparison));
            }
        }
        if (orders.isEmpty()) {
            throw new JobException("No piece is cut from any fabric: say under pieces what is cut from what.");
        }
        SewnEdges edges = SewnEdges.of(job, book, complaints);
        warnings.addAll(edges.warnings());
        return new Orders(orders, warnings.stream().distinct().toList(), edges, sharedCloth.orders(orders));
    }

    /** Returns the order with its cloth laid another way; what is tied to a selvedge lies elsewhere in that marker. */
    private Optional<MarkerOrder> comparison(MarkerOrder order, JobFabric said) throws JobException {
        if (said.spread().compare().isEmpty()) {
            return Optional.empty();
        }
        JobFabric other = said.withForm(said.spread().compare().get());
        Fabric fabric = FabricMaking.of(other, new Assumptions());
        refuseNoWidth(said, fabric);
        return Optional.of(LyingMaking.tied(order.withFabric(fabric), job, other, complaints));
    }

    /** Returns the fabric with the picture of its print. */
    private Fabric shown(Fabric fabric, JobFabric said) throws JobException {
        Optional<String> image = said.repeat().flatMap(JobFabric.PrintRepeat::image);
        if (image.isEmpty()) {
            return fabric;
        }
        try {
            return fabric.shownAs(PrintPictures.read(folder.resolve(image.get())));
        } catch (JobException unusable) {
            throw complaints.at(
                    "fabrics." + said.name() + ".repeat.image", "%s: %s".formatted(image.get(), unusable.getMessage()));
        }
    }

    private void refuseColours() throws JobException {
        List<String> colours = job.order().stream()
                .flatMap(line -> line.colour().stream())
                .distinct()
                .toList();
        if (colours.size() > 1) {
            throw complaints.at(
                    "order",
                    "it has %d colours (%s), and a marker is cut from one cloth; plan shares them out over lays, or give each colour a job of its own"
                            .formatted(colours.size(), String.join(", ", colours)));
        }
    }

    private MarkerOrder goingOn(MarkerOrder order, JobFabric said) throws JobException {
        if (said.cutAlready().isEmpty()) {
            return order;
        }
        try {
            return CuttingRead.order(order, said.cutAlready().get(), folder);
        } catch (JobException unusable) {
            throw complaints.at("fabrics." + said.name() + ".already-cut", String.valueOf(unusable.getMessage()));
        }
    }

    /** Short pile face up in plies slips: Industrial Cutting of Textile Materials, pp. 34, 279. */
    private void warnOfSlidingPile(Fabric fabric) {
        if (fabric.pile().isPresent()
                && fabric.spread().form() == Spread.Form.PLIES_FACE_UP
                && fabric.spread().layers() > 1) {
            warnings.add("Plies of %s slide on each other's pile: lay them face to face (form: plies-face-to-face)."
                    .formatted(fabric.name()));
        }
    }

    private void refuseNoWidth(JobFabric said, Fabric fabric) throws JobException {
        if (fabric.cuttableWidth().micrometres() <= 0) {
            throw complaints.at(
                    "fabrics." + said.name() + ".width",
                    "nothing is left to cut from: %s is %s wide and its selvedges take %s and %s"
                            .formatted(
                                    said.name(),
                                    LengthText.print(said.width(), LengthUnit.CM),
                                    LengthText.print(fabric.unusableEdge().near(), LengthUnit.CM),
                                    LengthText.print(fabric.unusableEdge().far(), LengthUnit.CM)));
        }
    }

    private void refuseUnknownPieces() throws JobException {
        for (JobPiece piece : job.pieces()) {
            if (piece.strip().isEmpty() && book.pages(piece.name()).isEmpty()) {
                throw complaints.at(
                        "pieces." + piece.name(),
                        "%s is not in the drawings%s; they hold %s."
                                .formatted(
                                        piece.name(),
                                        Spelling.nearest(piece.name(), book.names())
                                                .map(near -> " (did you mean " + near + "?)")
                                                .orElse(""),
                                        String.join(", ", book.names())));
            }
            refuseUnknownMate(piece);
        }
    }

    private void refuseUnknownMate(JobPiece piece) throws JobException {
        Optional<String> mate = piece.matchPoint()
                .flatMap(JobPiece.MatchMark::to)
                .filter(Partner.Mate.class::isInstance)
                .map(to -> ((Partner.Mate) to).piece());
        if (mate.isPresent() && !book.names().contains(mate.get())) {
            throw complaints.at(
                    "pieces." + piece.name() + ".match-point.to",
                    "found %s; the drawings hold %s%s"
                            .formatted(
                                    Quote.of(mate.get()),
                                    String.join(", ", book.names()),
                                    Entry.meant(mate.get(), book.names())));
        }
    }

    private Map<String, Length> ownGaps() {
        return job.pieces().stream()
                .filter(piece -> piece.gap().isPresent())
                .collect(Collectors.toMap(JobPiece::name, piece -> piece.gap().orElseThrow()));
    }
}
