package dropline.harness.link;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Another link, of which everything that it told is kept in a file, so that a {@link KeptLink} tells it again. */
public final class KeepingLink implements Link {
    static final String HEAD = "# dropline timings 1";

    private final Link behind;
    private final BufferedWriter kept;
    private @Nullable IOException failed;

    private KeepingLink(Link behind, BufferedWriter kept) {
        this.behind = behind;
        this.kept = kept;
    }

    /** Begins the file; closing the link ends it. */
    public static KeepingLink of(Link link, Path file) throws IOException {
        KeepingLink keeping = new KeepingLink(link, Files.newBufferedWriter(file, StandardCharsets.UTF_8));
        keeping.line(HEAD);
        keeping.line(link.isOnAWire() + " " + link.where());
        return keeping;
    }

    private void line(String text) {
        try {
            kept.write(text);
            kept.write('\n');
        } catch (IOException full) {
            failed = full;
        }
    }

    @Override
    public long now() {
        long now = behind.now();
        line("now " + now);
        return now;
    }

    @Override
    public long send(byte[] bytes, int offset, int length) throws IOException {
        long at = behind.send(bytes, offset, length);
        line("sent " + at);
        return at;
    }

    @Override
    public @Nullable Arrival await(long deadlineNanos) throws IOException {
        Arrival arrival = behind.await(deadlineNanos);
        line(text(arrival));
        if (failed != null) {
            throw failed;
        }
        return arrival;
    }

    private static String text(@Nullable Arrival arrival) {
        if (arrival instanceof Arrival.Received received) {
            return "received " + received.atNanos() + " " + received.bytes();
        }
        if (arrival instanceof Arrival.Lost lost) {
            return "lost " + lost.atNanos() + " " + lost.why().replace('\n', ' ');
        }
        if (arrival instanceof Arrival.Back back) {
            return "back " + back.atNanos();
        }
        return arrival instanceof Arrival.Overrun overrun
                ? "overrun " + overrun.atNanos() + " " + overrun.bytes()
                : "nothing";
    }

    @Override
    public boolean isExact() {
        return behind.isExact();
    }

    @Override
    public boolean isOnAWire() {
        return behind.isOnAWire();
    }

    @Override
    public String where() {
        return behind.where();
    }

    @Override
    public void close() {
        try {
            kept.close();
        } catch (IOException full) {
            failed = full;
        }
        behind.close();
    }
}
