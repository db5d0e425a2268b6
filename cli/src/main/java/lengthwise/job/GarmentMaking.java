package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Bundle;
import lengthwise.model.Congruence;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.Piece;
import lengthwise.model.Size;
import lengthwise.model.Unfolding;

/**
 * What is cut from a fabric for each garment of a job and for each filler: pieces as they are drawn, as often as the job says or
 * the drawing is lettered, and strips.
 */
final class GarmentMaking {
    private final Job job;
    private final PatternBook book;
    private final Orders.Complaints complaints;
    private final List<String> warnings;
    private final List<String> roles;
    private final List<String> roleWords;
    /** What was made of each piece already, by fabric. */
    private final Map<String, Map<String, CutPiece>> made = new LinkedHashMap<>();

    /** @param warnings grows by what is found out */
    GarmentMaking(Job job, PatternBook book, Orders.Complaints complaints, List<String> warnings) {
        this.job = job;
        this.book = book;
        this.complaints = complaints;
        this.warnings = warnings;
        this.roles = job.fabrics().stream().map(JobFabric::role).distinct().toList();
        this.roleWords = Stream.concat(roles.stream(), Lettering.ROLE_WORDS.stream())
                .distinct()
                .toList();
    }

    List<Bundle> bundles(JobFabric said, Fabric fabric, Assumptions assumed) throws JobException {
        List<Bundle> bundles = new ArrayList<>();
        int number = 1;
        for (OrderLine line : job.order()) {
            List<CutPiece> pieces = pieces(said, fabric, line, assumed);
            for (int i = 0; i < line.make(); i++) {
                bundles.add(new Bundle(
                        new Garment(number++, line.size(), line.customer().orElse("")), pieces));
            }
        }
        return bundles;
    }

    private List<CutPiece> pieces(JobFabric said, Fabric fabric, OrderLine line, Assumptions assumed)
            throws JobException {
        List<CutPiece> pieces = new ArrayList<>();
        for (String name : book.names()) {
            if (isFiller(name)) {
                continue;
            }
            try {
                PatternBook.Page page = book.page(name, line.size());
                for (CutRequest request : requests(name, page, said, assumed)) {
                    pieces.add(drawn(page, request, said, fabric, line.size(), assumed));
                }
            } catch (JobException question) {
                throw complaints.at("pieces." + name, String.valueOf(question.getMessage()));
            }
        }
        for (JobPiece piece : job.pieces()) {
            for (CutRequest request : piece.cut()) {
                if (piece.strip().isPresent()
                        && piece.filler().isEmpty()
                        && request.role().equals(said.role())) {
                    try {
                        pieces.add(strip(piece, request, fabric, line, assumed));
                    } catch (JobException question) {
                        throw complaints.at("pieces." + piece.name(), String.valueOf(question.getMessage()));
                    }
                }
            }
        }
        return pieces;
    }

    private boolean isFiller(String name) {
        return job.piece(name).flatMap(JobPiece::filler).isPresent();
    }

    /** Returns the units of the fillers, numbered on after the garments, by the same numbers in every fabric. */
    List<Bundle> fillers(JobFabric said, Fabric fabric, Assumptions assumed) throws JobException {
        List<Bundle> fillers = new ArrayList<>();
        int number = 1 + job.order().stream().mapToInt(OrderLine::make).sum();
        for (JobPiece piece : job.pieces()) {
            List<CutPiece> unit = piece.filler().isPresent() ? fillerUnit(piece, said, fabric, assumed) : List.of();
            for (int i = 0; i < piece.filler().orElse(0); i++, number++) {
                if (!unit.isEmpty()) {
                    fillers.add(new Bundle(new Garment(number, Size.ONE), unit));
                }
            }
        }
        return fillers;
    }

    private List<CutPiece> fillerUnit(JobPiece piece, JobFabric said, Fabric fabric, Assumptions assumed)
            throws JobException {
        try {
            List<CutPiece> unit = new ArrayList<>();
            if (piece.strip().isPresent()) {
                OrderLine anyone = new OrderLine(Size.ONE, 1, List.of());
                for (CutRequest request : piece.cut()) {
                    if (request.role().equals(said.role())) {
                        unit.add(strip(piece, request, fabric, anyone, assumed));
                    }
                }
                return unit;
            }
            if (book.pages(piece.name()).size() > 1) {
                throw new JobException(
                        "%s is a filler, which belongs to no size, and is drawn in %d sizes; draw it in one"
                                .formatted(
                                        piece.name(), book.pages(piece.name()).size()));
            }
            PatternBook.Page page = book.page(piece.name(), Size.ONE);
            for (CutRequest request : requests(piece.name(), page, said, assumed)) {
                unit.add(drawn(page, request, said, fabric, Size.ONE, assumed));
            }
            return unit;
        } catch (JobException question) {
            throw complaints.at("pieces." + piece.name(), String.valueOf(question.getMessage()));
        }
    }

