package dropline.harness.diff;

import java.io.BufferedReader;
import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Reads a trace from its head to its end, a line at a time. */
final class TraceReader implements Closeable {
    private static final String FIRST = "# dropline trace ";

    private final Path file;
    private final BufferedReader in;
    private final TraceHead head = new TraceHead();
    private long number;
    private @Nullable String ahead;

    TraceReader(Path file) throws IOException {
        this.file = file;
        in = Files.newBufferedReader(file, StandardCharsets.UTF_8);
        try {
            readHead();
        } catch (IOException failed) {
            in.close();
            throw failed;
        }
    }

    TraceHead head() {
        return head;
    }

    /** Number of the line last read, from 1. */
    long lineNumber() {
        return number;
    }

    /** The next event, or null at the end. */
    @Nullable
    TraceLine next() throws IOException {
        String line = ahead != null ? ahead : line();
        ahead = null;
        while (line != null && line.startsWith("#")) {
            line = line();
        }
        if (line == null) {
            return null;
        }
        TraceLine event = TraceLine.read(line);
        if (event == null) {
            throw new TraceException(file + ":" + number + ": this is no event of a trace: '"
                    + (line.length() > 60 ? line.substring(0, 60) + ".." : line)
                    + "'; expected TIME SEGMENT EVENT NUMBERS");
        }
        return event;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }

    private void readHead() throws IOException {
        String line = line();
        if (line == null || !line.startsWith(FIRST)) {
            throw new TraceException(file + " is no trace: its first line must be '" + FIRST
                    + "1'; write one with dropline replay PIT RECORDING --trace FILE");
        }
        while (line != null && line.startsWith("#")) {
            head.take(line);
            line = line();
        }
        ahead = line;
    }

    private @Nullable String line() throws IOException {
        number++;
        try {
            return in.readLine();
        } catch (CharacterCodingException binary) {
            throw new TraceException(file + " is no trace: line " + number + " is not text");
        }
    }
}
