package lengthwise.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.FabricRun.Assumption;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Bundle;
import lengthwise.model.Congruence;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import lengthwise.model.MatchPoint.Partner;
import lengthwise.model.Piece;
import lengthwise.model.SharedOrder;
import lengthwise.model.Size;
import lengthwise.model.Spread;
import lengthwise.model.Unfolding;

/**
 * A job brought together with its drawings: one marker order for each fabric.
 *
 * @param warnings sentences for the maker
 * @param edges how long the edges are that lengths go by
 * @param shared the orders that are for several of the fabrics together, each of which has the whole of it
 */
public record Orders(List<FabricOrder> fabrics, List<String> warnings, SewnEdges edges, List<SharedOrder> shared) {
    /** Pieces lie this far apart where the job does not say: scissors and rotary cutters, common practice, no source. */
    private static final Length GAP = Length.ofMillimetres(3);

    public Orders {
        fabrics = List.copyOf(fabrics);
        warnings = List.copyOf(warnings);
        shared = List.copyOf(shared);
    }

    /** One fabric for each purpose. */
    public Orders(List<FabricOrder> fabrics, List<String> warnings, SewnEdges edges) {
        this(fabrics, warnings, edges, List.of());
    }

    /** Returns the same orders with what each fabric was given of them. */
    public Orders withFabrics(List<FabricOrder> others) {
        return new Orders(others, warnings, edges, shared);
    }

    /** Returns the order that a fabric has together with others. */
    public Optional<SharedOrder> sharedBy(String fabric) {
        return shared.stream().filter(order -> order.on(fabric).isPresent()).findFirst();
    }

    /**
     * Refuses orders that are shared by several pieces of cloth.
     *
     * @param what cannot deal with them, at the beginning of a sentence
     * @throws JobException in a sentence, without a place
     */
    public void refuseShared(String what) throws JobException {
        if (!shared.isEmpty()) {
            throw new JobException(
                    "%s takes one fabric for each purpose, and %s are all for %s; lengthwise marker lays them together, or leave all but one out."
                            .formatted(
                                    what,
                                    shared.get(0).names().collect(Collectors.joining(", ")),
                                    shared.get(0).purpose()));
        }
    }

    /** Returns the same orders with other warnings. */
    public Orders withWarnings(List<String> other) {
        return new Orders(fabrics, other, edges, shared);
    }

    /** An order with one rule of its fabric left out: what that rule costs can be found. */
    public record Freer(String rule, MarkerOrder order) {}

