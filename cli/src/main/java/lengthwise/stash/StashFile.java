package lengthwise.stash;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import org.sqlite.SQLiteOpenMode;

/**
 * The database of a stash. A file that is none is refused before anything is written to it. A change is one transaction,
 * with SQLite's rollback journal and full synchronisation: it happens wholly or, whenever the process is killed, not at all.
 */
final class StashFile implements AutoCloseable {
    /** In the head of the file, bytes 68 to 71 (sqlite.org/fileformat2.html, 1.3.17): "LwSt". */
    private static final int APPLICATION = 0x4c775374;

    private static final int PATIENCE_MILLIS = 20_000;

    /** What brings a store of each version to the next; an empty file has version 0. */
    private static final List<List<String>> STEPS =
            List.of(List.of("""
            CREATE TABLE run (
                id INTEGER PRIMARY KEY AUTOINCREMENT,
                writes_to TEXT
            ) STRICT""", """
            CREATE TABLE cloth (
                id INTEGER PRIMARY KEY AUTOINCREMENT,
                left_of INTEGER REFERENCES cloth,
                name TEXT NOT NULL COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
                fabric TEXT NOT NULL,
                colour TEXT,
                width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 10000000),
                length INTEGER NOT NULL CHECK (length BETWEEN 1 AND 500000000),
                edge_near INTEGER CHECK (edge_near >= 0),
                edge_far INTEGER CHECK (edge_far >= 0),
                direction TEXT CHECK (direction IN ('EITHER_WAY', 'ONE_WAY', 'ONE_WAY_PER_GARMENT')),
                shrinks_lengthwise INTEGER CHECK (shrinks_lengthwise BETWEEN 0 AND 499999),
                shrinks_crosswise INTEGER CHECK (shrinks_crosswise BETWEEN 0 AND 499999),
                shrinkage_handled TEXT CHECK (shrinkage_handled IN ('PRE_WASH', 'ADD_TO_PIECES', 'IN_PATTERN')),
                price INTEGER CHECK (price >= 0),
                price_per INTEGER CHECK (price_per > 0),
                print_from_start INTEGER,
                print_from_selvedge INTEGER,
                run INTEGER REFERENCES run,
                gone TEXT
            ) STRICT""", "CREATE UNIQUE INDEX cloth_there ON cloth (name) WHERE gone IS NULL", """
            CREATE TABLE corner (
                cloth INTEGER NOT NULL REFERENCES cloth ON DELETE CASCADE,
                place INTEGER NOT NULL,
                from_start INTEGER NOT NULL CHECK (from_start >= 0),
                from_selvedge INTEGER NOT NULL CHECK (from_selvedge >= 0),
                PRIMARY KEY (cloth, place)
            ) STRICT""", """
            CREATE TABLE flaw (
                cloth INTEGER NOT NULL REFERENCES cloth ON DELETE CASCADE,
                place INTEGER NOT NULL,
                from_start INTEGER NOT NULL CHECK (from_start >= 0),
                length INTEGER NOT NULL CHECK (length > 0),
                from_selvedge INTEGER NOT NULL CHECK (from_selvedge >= 0),
                width INTEGER NOT NULL CHECK (width > 0),
                PRIMARY KEY (cloth, place)
            ) STRICT"""));

    static {
        Natives.announce();
    }

    private final Path file;
    private final Connection connection;

    /** A piece of work on the database. */
    @FunctionalInterface
    interface Work<T> {
        T run() throws SQLException, StashException, IOException;
    }

    /** Reads one row of an answer. */
    @FunctionalInterface
    interface Row<T> {
        T read(ResultSet row) throws SQLException;
    }

    private StashFile(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
    }

    /** Opens a stash that is there. */
    static StashFile open(Path file) throws StashException {
        if (!Files.exists(file)) {
            throw new StashException(
                    "there is no stash at %s; the first lengthwise stash add or import makes one, or name another with --stash"
                            .formatted(file));
        }
        return connected(file, false);
    }

    /** Opens a stash, and makes it where there is none. */
    static StashFile openOrMake(Path file) throws StashException {
        try {
            Files.createDirectories(file.toAbsolutePath().normalize().resolveSibling(""));
        } catch (IOException noFolder) {
            throw new StashException("the folder of %s cannot be made; is the path right?".formatted(file), noFolder);
        }
        return connected(file, true);
    }

    private static StashFile connected(Path file, boolean make) throws StashException {
        if (Files.isDirectory(file)) {
            throw new StashException(file + " is a folder; name a file for the stash");
        }
        try {
            refuseForeign(file);
            SQLiteConfig config = new SQLiteConfig();
            config.setBusyTimeout(PATIENCE_MILLIS);
            config.enforceForeignKeys(true);
            config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
            if (!make) {
                config.resetOpenMode(SQLiteOpenMode.CREATE);
            }
            StashFile stash = new StashFile(file, config.createConnection(url(file)));
            try {
                stash.update("PRAGMA trusted_schema = OFF");
                stash.prepare(make);
                return stash;
            } catch (SQLException | StashException | RuntimeException wrong) {
                stash.close();
                throw wrong;
            }
        } catch (SQLException wrong) {
            throw said(file, wrong);
        } catch (LinkageError noNative) {
            throw new StashException(
                    "SQLite's native library cannot be loaded here (%s); the stash needs it".formatted(noNative),
                    noNative);
        }
    }

    private static String url(Path file) {
        return "jdbc:sqlite:" + file.toAbsolutePath().normalize().toUri();
    }