    /** Returns what is cut of a drawn piece from this fabric: as the job says, else as it is lettered, else one. */
    private List<CutRequest> requests(String name, PatternBook.Page page, JobFabric fabric, Assumptions assumed)
            throws JobException {
        List<CutRequest> said = job.piece(name).map(JobPiece::cut).orElse(List.of());
        if (!said.isEmpty()) {
            return said.stream()
                    .filter(request -> request.role().equals(fabric.role()))
                    .toList();
        }
        List<CutRequest> lettered = new ArrayList<>();
        List<Lettering.LetteredCut> cuts = Lettering.cuts(page.piece().lettering(), roleWords);
        for (Lettering.LetteredCut cut : cuts) {
            String role = role(name, cut.role());
            if (!roles.contains(role)) {
                warnings.add("%s is lettered to be cut from %s, and the job has no fabric for it: none is cut."
                        .formatted(name, role));
            }
            if (role.equals(fabric.role())) {
                lettered.add(asDrawn(page, new CutRequest(role, cut.count(), cut.manner())));
            }
        }
        if (lettered.size() > 1) {
            throw new JobException(
                    "How often is %s cut from %s? It is lettered %s: say under pieces %s: {cut: {%s: …}}."
                            .formatted(
                                    name,
                                    fabric.role(),
                                    lettered.stream().map(CutRequest::words).collect(Collectors.joining(" and ")),
                                    name,
                                    fabric.role()));
        }
        if (!cuts.isEmpty()) {
            return lettered;
        }
        String role = role(name, Optional.empty());
        assumed.note(
                page.leftAndRight()
                        ? "%s is drawn left and right, so a pair is cut for each garment.".formatted(name)
                        : "%s is cut once for each garment.".formatted(name));
        return role.equals(fabric.role())
                ? List.of(asDrawn(page, new CutRequest(role, 1, Optional.empty())))
                : List.of();
    }

    /** "Cut 1" on a left and on a right piece drawn side by side is one pair. */
    private static CutRequest asDrawn(PatternBook.Page page, CutRequest request) {
        return page.leftAndRight() && request.count() == 1 && request.manner().isEmpty()
                ? new CutRequest(request.role(), 1, Optional.of(Cut.Manner.PAIR))
                : request;
    }

    private String role(String piece, Optional<String> lettered) throws JobException {
        if (lettered.isPresent() || roles.size() == 1) {
            return lettered.orElse(roles.get(0));
        }
        throw new JobException("From which fabric is %s cut? The job has %s: say under pieces %s: {cut: {%s: …}}."
                .formatted(piece, String.join(", ", roles), piece, roles.get(0)));
    }

    private CutPiece drawn(
            PatternBook.Page page, CutRequest request, JobFabric said, Fabric fabric, Size size, Assumptions assumed)
            throws JobException {
        String key = String.join("\n", page.piece().name(), size.name(), fabric.name(), request.toString());
        Map<String, CutPiece> ofFabric = made.computeIfAbsent(fabric.name(), name -> new LinkedHashMap<>());
        CutPiece before = ofFabric.get(key);
        if (before != null) {
            return before;
        }
        Cut cut = cut(page, request);
        Optional<JobPiece> saidPiece = job.piece(page.piece().name());
        boolean wrongSideOut = said.rightSide().isPresent() && said.rightSide().get() == JobFabric.RightSide.BODY;
        Piece piece = PieceMaking.of(
                page.piece(),
                page.drawing(),
                saidPiece,
                fabric,
                size,
                cut.manner() == Cut.Manner.ON_FOLD,
                wrongSideOut,
                assumed);
        refuseUnopenable(piece, page);
        boolean opened = cut.manner() == Cut.Manner.ON_FOLD && piece.turning() == Piece.Turning.ON_BIAS;
        if (opened) {
            cut = new Cut(cut.count(), Cut.Manner.ALIKE);
        }
        Optional<Hand> hand = saidPiece.flatMap(JobPiece::drawn);
        if (hand.isEmpty() && cut.manner() == Cut.Manner.PAIR) {
            assumed.note(
                    "Pieces cut in pairs are drawn as worn on the right side of the body, right side of the cloth up.");
        }
        Hand drawnHand = hand.orElse(cut.manner() == Cut.Manner.PAIR ? Hand.RIGHT : Hand.NONE);
        CutPiece result = new CutPiece(piece, cut, drawnHand);
        ofFabric.put(key, result);
        return result;
    }

    private static void refuseUnopenable(Piece piece, PatternBook.Page page) throws JobException {
        try {
            Unfolding.whole(piece);
        } catch (IllegalArgumentException cannotOpen) {
            throw new JobException(page.drawing().file() + ": " + cannotOpen.getMessage());
        }
    }

    private Cut cut(PatternBook.Page page, CutRequest request) throws JobException {
        if (request.manner().isEmpty() && page.piece().foldEdge().isPresent()) {
            return new Cut(request.count(), Cut.Manner.ON_FOLD);
        }
        return request.cut(isSymmetric(page.piece().outline()))
                .orElseThrow(() -> new JobException(
                        "%s is cut %d from %s: is that \"%d alike\" or \"%s\"? Its left and right differ, so say which under pieces."
                                .formatted(
                                        page.piece().name(),
                                        request.count(),
                                        request.role(),
                                        request.count(),
                                        pairs(request.count()))));
    }

    private static String pairs(int count) {
        return count % 2 == 1 ? count + " pairs" : count == 2 ? "1 pair" : count / 2 + " pairs";
    }

    private static boolean isSymmetric(Outline drawn) {
        Outline mirrored = new Orientation(true, QuarterTurn.NONE).apply(drawn);
        for (int quarters = 0; quarters < 4; quarters++) {
            if (Congruence.byTranslation(drawn, new Orientation(false, QuarterTurn.of(quarters)).apply(mirrored))) {
                return true;
            }
        }
        return false;
    }

    private CutPiece strip(JobPiece said, CutRequest request, Fabric fabric, OrderLine line, Assumptions assumed)
            throws JobException {
        JobStrip strip = said.strip().orElseThrow();
        Length length = strip.length().lengthFor(line);
        Cut cut = request.cut(true).orElseThrow();
        Piece piece = StripMaking.of(said.name(), strip, length, line.size(), cut.manner(), assumed);
        Cut counted = cut.manner() == Cut.Manner.PAIR
                ? new Cut(cut.count() * 2, Cut.Manner.ALIKE)
                : StripMaking.laid(cut, piece);
        return new CutPiece(StripMaking.scaled(piece, fabric), counted, Hand.NONE);
    }
}
