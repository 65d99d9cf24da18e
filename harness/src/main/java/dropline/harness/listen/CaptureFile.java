package dropline.harness.listen;

import dropline.harness.link.Arrival;
import dropline.protocol.Bytes;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Bytes as they came, one arrival a line: nanoseconds since the begin, then the bytes in hexadecimal. Readable, and
 * written as it goes.
 */
public final class CaptureFile implements Source {
    private static final String HEAD = "# dropline capture 1: ns, bytes";

    private static final Pattern LINE = Pattern.compile("(\\d{1,18}) ((?:[0-9A-Fa-f]{2} ?)+)");

    private final @Nullable BufferedWriter out;
    private final @Nullable BufferedReader in;
    private final Path file;
    private int line;

    private CaptureFile(Path file, @Nullable BufferedWriter out, @Nullable BufferedReader in) {
        this.file = file;
        this.out = out;
        this.in = in;
    }

    /** Begins one. */
    public static CaptureFile create(Path file) throws IOException {
        BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
        out.write(HEAD + "\n");
        return new CaptureFile(file, out, null);
    }

    /**
     * Opens one.
     *
     * @throws IOException if it is none, with words for the person
     */
    public static CaptureFile open(Path file) throws IOException {
        BufferedReader in = Files.newBufferedReader(file, StandardCharsets.UTF_8);
        String head = in.readLine();
        if (!HEAD.equals(head)) {
            in.close();
            throw new IOException(file + ":1: no capture: the first line must be '" + HEAD + "'");
        }
        CaptureFile capture = new CaptureFile(file, null, in);
        capture.line = 1;
        return capture;
    }

    /** Adds what came. */
    public void add(Arrival.Received received) throws IOException {
        if (out != null) {
            out.write(received.atNanos() + " " + received.bytes() + "\n");
        }
    }

    @Override
    public Arrival.@Nullable Received next() throws IOException {
        String text = in == null ? null : in.readLine();
        if (text == null) {
            return null;
        }
        line++;
        Matcher matcher = LINE.matcher(text);
        if (!matcher.matches()) {
            throw new IOException(file + ":" + line + ": found '" + text + "', expected nanoseconds and bytes, as in"
                    + " '1500000 01 83 4F 00'");
        }
        return new Arrival.Received(
                Long.parseLong(matcher.group(1)), Bytes.ofHex(matcher.group(2).strip()));
    }

    @Override
    public void close() throws IOException {
        if (out != null) {
            out.close();
        }
        if (in != null) {
            in.close();
        }
    }
}