    /**
     * What one fabric has to give, and what was assumed about it.
     *
     * @param comparison the same with the cloth laid another way, where the job asks what that would take
     * @param isPart whether it is a part of an order, whose rest lies on other cloth: what a rule costs is not asked then, since
     *     without it the order would be shared out otherwise
     */
    public record FabricOrder(
            MarkerOrder order, List<Assumption> assumptions, Optional<MarkerOrder> comparison, boolean isPart) {
        /** A whole order. */
        FabricOrder(MarkerOrder order, List<Assumption> assumptions, Optional<MarkerOrder> comparison) {
            this(order, assumptions, comparison, /* isPart= */ false);
        }

        /** Returns what this fabric was given of an order. */
        public FabricOrder part(MarkerOrder given) {
            return new FabricOrder(given, assumptions, Optional.empty(), /* isPart= */ true);
        }

        /** Returns the same order with one rule of its fabric left out, for each that binds a piece. */
        public List<Freer> freer() {
            Fabric fabric = order.fabric();
            if (isPart || !order.cutAlready().isNone()) {
                return List.of();
            }
            List<Freer> freer = new ArrayList<>();
            if (fabric.direction() != Direction.EITHER_WAY
                    && anyPiece(piece -> piece.up().isPresent())) {
                freer.add(new Freer(
                        fabric.direction() == Direction.ONE_WAY ? "One-way" : "One-way per garment",
                        order.withFabric(fabric.withDirection(Direction.EITHER_WAY))));
            }
            boolean minds = !order.motifs().isEmpty();
            if (!order.matchPoints().isEmpty()) {
                freer.add(new Freer(
                        minds ? "Matching the print and minding its motifs" : "Matching the print",
                        order.withFabric(fabric.withoutRepeat())));
            } else if (minds) {
                freer.add(new Freer("Minding the motifs", lying(Lying::withoutMotifs)));
            }
            if (order.lying().values().stream().anyMatch(lying -> lying.zone().isPresent())) {
                freer.add(new Freer("Keeping to the zones", lying(Lying::withoutZone)));
            }
            if (fabric.shade().isPresent()) {
                freer.add(new Freer("Keeping to one shade", order.withFabric(fabric.withShade(Optional.empty()))));
            }
            if (!fabric.flaws().isEmpty()) {
                freer.add(new Freer("Keeping off the flaws", order.withFabric(fabric.withoutFlaws())));
            }
            return List.copyOf(freer);
        }

        /** Returns the same order with its pieces laid another way than was asked for, to compare. */
        public List<Instead> instead() {
            return !isPart && order.cutAlready().isNone() ? Instead.of(order) : List.of();
        }

        private MarkerOrder lying(UnaryOperator<Lying> freer) {
            Map<String, Lying> lying = new LinkedHashMap<>();
            order.lying().forEach((piece, how) -> lying.put(piece, freer.apply(how)));
            return order.withLying(lying);
        }

        private boolean anyPiece(Predicate<Piece> has) {
            return order.bundles().stream()
                    .flatMap(bundle -> bundle.pieces().stream())
                    .map(CutPiece::piece)
                    .anyMatch(has);
        }

        /**
         * Returns the order as it would be if the fabric were one-way, where that was assumed away and every piece knows
         * its up end: what the other choice costs can then be found.
         */
        public Optional<MarkerOrder> otherwise() {
            boolean assumed = assumptions.stream().anyMatch(one -> one.text().equals(FabricMaking.EITHER_WAY_ASSUMED));
            boolean known = order.bundles().stream()
                    .flatMap(bundle -> bundle.pieces().stream())
                    .map(CutPiece::piece)
                    .allMatch(piece -> piece.strip() || piece.up().isPresent());
            return assumed && known && !isPart && order.cutAlready().isNone()
                    ? Optional.of(order.withFabric(order.fabric().withDirection(Direction.ONE_WAY)))
                    : Optional.empty();
        }

        /** Returns this with what the other choice costs, a sentence, in place of the general one. */
        public FabricOrder withOtherChoice(String cost) {
            return new FabricOrder(
                    order,
                    assumptions.stream()
                            .map(one -> one.text().equals(FabricMaking.EITHER_WAY_ASSUMED)
                                    ? new Assumption(one.text(), cost)
                                    : one)
                            .toList(),
                    comparison,
                    isPart);
        }
    }

    /** Words a complaint about a key of the job, such as {@code pieces.cup}, with its place where that is known. */
    @FunctionalInterface
    interface Complaints {
        JobException at(String key, String what);
    }

    /**
     * Reads the drawings of a job file and works out its orders.
     *
     * @throws JobException with one line for the maker: the place, and what is wrong, or the question that she has to
     *     answer
     */
    public static Orders of(JobFile file) throws JobException {
        return of(file.job(), file.folder(), file::error, file.warnings());
    }

    /**
     * Works out the orders of a job that stands in no file.
     *
     * @param folder what the drawings' paths are relative to
     * @throws JobException likewise, without a place
     */
    public static Orders of(Job job, Path folder) throws JobException {
        return of(job, folder, (key, what) -> new JobException(what), List.of());
    }

