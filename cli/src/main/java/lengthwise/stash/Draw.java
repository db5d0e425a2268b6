package lengthwise.stash;

import java.io.IOException;
import java.nio.channels.FileLock;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import lengthwise.stash.ClothRows.Numbered;

/**
 * What one run draws from the stash. It reserves cloth before it searches; it says where it is going to write before it
 * writes; when all is written, the cloth is spent. Closed before it writes, or dead, it has taken nothing; dead while it
 * writes, it leaves its cloth unclear, and no other run gets it until the maker has looked.
 */
public final class Draw implements AutoCloseable {
    private final Stash stash;
    private final StashFile database;
    private final long run;
    private final FileLock alive;
    private boolean writing;
    private boolean spent;

    /**
     * A cloth that is used up.
     *
     * @param left of it, to be put back in its place
     */
    public record Spent(String name, List<StashCloth> left) {
        public Spent {
            left = List.copyOf(left);
        }
    }

    private record Begun(long run, FileLock alive) {}

    private Draw(Stash stash, StashFile database, Begun begun) {
        this.stash = stash;
        this.database = database;
        this.run = begun.run();
        this.alive = begun.alive();
    }

    static Draw begin(Stash stash, StashFile database, RunLocks runs) throws StashException {
        return new Draw(stash, database, database.write(() -> {
            long run = database.insert("INSERT INTO run (writes_to) VALUES (NULL)");
            // held before anybody else can see the run
            return new Begun(run, runs.hold(run));
        }));
    }

    /** Returns the cloths of a fabric that this run may reserve, the smallest first. */
    public List<StashCloth> free(String fabric) throws StashException {
        return database.read(() -> {
            List<StashCloth> free = new ArrayList<>();
            for (Numbered row : stash.rows().where("gone IS NULL AND fabric = ?", fabric)) {
                if (stash.state(row) == Stash.State.FREE) {
                    free.add(row.cloth());
                }
            }
            free.sort((a, b) -> Double.compare(a.squareMillimetres(), b.squareMillimetres()));
            return free;
        });
    }

    /**
     * Reserves a cloth for this run, as it is now.
     *
     * @throws StashException if it is not there, or another run has it
     */
    public StashCloth reserve(String name) throws StashException {
        return database.write(() -> {
            Numbered row = stash.there(name);
            switch (stash.state(row)) {
                case FREE -> database.update("UPDATE cloth SET run = ? WHERE id = ?", run, row.id());
                case IN_USE ->
                    throw new StashException("%s is reserved by %s"
                            .formatted(
                                    row.cloth().name(),
                                    row.run() != null && row.run() == run
                                            ? "this run already; no cloth is cut twice"
                                            : "another run that is still going"));
                case UNCLEAR ->
                    throw new StashException(
                            "%s was reserved by a run that ended while it wrote its marker to %s: if that is there and you will cut it, lengthwise stash take %s; if not, lengthwise stash give-back %s"
                                    .formatted(
                                            row.cloth().name(),
                                            stash.writesTo(row).orElse("?"),
                                            row.cloth().name(),
                                            row.cloth().name()));
            }
            return row.cloth();
        });
    }

    /** Gives a cloth back that this run does not need after all. */
    public void letGo(String name) throws StashException {
        database.write(() ->
                database.update("UPDATE cloth SET run = NULL WHERE name = ? AND run = ? AND gone IS NULL", name, run));
    }

    /** Says that the run now writes its markers: from here on its cloth is not anybody else's, even if it dies. */
    public void writesTo(Path folder) throws StashException {
        database.write(() -> database.update(
                "UPDATE run SET writes_to = ? WHERE id = ?",
                folder.toAbsolutePath().normalize().toString(),
                run));
        writing = true;
    }

    /**
     * Spends what was reserved and puts back what is left, at once; every other cloth of this run is free again.
     *
     * @param more to put into the stash besides: what is left of cloth that was bought
     */
    public void spend(List<Spent> cloths, List<StashCloth> more, String what) throws StashException {
        database.write(() -> {
            for (Spent each : cloths) {
                Numbered row = stash.there(each.name());
                if (row.run() == null || row.run() != run) {
                    throw new StashException(
                            "%s is not reserved by this run any more; it was written, and the stash knows nothing of it"
                                    .formatted(each.name()));
                }
                stash.spend(row, each.left(), what);
            }
            stash.addNamedFreely(more);
            return database.update("UPDATE cloth SET run = NULL WHERE run = ? AND gone IS NULL", run);
        });
        spent = true;
    }

    @Override
    public void close() throws StashException {
        try {
            if (!writing && !spent) {
                database.write(
                        () -> database.update("UPDATE cloth SET run = NULL WHERE run = ? AND gone IS NULL", run));
            }
        } finally {
            try {
                alive.release();
            } catch (IOException gone) {
                // the end of the process releases it
            }
        }
    }
}
