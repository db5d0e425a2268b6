package lengthwise.stash;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.job.LengthText;
import lengthwise.job.LengthUnit;
import lengthwise.model.Length;
import lengthwise.stash.ClothRows.Numbered;

/**
 * The cloth that is there. What is taken out of it stays in its book, so that it can be given back; a run draws on it by a
 * {@link Draw}.
 */
public final class Stash implements AutoCloseable {
    private final StashFile database;
    private final ClothRows rows;
    private final RunLocks runs;

    /** Whether a cloth can be had. */
    public enum State {
        FREE,
        /** A run that is alive has reserved it. */
        IN_USE,
        /** A run ended while it wrote its marker: whether the cloth is spent, only the maker can say. */
        UNCLEAR
    }

    /**
     * A cloth and whether it can be had.
     *
     * @param writesTo where it is unclear, the folder that its marker was being written to
     */
    public record Entry(StashCloth cloth, State state, Optional<String> writesTo) {}

    private Stash(StashFile database) {
        this.database = database;
        this.rows = new ClothRows(database);
        this.runs = new RunLocks(database.file());
    }

    /** Returns where the stash lies where nothing else is said: in the folder {@code .lengthwise} of the user's home. */
    public static Path usual() {
        return Path.of(System.getProperty("user.home", "."), ".lengthwise", "stash.db");
    }

    /**
     * Opens a stash that is there.
     *
     * @throws StashException if there is none, or the file is damaged, foreign or of a newer version
     */
    public static Stash open(Path file) throws StashException {
        return new Stash(StashFile.open(file));
    }

    /**
     * Opens a stash, and makes it where there is none.
     *
     * @throws StashException likewise
     */
    public static Stash openOrMake(Path file) throws StashException {
        return new Stash(StashFile.openOrMake(file));
    }

    /** Returns what is there, in the order of the names. */
    public List<Entry> entries() throws StashException {
        return database.read(() -> {
            List<Entry> entries = new ArrayList<>();
            for (Numbered row : rows.where("gone IS NULL")) {
                State state = state(row);
                entries.add(new Entry(row.cloth(), state, state == State.UNCLEAR ? writesTo(row) : Optional.empty()));
            }
            return entries;
        });
    }

    /** Puts cloths in, all of them or, where one has the name of one that is there, none. */
    public void add(List<StashCloth> cloths) throws StashException {
        database.write(() -> {
            for (StashCloth cloth : cloths) {
                if (!rows.where("gone IS NULL AND name = ?", cloth.name()).isEmpty()) {
                    throw new StashException(
                            "there is a cloth named %s in the stash already; give this one another name"
                                    .formatted(cloth.name()));
                }
                rows.add(cloth, null);
            }
            return cloths.size();
        });
    }

    /** Takes a cloth out and returns it. */
    public StashCloth take(String name) throws StashException {
        return database.write(() -> {
            Numbered row = mine(name);
            spend(row, List.of(), "taken out");
            return row.cloth();
        });
    }

    /** Cuts a length off the start of a straight cloth and returns what is left of it, if that is worth keeping. */
    public Optional<StashCloth> take(String name, Length length) throws StashException {
        return database.write(() -> {
            Numbered row = mine(name);
            StashCloth cloth = row.cloth();
            if (!cloth.isStraight()) {
                throw new StashException(
                        "%s is no straight piece, so no length is cut off it; take it whole".formatted(cloth.name()));
            }
            if (length.compareTo(cloth.there().length()) > 0) {
                throw new StashException("%s is %s long; %s cannot be cut off it"
                        .formatted(
                                cloth.name(),
                                LengthText.print(cloth.there().length(), LengthUnit.CM),
                                LengthText.print(length, LengthUnit.CM)));
            }
            Optional<StashCloth> rest = cloth.withoutStart(length);
            spend(row, rest.stream().toList(), "cut off");
            return rest;
        });
    }

    /** Returns a cloth that is there and in no run's hands; what is unclear is in the maker's. */
    private Numbered mine(String name) throws SQLException, StashException, IOException {
        Numbered row = there(name);
        if (state(row) == State.IN_USE) {
            throw new StashException("%s is reserved by a run that is still going; wait for it or end it"
                    .formatted(row.cloth().name()));
        }
        return row;
    }

