package lengthwise.cli;

import java.util.List;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.ScaleStatement;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.solver.StripSearch;
import lengthwise.svg.SvgPattern;

/**
 * Loads the classes that read drawings and lay pieces on another processor while the job is read, by reading a drawing
 * and laying pieces that nobody asked for. It saves time on the way to the first marker and touches no result.
 */
final class WarmUp {
    private static final String DRAWING = """
            <svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"
                width="300mm" height="200mm" viewBox="0 0 300 200">
              <style>.cut {fill: none; stroke-width: 0.3} text {font-size: 4px; font-weight: bold}</style>
              <defs><marker id="head" markerWidth="7" markerHeight="5" refX="7" refY="2.5" orient="auto">
                <path d="M0 0 L7 2.5 L0 5 Z"/></marker></defs>
              <rect id="box" x="200" y="20" width="50" height="50"/>
              <g id="wing" transform="translate(1 2)" stroke="#000">
                <path class="cut" d="M10 60 C30 70 70 70 90 60 L110 150 Q50 170 15 140 Z"/>
                <path class="sew" stroke-dasharray="3 1" d="M16 66 C30 74 70 74 86 66 L102 144 L20 134 Z"/>
                <path class="notch" d="M50 67.5 L50 63.5"/>
                <circle class="drill" cx="60" cy="100" r="1.5"/>
                <path class="grain" marker-end="url(#head)" d="M60 130 L60 80"/>
                <text x="30" y="90">wing, cut 1 pair</text>
              </g>
            </svg>
            """;

    private WarmUp() {}

    static void start() {
        Thread thread = new Thread(WarmUp::readAndLay, "warm-up");
        thread.setDaemon(true);
        thread.start();
    }

    private static void readAndLay() {
        try {
            List<DrawnPiece> pieces =
                    SvgPattern.read("warm-up", DRAWING, ScaleStatement.NONE).pieces();
            layTwice(pieces.get(0).outline());
        } catch (DrawingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void layTwice(Outline outline) {
        Demand demand = new Demand(
                outline,
                new PlacementDomain(List.of(Orientation.AS_DRAWN), new PlacementDomain.Positions.Free()),
                1_000);
        StripSearch.solve(
                new LayoutTask(outline.box().height() + 100_000, List.of(demand, demand), List.of(), List.of()),
                Search.of(StopRule.iterations(2), 1, 1));
    }
}
