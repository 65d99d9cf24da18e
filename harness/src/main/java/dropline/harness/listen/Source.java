package dropline.harness.listen;

import dropline.harness.link.Arrival;
import dropline.protocol.CharacterFormat;
import java.io.BufferedReader;
import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** What was heard earlier, from a file: a capture, or the edges that a logic analyser saw. */
public interface Source extends Closeable {
    /** After the end of a file nothing is said for so long, ns. */
    long QUIET_NANOS = 1_000_000_000L;

    /**
     * What came next, or null at the end.
     *
     * @throws IOException where the file says something it cannot mean, with words for the person
     */
    Arrival.@Nullable Received next() throws IOException;

    /** Hands all of it to somebody who listens. */
    default void feed(Listening listening) throws IOException {
        long last = 0;
        for (Arrival.Received next = next(); next != null; next = next()) {
            listening.take(next);
            last = next.atNanos();
        }
        listening.quiet(last + QUIET_NANOS);
    }

    /**
     * Opens one, whatever it is.
     *
     * @param wire which of an analyser's wires; null where it has only one
     * @param baud at which an analyser's edges are read, bits a second
     * @throws IOException if it is none, with words for the person
     */
    static Source open(Path file, @Nullable String wire, int baud, CharacterFormat format) throws IOException {
        String first = firstLine(file);
        if (first.startsWith("# dropline capture")) {
            if (wire != null) {
                throw new IOException(file + ": a capture has no wires; leave --wire out");
            }
            return CaptureFile.open(file);
        }
        if (first.startsWith("$")) {
            return new EdgeSource(VcdEdges.open(file, wire), baud, format);
        }
        if (first.contains(",") || first.contains(";")) {
            return new EdgeSource(CsvEdges.open(file, first, wire), baud, format);
        }
        throw new IOException(file + ":1: this is no capture ('# dropline capture ...'), no VCD ('$...') and no CSV"
                + " of edges ('time,level')");
    }

    /** Whether it holds bytes, which came at one rate, and not edges. */
    static boolean isCapture(Path file) throws IOException {
        return firstLine(file).startsWith("# dropline capture");
    }

    private static String firstLine(Path file) throws IOException {
        try (BufferedReader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            String line = in.readLine();
            while (line != null && line.isBlank()) {
                line = in.readLine();
            }
            return line == null ? "" : line.strip();
        } catch (CharacterCodingException binary) {
            throw new IOException(file + ": this is no text; export VCD or CSV from the analyser's program", binary);
        }
    }
}