    Numbered there(String name) throws SQLException, StashException {
        List<Numbered> found = rows.where("gone IS NULL AND name = ?", name);
        if (found.isEmpty()) {
            throw new StashException(notThere(name));
        }
        return found.get(0);
    }

    private String notThere(String name) throws SQLException {
        List<String> spent = rows.where("gone IS NOT NULL AND name = ?", name).stream()
                .map(Numbered::gone)
                .toList();
        if (!spent.isEmpty()) {
            return "%s is not in the stash any more (%s); if that cloth was not cut: lengthwise stash give-back %s"
                    .formatted(name, spent.get(spent.size() - 1), name);
        }
        List<String> names = rows.where("gone IS NULL").stream()
                .map(row -> row.cloth().name())
                .limit(20)
                .toList();
        return "there is no cloth named %s in the stash%s"
                .formatted(name, names.isEmpty() ? ", it is empty" : "; it has " + String.join(", ", names));
    }

    /**
     * Puts back what was taken: a cloth about which a run that ended left it unclear, or the one of this name that went
     * last, with all its parts that are still there.
     *
     * @return the cloth as it is there now
     */
    public StashCloth giveBack(String name) throws StashException {
        return database.write(() -> {
            List<Numbered> there = rows.where("gone IS NULL AND name = ?", name);
            if (!there.isEmpty() && there.get(0).run() != null && state(there.get(0)) != State.IN_USE) {
                release(there.get(0));
                return there.get(0).cloth();
            }
            List<Numbered> gone = rows.where("gone IS NOT NULL AND name = ?", name);
            if (gone.isEmpty()) {
                throw new StashException(
                        there.isEmpty()
                                ? notThere(name)
                                : "%s is in the stash, and nothing was taken of it".formatted(name));
            }
            Numbered last = gone.get(gone.size() - 1);
            for (Numbered part : rows.where("left_of = ?", last.id())) {
                if (part.gone() != null || state(part) != State.FREE) {
                    throw new StashException("%s cannot be given back: its part %s is in use, or was taken since"
                            .formatted(name, part.cloth().name()));
                }
                database.update("DELETE FROM cloth WHERE id = ?", part.id());
            }
            if (!rows.where("gone IS NULL AND name = ?", name).isEmpty()) {
                throw new StashException("%s cannot be given back: another cloth has its name now".formatted(name));
            }
            database.update("UPDATE cloth SET gone = NULL, run = NULL WHERE id = ?", last.id());
            return last.cloth();
        });
    }

    /** Begins a run that draws on the stash. */
    public Draw draw() throws StashException {
        return Draw.begin(this, database, runs);
    }

    /** What runs that are no more had reserved is free again, unless they were writing. */
    State state(Numbered row) throws SQLException, IOException {
        if (row.run() == null) {
            return State.FREE;
        }
        if (runs.isAlive(row.run())) {
            return State.IN_USE;
        }
        return writesTo(row).isEmpty() ? State.FREE : State.UNCLEAR;
    }

    Optional<String> writesTo(Numbered row) throws SQLException {
        return database
                .query("SELECT writes_to FROM run WHERE id = ?", at -> Optional.ofNullable(at.getString(1)), row.run())
                .stream()
                .findFirst()
                .orElse(Optional.empty());
    }

    void release(Numbered row) throws SQLException {
        database.update("UPDATE cloth SET run = NULL WHERE id = ?", row.id());
    }

    /** Writes into the book that a cloth is gone, and what is left of it in its place. */
    void spend(Numbered row, List<StashCloth> left, String what) throws SQLException {
        database.update("UPDATE cloth SET gone = ? WHERE id = ?", what, row.id());
        for (StashCloth part : left) {
            rows.add(part.named(freeName(part.name())), row.id());
        }
    }

    void addNamedFreely(List<StashCloth> cloths) throws SQLException {
        for (StashCloth cloth : cloths) {
            rows.add(cloth.named(freeName(cloth.name())), null);
        }
    }

    private String freeName(String wanted) throws SQLException {
        String name = wanted;
        for (int number = 2; !rows.where("gone IS NULL AND name = ?", name).isEmpty(); number++) {
            name = "%s-%d".formatted(wanted, number);
        }
        return name;
    }

    ClothRows rows() {
        return rows;
    }

    @Override
    public void close() throws StashException {
        database.close();
    }
}
