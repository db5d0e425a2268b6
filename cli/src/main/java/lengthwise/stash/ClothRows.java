package lengthwise.stash;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import lengthwise.job.JobFabric.Corner;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.job.JobFabric.There;
import lengthwise.model.Direction;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.Length;
import lengthwise.model.Shrinkage;
import org.jspecify.annotations.Nullable;

/** Cloths as rows of the database. */
final class ClothRows {
    private static final String COLUMNS = "id, name, fabric, colour, width, length, edge_near, edge_far, direction,"
            + " shrinks_lengthwise, shrinks_crosswise, shrinkage_handled, price, price_per, print_from_start,"
            + " print_from_selvedge, run, gone";

    /** Millionths: of the currency, and of a length that shrinks. */
    private static final int DECIMALS = 6;

    private final StashFile database;

    ClothRows(StashFile database) {
        this.database = database;
    }

    /**
     * A cloth with its number.
     *
     * @param run that has it, reserved or spent
     * @param gone where it is not there any more, what for
     */
    record Numbered(
            long id,
            StashCloth cloth,
            @Nullable Long run,
            @Nullable String gone) {}

    /** Returns the rows for which a condition holds, in the order of their names. */
    List<Numbered> where(String condition, @Nullable Object... values) throws SQLException {
        List<Numbered> rows = database.query(
                "SELECT " + COLUMNS + " FROM cloth WHERE " + condition + " ORDER BY name, id", ClothRows::row, values);
        for (int i = 0; i < rows.size(); i++) {
            rows.set(i, withPlaces(rows.get(i)));
        }
        return rows;
    }

    private static Numbered row(ResultSet row) throws SQLException {
        Optional<Long> near = number(row, "edge_near");
        Optional<Long> shrinks = number(row, "shrinks_lengthwise");
        Optional<Long> price = number(row, "price");
        Optional<Long> print = number(row, "print_from_start");
        StashCloth cloth = new StashCloth(
                row.getString("name"),
                row.getString("fabric"),
                Optional.ofNullable(row.getString("colour")),
                new Length(row.getLong("width")),
                new There(new Length(row.getLong("length")), List.of()),
                near.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new UnusableEdge(new Length(near.get()), new Length(row.getLong("edge_far")))),
                Optional.ofNullable(row.getString("direction")).map(Direction::valueOf),
                shrinks.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Shrinkage(
                                fromMillionths(shrinks.get()),
                                fromMillionths(row.getLong("shrinks_crosswise")),
                                Shrinkage.Handling.valueOf(row.getString("shrinkage_handled")))),
                price.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Price(fromMillionths(price.get()), new Length(row.getLong("price_per")))),
                print.isEmpty()
                        ? Optional.empty()
                        : Optional.of(
                                new Corner(new Length(print.get()), new Length(row.getLong("print_from_selvedge")))),
                List.of());
        return new Numbered(row.getLong("id"), cloth, number(row, "run").orElse(null), row.getString("gone"));
    }

    private static Optional<Long> number(ResultSet row, String column) throws SQLException {
        long value = row.getLong(column);
        return row.wasNull() ? Optional.empty() : Optional.of(value);
    }

    private Numbered withPlaces(Numbered row) throws SQLException {
        List<Corner> corners = database.query(
                "SELECT from_start, from_selvedge FROM corner WHERE cloth = ? ORDER BY place",
                at -> new Corner(new Length(at.getLong(1)), new Length(at.getLong(2))),
                row.id());
        List<Flaw> flaws = database.query(
                "SELECT from_start, length, from_selvedge, width FROM flaw WHERE cloth = ? ORDER BY place",
                at -> new Flaw(
                        new Length(at.getLong(1)),
                        new Length(at.getLong(2)),
                        new Length(at.getLong(3)),
                        new Length(at.getLong(4))),
                row.id());
        StashCloth bare = row.cloth();
        StashCloth whole = new StashCloth(
                bare.name(),
                bare.fabric(),
                bare.colour(),
                bare.width(),
                new There(bare.there().length(), corners),
                bare.edge(),
                bare.direction(),
                bare.shrinkage(),
                bare.price(),
                bare.print(),
                flaws);
        return new Numbered(row.id(), whole, row.run(), row.gone());
    }

    /** Adds a cloth; {@code leftOf} is the one that it was a part of. */
    void add(StashCloth cloth, @Nullable Long leftOf) throws SQLException {
        long id = database.insert(
                "INSERT INTO cloth (left_of, name, fabric, colour, width, length, edge_near, edge_far, direction,"
                        + " shrinks_lengthwise, shrinks_crosswise, shrinkage_handled, price, price_per,"
                        + " print_from_start, print_from_selvedge) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
                leftOf,
                cloth.name(),
                cloth.fabric(),
                cloth.colour().orElse(null),
                cloth.width().micrometres(),
                cloth.there().length().micrometres(),
                cloth.edge().map(edge -> edge.near().micrometres()).orElse(null),
                cloth.edge().map(edge -> edge.far().micrometres()).orElse(null),
                cloth.direction().map(Enum::name).orElse(null),
                cloth.shrinkage().map(s -> toMillionths(s.lengthwise())).orElse(null),
                cloth.shrinkage().map(s -> toMillionths(s.crosswise())).orElse(null),
                cloth.shrinkage().map(s -> s.handled().name()).orElse(null),
                cloth.price().map(price -> toMillionths(price.amount())).orElse(null),
                cloth.price().map(price -> price.per().micrometres()).orElse(null),
                cloth.print().map(point -> point.fromStart().micrometres()).orElse(null),
                cloth.print().map(point -> point.fromSelvedge().micrometres()).orElse(null));
        for (int i = 0; i < cloth.there().corners().size(); i++) {
            Corner corner = cloth.there().corners().get(i);
            database.update(
                    "INSERT INTO corner VALUES (?,?,?,?)",
                    id,
                    i,
                    corner.fromStart().micrometres(),
                    corner.fromSelvedge().micrometres());
        }
        for (int i = 0; i < cloth.flaws().size(); i++) {
            Flaw flaw = cloth.flaws().get(i);
            database.update(
                    "INSERT INTO flaw VALUES (?,?,?,?,?,?)",
                    id,
                    i,
                    flaw.fromStart().micrometres(),
                    flaw.length().micrometres(),
                    flaw.fromSelvedge().micrometres(),
                    flaw.width().micrometres());
        }
    }

    private static double fromMillionths(long millionths) {
        return BigDecimal.valueOf(millionths, DECIMALS).doubleValue();
    }

    private static long toMillionths(double value) {
        return BigDecimal.valueOf(value)
                .movePointRight(DECIMALS)
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact();
    }
}
