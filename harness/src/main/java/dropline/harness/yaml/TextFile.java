package dropline.harness.yaml;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A file's text, or why there is none. */
public final class TextFile {
    public static final long LARGEST_BYTES = 8L << 20;

    private final Path path;
    private final String what;
    private final String key;
    private final Tree.@Nullable Scalar asked;
    private final Report report;

    private TextFile(Path path, String what, String key, Tree.@Nullable Scalar asked, Report report) {
        this.path = path;
        this.what = what;
        this.key = key;
        this.asked = asked;
        this.report = report;
    }

    /**
     * The text, without a byte order mark; empty with the reason reported.
     *
     * @param what it should be: {@code a pit file}
     */
    public static Optional<String> read(Path path, String what, Report report) {
        return new TextFile(path, what, "", null, report).text();
    }

    /**
     * The text of a file that another one names.
     *
     * @param what it should be: {@code a layout file}
     * @param key under which it is named
     * @param asked where it is named
     */
    public static Optional<String> read(Path path, String what, String key, Tree.Scalar asked, Report report) {
        return new TextFile(path, what, key, asked, report).text();
    }

    private Optional<String> text() {
        try {
            if (Files.isDirectory(path)) {
                cannotRead("a directory", "the path of " + what);
                return Optional.empty();
            }
            if (Files.size(path) > LARGEST_BYTES) {
                cannotRead(Files.size(path) + " bytes", what + " of at most " + LARGEST_BYTES + " bytes");
                return Optional.empty();
            }
            return decode(Files.readAllBytes(path));
        } catch (NoSuchFileException e) {
            cannotRead("nothing", "the path of " + what);
        } catch (IOException e) {
            cannotRead(e.getMessage() == null ? e.toString() : e.getMessage(), "a file that can be read");
        }
        return Optional.empty();
    }

    private void cannotRead(String found, String expected) {
        if (asked == null) {
            report.at(Place.whole(path.toString()), "", YamlCode.NO_SUCH_FILE, found, expected, "check the path");
        } else {
            String there = asked.found() + ", where there is " + found;
            String fix = "check the path; it counts from the folder of the file it stands in";
            report.at(asked, key, YamlCode.NO_SUCH_FILE, there, expected, fix);
        }
    }

    private Optional<String> decode(byte[] bytes) {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        CharBuffer text = CharBuffer.allocate(bytes.length + 1);
        ByteBuffer input = ByteBuffer.wrap(bytes);
        CoderResult result = decoder.decode(input, text, true);
        String decoded = text.flip().toString();
        if (!result.isError()) {
            return Optional.of(decoded.startsWith("\uFEFF") ? decoded.substring(1) : decoded);
        }
        int line = (int) decoded.chars().filter(c -> c == '\n').count() + 1;
        int column = decoded.length() - decoded.lastIndexOf('\n');
        String found = String.format(Locale.ROOT, "the byte 0x%02X", bytes[input.position()]);
        Place at = new Place(path.toString(), line, column);
        report.at(at, "", YamlCode.NOT_UTF8, found, "UTF-8 text", "save the file as UTF-8");
        return Optional.empty();
    }
}
