package lengthwise.stash;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Which runs are alive: each holds a lock on the byte of its number in a file beside the stash. The system gives the lock up
 * when a process ends, however it ends, and no other process can be taken for it, as it could by its number.
 */
final class RunLocks {
    /**
     * A channel is never closed: on POSIX systems closing any channel of a file gives up all locks that the process has on
     * it (java.nio.channels.FileLock).
     */
    private static final Map<Path, FileChannel> OPEN = new ConcurrentHashMap<>();

    private final Path file;

    RunLocks(Path stash) {
        this.file = stash.toAbsolutePath().normalize().resolveSibling(stash.getFileName() + ".runs");
    }

    /** Says that a run is alive until the lock is released or the process ends. */
    FileLock hold(long run) throws IOException {
        FileLock lock = channel().tryLock(run, 1, false);
        if (lock == null) {
            throw new IOException("The number of a new run is held by another one: " + run);
        }
        return lock;
    }

    boolean isAlive(long run) throws IOException {
        if (!Files.exists(file)) {
            return false;
        }
        try (FileLock free = channel().tryLock(run, 1, true)) {
            return free == null;
        } catch (OverlappingFileLockException ownRun) {
            return true;
        }
    }

    private FileChannel channel() throws IOException {
        synchronized (OPEN) {
            FileChannel open = OPEN.get(file);
            if (open == null) {
                open = FileChannel.open(
                        file, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.CREATE);
                OPEN.put(file, open);
            }
            return open;
        }
    }
}