    /**
     * Returns the order of a fabric for the same fabric in a width on offer; every piece of it lies by the same rules.
     *
     * @param said the fabric of the job
     * @throws JobException in a sentence, without a place, if the cloth is too narrow for what the job says of it
     */
    public static MarkerOrder inWidth(Job job, FabricOrder fabric, JobFabric said, JobBuying.Offer offer)
            throws JobException {
        JobFabric offered = said.at(offer);
        Fabric cloth = FabricMaking.of(offered, new Assumptions());
        if (cloth.cuttableWidth().micrometres() <= 0) {
            throw new JobException("Nothing is left to cut from between its selvedges.");
        }
        if (said.reach().compareTo(offer.width()) > 0) {
            throw new JobException("The job names a place on it that lies %s from the near selvedge."
                    .formatted(LengthText.print(said.reach(), LengthUnit.CM)));
        }
        return LyingMaking.tied(fabric.order().withFabric(cloth), job, offered, (key, what) -> new JobException(what));
    }

    private static Orders of(Job job, Path folder, Complaints complaints, List<String> warnings) throws JobException {
        List<String> allWarnings = new ArrayList<>(warnings);
        PatternBook book = PatternBook.read(job, folder, complaints, allWarnings);
        return new Making(job, book, folder, complaints, allWarnings).orders();
    }

    /** One making of orders; its maps fill as it goes. */
    private static final class Making {
        private final Job job;
        private final PatternBook book;
        private final Path folder;
        private final Complaints complaints;
        private final List<String> warnings;
        private final List<String> roles;
        private final List<String> roleWords;
        private final Map<String, Map<String, CutPiece>> made = new LinkedHashMap<>();

        Making(Job job, PatternBook book, Path folder, Complaints complaints, List<String> warnings) {
            this.job = job;
            this.book = book;
            this.folder = folder;
            this.complaints = complaints;
            this.warnings = warnings;
            this.roles = job.fabrics().stream().map(JobFabric::role).distinct().toList();
            this.roleWords = Stream.concat(roles.stream(), Lettering.ROLE_WORDS.stream())
                    .distinct()
                    .toList();
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
                List<Bundle> bundles = bundles(said, fabric, assumed);
                if (bundles.stream().allMatch(bundle -> bundle.pieces().isEmpty())) {
                    warnings.add("Nothing is cut from %s (%s): it gets no marker.".formatted(said.name(), said.role()));
                } else {
                    MarkerOrder order = LyingMaking.tied(
                            new MarkerOrder(fabric, gap, ownGaps(), bundles)
                                    .withFillers(fillers(said, fabric, assumed)),
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
                        "fabrics." + said.name() + ".repeat.image",
                        "%s: %s".formatted(image.get(), unusable.getMessage()));
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
                    .collect(Collectors.toMap(
                            JobPiece::name, piece -> piece.gap().orElseThrow()));
        }

        private List<Bundle> bundles(JobFabric said, Fabric fabric, Assumptions assumed) throws JobException {
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
        private List<Bundle> fillers(JobFabric said, Fabric fabric, Assumptions assumed) throws JobException {
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
                                            piece.name(),
                                            book.pages(piece.name()).size()));
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
            return page.leftAndRight()
                            && request.count() == 1
                            && request.manner().isEmpty()
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
                PatternBook.Page page,
                CutRequest request,
                JobFabric said,
                Fabric fabric,
                Size size,
                Assumptions assumed)
                throws JobException {
            String key = String.join("\n", page.piece().name(), size.name(), fabric.name(), request.toString());
            Map<String, CutPiece> ofFabric = made.computeIfAbsent(fabric.name(), name -> new LinkedHashMap<>());
            CutPiece before = ofFabric.get(key);
            if (before != null) {
                return before;
            }
            Cut cut = cut(page, request);
            Optional<JobPiece> saidPiece = job.piece(page.piece().name());
            boolean wrongSideOut =
                    said.rightSide().isPresent() && said.rightSide().get() == JobFabric.RightSide.BODY;
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
}
