package lengthwise.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import jdk.jfr.Recording;
import jdk.jfr.consumer.RecordingFile;

/**
 * A file and a server that drawings refer to and no reader may touch: the JDK's own record of file reads, and a listening
 * socket, tell whether one did.
 */
public final class Decoys implements AutoCloseable {
    private final Path file;
    private final ServerSocket server;
    private final AtomicInteger calls = new AtomicInteger();
    private final Recording recording = new Recording();

    public Decoys(Path folder) throws IOException {
        file = Files.writeString(folder.resolve("decoy.svg"), """
                <svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="300mm" viewBox="0 0 400 300">
                <rect id="decoy" x="20" y="20" width="90" height="60" fill="none" stroke="#000"/></svg>
                """);
        server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        Thread listener = new Thread(this::listen, "decoy");
        listener.setDaemon(true);
        listener.start();
        recording.enable("jdk.FileRead").withoutThreshold();
        recording.start();
    }

    private void listen() {
        while (!server.isClosed()) {
            try {
                server.accept().close();
                calls.incrementAndGet();
            } catch (IOException closed) {
                return;
            }
        }
    }

    /** Names of the file and of the server, to be referred to. */
    public List<String> names() {
        return List.of(
                file.toUri().toString(),
                file.toString(),
                "decoy.svg",
                "http://%s:%d/decoy.svg".formatted(server.getInetAddress().getHostAddress(), server.getLocalPort()));
    }

    /** Returns how often the file was read or the server called so far. */
    public int touched() {
        try {
            Path record = Files.createTempFile("reads", ".jfr");
            recording.dump(record);
            int reads = 0;
            // One by one: an hour of reading makes more events than the memory holds.
            try (RecordingFile events = new RecordingFile(record)) {
                while (events.hasMoreEvents()) {
                    reads += file.toString().equals(events.readEvent().getString("path")) ? 1 : 0;
                }
            }
            Files.delete(record);
            return calls.get() + reads;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public void assertUntouched() {
        assertThat(touched()).as("reads of %s and calls of its server", file).isZero();
    }

    @Override
    public void close() throws IOException {
        recording.close();
        server.close();
    }
}