    /** Looks at a file without locks, journals or any change to it, whatever it is. */
    private static void refuseForeign(Path file) throws SQLException, StashException {
        try {
            if (!Files.exists(file) || Files.size(file) == 0) {
                return;
            }
        } catch (IOException unreadable) {
            throw new StashException("%s cannot be read; is it yours?".formatted(file), unreadable);
        }
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        try (Connection connection = config.createConnection(url(file) + "?immutable=1");
                PreparedStatement asked = connection.prepareStatement("PRAGMA application_id");
                ResultSet answer = asked.executeQuery()) {
            if (!answer.next() || answer.getInt(1) != APPLICATION) {
                throw new StashException(
                        "%s is an SQLite database and no stash of Lengthwise; it is left as it is, name another file"
                                .formatted(file));
            }
        }
    }

    private void prepare(boolean make) throws SQLException, StashException {
        int version = one("PRAGMA user_version");
        if (version > STEPS.size()) {
            throw new StashException(
                    "%s was written by a newer Lengthwise (its store has version %d, this one knows %d); use that one"
                            .formatted(file, version, STEPS.size()));
        }
        if (version < STEPS.size() && (make || version > 0)) {
            write(this::migrate);
        } else if (version == 0) {
            throw new StashException(
                    "%s is empty; the first lengthwise stash add or import makes a stash of it".formatted(file));
        }
        List<String> found = query("PRAGMA quick_check(1)", row -> row.getString(1));
        if (!found.equals(List.of("ok"))) {
            throw damaged(file, found.isEmpty() ? "no answer" : found.get(0), null);
        }
        List<String> tables = query(
                "SELECT sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY rowid", row -> row.getString(1));
        List<String> wanted = STEPS.stream().flatMap(List::stream).toList();
        if (!tables.equals(wanted)) {
            throw damaged(file, "its tables are not those of a stash", null);
        }
    }

    private int migrate() throws SQLException {
        for (int version = one("PRAGMA user_version"); version < STEPS.size(); version++) {
            for (String step : STEPS.get(version)) {
                update(step);
            }
        }
        update("PRAGMA application_id = " + APPLICATION);
        return update("PRAGMA user_version = " + STEPS.size());
    }

    /** Does a piece of work with the database locked for writing: all of it, or where something is thrown, nothing. */
    <T> T write(Work<T> work) throws StashException {
        return transaction("BEGIN IMMEDIATE", work);
    }

    /** Reads what belongs together. */
    <T> T read(Work<T> work) throws StashException {
        return transaction("BEGIN", work);
    }

    private <T> T transaction(String begin, Work<T> work) throws StashException {
        try {
            update(begin);
            boolean done = false;
            try {
                T answer = work.run();
                update("COMMIT");
                done = true;
                return answer;
            } finally {
                if (!done) {
                    rollBack();
                }
            }
        } catch (SQLException wrong) {
            throw said(file, wrong);
        } catch (IOException wrong) {
            throw new StashException(
                    "the file of runs beside %s cannot be used: %s".formatted(file, wrong.getMessage()), wrong);
        }
    }

    private void rollBack() {
        try {
            update("ROLLBACK");
        } catch (SQLException rolledBackAlready) {
            // SQLite does so by itself after some failures; what was thrown first tells more
        }
    }

    int update(String sql, @Nullable Object... values) throws SQLException {
        try (PreparedStatement statement = statement(sql, values)) {
            return statement.executeUpdate();
        }
    }

    /** Adds a row and returns its number. */
    long insert(String sql, @Nullable Object... values) throws SQLException {
        update(sql, values);
        return query("SELECT last_insert_rowid()", row -> row.getLong(1)).get(0);
    }

    <T> List<T> query(String sql, Row<T> reading, @Nullable Object... values) throws SQLException {
        try (PreparedStatement statement = statement(sql, values);
                ResultSet rows = statement.executeQuery()) {
            List<T> read = new ArrayList<>();
            while (rows.next()) {
                read.add(reading.read(rows));
            }
            return read;
        }
    }

    private int one(String sql) throws SQLException {
        return query(sql, row -> row.getInt(1)).get(0);
    }

    private PreparedStatement statement(String sql, @Nullable Object... values) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
        return statement;
    }

    Path file() {
        return file;
    }

    private static StashException said(Path file, SQLException wrong) {
        SQLiteErrorCode code =
                wrong instanceof SQLiteException sqlite ? sqlite.getResultCode() : SQLiteErrorCode.UNKNOWN_ERROR;
        return switch (SQLiteErrorCode.getErrorCode(code.code & 0xff)) {
            case SQLITE_NOTADB, SQLITE_CORRUPT -> damaged(file, String.valueOf(wrong.getMessage()), wrong);
            case SQLITE_BUSY, SQLITE_LOCKED ->
                new StashException("%s is held by another program; try again when that is done".formatted(file), wrong);
            case SQLITE_CANTOPEN, SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH ->
                new StashException(
                        "%s cannot be opened for writing; may you write to it and to its folder?".formatted(file),
                        wrong);
            case SQLITE_FULL, SQLITE_IOERR ->
                new StashException(
                        "%s cannot be written (%s); is the disk full?".formatted(file, wrong.getMessage()), wrong);
            default -> new StashException("%s: SQLite says %s".formatted(file, wrong.getMessage()), wrong);
        };
    }

    private static StashException damaged(Path file, String what, @Nullable Exception cause) {
        String line =
                "%s is damaged, or no stash at all (%s); it is left as it is: take it from a copy, or import a table that was exported"
                        .formatted(file, what.replaceAll("\\s+", " "));
        return cause == null ? new StashException(line) : new StashException(line, cause);
    }

    @Override
    public void close() throws StashException {
        try {
            connection.close();
        } catch (SQLException wrong) {
            throw said(file, wrong);
        }
    }
}
