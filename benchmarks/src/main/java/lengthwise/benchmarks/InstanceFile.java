package lengthwise.benchmarks;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;

/**
 * Reads a strip packing instance: {@code {name, stripHeight, totalArea, items: [{demand, allowedRotationsDegrees,
 * polygon: [[x, y], …]}]}}, other keys are passed over.
 *
 * <p>The unit of the file becomes a whole number of micrometres, so that the strip is about 1.5 m high and every
 * coordinate lies on the grid. Where the coordinates have so many decimals that the strip would be higher than 20 m,
 * they are rounded to the nearest grid point of a strip of 1.5 m. Only quarter turns are used, also where a file allows
 * any angle ({@code null}).
 */
final class InstanceFile {
    private static final BigDecimal HEIGHT = BigDecimal.valueOf(1_500_000);
    private static final BigDecimal HIGHEST = BigDecimal.valueOf(20_000_000);

    private BigDecimal stripHeight = BigDecimal.ZERO;
    private BigDecimal totalArea = BigDecimal.ZERO;
    private final List<Item> items = new ArrayList<>();

    private InstanceFile() {}

    private record Vertex(BigDecimal x, BigDecimal y) {}

    private record Item(int demand, List<Orientation> orientations, List<Vertex> polygon) {}

    static Instance read(Path directory, String name) throws IOException {
        InstanceFile file = new InstanceFile();
        Path path = directory.resolve(name + ".json");
        try (JsonParser parser = new JsonFactory().createParser(path.toFile())) {
            file.read(parser);
        }
        if (file.items.isEmpty() || file.stripHeight.signum() <= 0) {
            throw new IOException(path + ": no items, or no stripHeight");
        }
        return file.instance(name);
    }

    private void read(JsonParser parser) throws IOException {
        parser.nextToken();
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String key = parser.currentName();
            parser.nextToken();
            switch (key) {
                case "stripHeight" -> stripHeight = parser.getDecimalValue();
                case "totalArea" -> totalArea = parser.getDecimalValue();
                case "items" -> {
                    while (parser.nextToken() != JsonToken.END_ARRAY) {
                        items.add(item(parser));
                    }
                }
                default -> parser.skipChildren();
            }
        }
    }

    private static Item item(JsonParser parser) throws IOException {
        int demand = 1;
        List<Orientation> orientations = quarterTurns();
        List<Vertex> polygon = new ArrayList<>();
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String key = parser.currentName();
            JsonToken value = parser.nextToken();
            switch (key) {
                case "demand" -> demand = parser.getIntValue();
                case "allowedRotationsDegrees" ->
                    orientations = value == JsonToken.VALUE_NULL ? quarterTurns() : orientations(parser);
                case "polygon" -> {
                    while (parser.nextToken() != JsonToken.END_ARRAY) {
                        parser.nextToken();
                        BigDecimal x = parser.getDecimalValue();
                        parser.nextToken();
                        polygon.add(new Vertex(x, parser.getDecimalValue()));
                        parser.nextToken();
                    }
                }
                default -> parser.skipChildren();
            }
        }
        return new Item(demand, orientations, polygon);
    }

    private static List<Orientation> orientations(JsonParser parser) throws IOException {
        List<Orientation> orientations = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            int degrees = parser.getDecimalValue().intValueExact();
            if (degrees % 90 != 0) {
                throw new IOException("only quarter turns are packed, not " + degrees + " degrees");
            }
            orientations.add(new Orientation(false, QuarterTurn.of(degrees / 90)));
        }
        return orientations;
    }

    private static List<Orientation> quarterTurns() {
        return List.of(
                Orientation.AS_DRAWN,
                new Orientation(false, QuarterTurn.QUARTER),
                new Orientation(false, QuarterTurn.HALF),
                new Orientation(false, QuarterTurn.THREE_QUARTERS));
    }

    private Instance instance(String name) {
        BigDecimal scale = scale();
        List<Demand> demands = new ArrayList<>();
        for (Item item : items) {
            List<Point> ring = item.polygon().stream()
                    .map(vertex -> new Point(onGrid(vertex.x(), scale), onGrid(vertex.y(), scale)))
                    .toList();
            PlacementDomain domain = new PlacementDomain(item.orientations(), new PlacementDomain.Positions.Free());
            Demand demand = new Demand(Outline.of(Ring.of(ring)), domain, 0);
            for (int i = 0; i < item.demand(); i++) {
                demands.add(demand);
            }
        }
        LayoutTask task = new LayoutTask(onGrid(stripHeight, scale), demands, List.of(), List.of());
        return new Instance(name, task, scale.longValueExact(), totalArea.doubleValue());
    }

    private static long onGrid(BigDecimal coordinate, BigDecimal scale) {
        return coordinate.multiply(scale).setScale(0, RoundingMode.HALF_EVEN).longValueExact();
    }

    /** Returns the multiple of the common denominator of all coordinates that makes the strip about 1.5 m high. */
    private BigDecimal scale() {
        BigInteger denominator = denominator(stripHeight);
        for (Item item : items) {
            for (Vertex vertex : item.polygon()) {
                denominator = leastCommonMultiple(denominator, denominator(vertex.x()));
                denominator = leastCommonMultiple(denominator, denominator(vertex.y()));
            }
        }
        BigDecimal finest = new BigDecimal(denominator);
        if (finest.multiply(stripHeight).compareTo(HIGHEST) > 0) {
            finest = BigDecimal.ONE;
        }
        BigDecimal times = HEIGHT.divide(finest.multiply(stripHeight), 0, RoundingMode.HALF_UP);
        return finest.multiply(times.max(BigDecimal.ONE));
    }

    private static BigInteger denominator(BigDecimal value) {
        BigDecimal plain = value.stripTrailingZeros();
        if (plain.scale() <= 0) {
            return BigInteger.ONE;
        }
        BigInteger power = BigInteger.TEN.pow(plain.scale());
        return power.divide(power.gcd(plain.unscaledValue()));
    }

    private static BigInteger leastCommonMultiple(BigInteger a, BigInteger b) {
        return a.divide(a.gcd(b)).multiply(b);
    }
}
