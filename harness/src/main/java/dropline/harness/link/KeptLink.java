package dropline.harness.link;

import dropline.protocol.Bytes;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * What a {@link KeepingLink} kept, told again in the same order: whoever asks the same questions gets the same answers,
 * instants and all, without anything being connected.
 */
public final class KeptLink implements Link {
    private final Path file;
    private final BufferedReader kept;
    private final boolean isOnAWire;
    private final String where;
    private int line = 2;
    private long reached;
    private boolean ended;

    private KeptLink(Path file, BufferedReader kept, boolean isOnAWire, String where) {
        this.file = file;
        this.kept = kept;
        this.isOnAWire = isOnAWire;
        this.where = where;
    }

    /**
     * Opens one.
     *
     * @throws IOException if it is none, with words for the person
     */
    public static KeptLink open(Path file) throws IOException {
        BufferedReader kept = Files.newBufferedReader(file, StandardCharsets.UTF_8);
        try {
            String head = kept.readLine();
            String about = kept.readLine();
            int space = about == null ? -1 : about.indexOf(' ');
            if (KeepingLink.HEAD.equals(head) && about != null && space > 0) {
                boolean isOnAWire = Boolean.parseBoolean(about.substring(0, space));
                return new KeptLink(file, kept, isOnAWire, about.substring(space + 1));
            }
            throw new IOException(none(file));
        } catch (IOException wrong) {
            kept.close();
            throw wrong instanceof CharacterCodingException ? new IOException(none(file), wrong) : wrong;
        }
    }

    private static String none(Path file) {
        return file + ":1: these are no timings that a drive kept: the first line must be '" + KeepingLink.HEAD + "'";
    }

    /** Whether all of it has been told: what follows is made up. */
    public boolean isOver() {
        return ended;
    }

    private String next(String asked) throws IOException {
        String text = kept.readLine();
        line++;
        if (text == null) {
            ended = true;
            return "";
        }
        if (asked.isEmpty() || text.startsWith(asked)) {
            return text.substring(asked.length());
        }
        throw wrong(text, "'" + asked + "' and nanoseconds");
    }

    private IOException wrong(String text, String expected) {
        return new IOException(file + ":" + line + ": found '" + text + "', expected " + expected
                + "; was it kept with this pit file and this recording?");
    }

    private long instant(String text) throws IOException {
        try {
            reached = ended ? reached + 1 : Long.parseLong(text);
            return reached;
        } catch (NumberFormatException not) {
            throw wrong(text, "nanoseconds");
        }
    }

    @Override
    public long now() {
        try {
            return instant(next("now "));
        } catch (IOException other) {
            throw new UncheckedIOException(other.getMessage(), other);
        }
    }

    @Override
    public long send(byte[] bytes, int offset, int length) throws IOException {
        return instant(next("sent "));
    }

    @Override
    public @Nullable Arrival await(long deadlineNanos) throws IOException {
        String text = next("");
        String[] parts = text.split(" ", 3);
        return switch (parts[0]) {
            case "nothing", "" -> null;
            case "received" -> new Arrival.Received(instant(part(parts, 1)), bytes(part(parts, 2)));
            case "lost" -> new Arrival.Lost(instant(part(parts, 1)), part(parts, 2));
            case "back" -> new Arrival.Back(instant(part(parts, 1)));
            case "overrun" -> new Arrival.Overrun(instant(part(parts, 1)), instant(part(parts, 2)));
            default -> throw wrong(text, "what came, or 'nothing'");
        };
    }

    private String part(String[] parts, int index) throws IOException {
        if (parts.length <= index) {
            throw wrong(String.join(" ", parts), "more on this line");
        }
        return parts[index];
    }

    private Bytes bytes(String text) throws IOException {
        try {
            return Bytes.ofHex(text);
        } catch (IllegalArgumentException not) {
            throw wrong(text, "bytes in hexadecimal");
        }
    }

    @Override
    public boolean isExact() {
        return false;
    }

    @Override
    public boolean isOnAWire() {
        return isOnAWire;
    }

    @Override
    public String where() {
        return where;
    }

    @Override
    public void close() {
        try {
            kept.close();
        } catch (IOException alreadyRead) {
            // nothing more is wanted of it
        }
    }
}
