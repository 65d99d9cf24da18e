package dropline.harness.pitfile;

import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
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
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Reads pit files. The keys are in {@code docs/pit-file.md}, what can be wrong in {@code docs/problems}. */
public final class PitFile {
    private static final long LARGEST_BYTES = 8L << 20;

    private PitFile() {}

    /** What became of a pit file. */
    public sealed interface Result {}

    /**
     * A file that describes a pit.
     *
     * @param tree the file as written, to look up and patch values by path
     * @param recordingTime the unit of a CSV recording's time column; null where the file does not say
     */
    public record Understood(
            Pit pit, PitTree tree, @Nullable TimeUnit recordingTime) implements Result {}

    /** A file that does not, with everything that is wrong with it. */
    public record Wrong(List<Problem> problems) implements Result {
        public Wrong {
            problems = List.copyOf(problems);
        }
    }

    /** Reads a file; a problem names it as {@code path} does. */
    public static Result read(Path path) {
        Report report = new Report();
        Optional<String> text = text(path, report);
        return text.isEmpty() ? new Wrong(report.list()) : parse(path.toString(), text.get());
    }

    /**
     * Reads the text of a pit file.
     *
     * @param file how problems name it
     */
    public static Result parse(String file, String text) {
        Report report = new Report();
        Optional<Tree> tree = TreeReader.read(file, text, report);
        tree.ifPresent(t -> BlockReader.check(t, report));
        if (tree.isEmpty() || !(tree.get() instanceof Tree.Mapping written)) {
            return new Wrong(report.list());
        }
        Block root = BlockReader.read(Likes.written(written, Presets.read(), report), report);
        Parts parts = new Parts(root);
        PitChecks.check(parts, report);
        if (!report.isEmpty()) {
            return new Wrong(report.list());
        }
        Pit pit = new PitBuilder(parts).pit();
        new FitChecks(parts, pit, report).check();
        if (!report.isEmpty()) {
            return new Wrong(report.list());
        }
        Optional<TimeUnit> time = root.block(Schema.RECORDING).flatMap(r -> r.get(Schema.RECORDING_TIME));
        return new Understood(pit, new PitTree(file, text, written), time.orElse(null));
    }

    private static Optional<String> text(Path path, Report report) {
        try {
            if (Files.isDirectory(path)) {
                cannotRead(path, report, "a directory", "the path of a pit file");
                return Optional.empty();
            }
            if (Files.size(path) > LARGEST_BYTES) {
                cannotRead(
                        path, report, Files.size(path) + " bytes", "a pit file of at most " + LARGEST_BYTES + " bytes");
                return Optional.empty();
            }
            return decode(path, Files.readAllBytes(path), report);
        } catch (NoSuchFileException e) {
            cannotRead(path, report, "nothing", "the path of a pit file");
        } catch (IOException e) {
            cannotRead(path, report, e.getMessage() == null ? e.toString() : e.getMessage(), "a file that can be read");
        }
        return Optional.empty();
    }

    private static void cannotRead(Path path, Report report, String found, String expected) {
        report.at(Place.whole(path.toString()), "", PitCode.NO_SUCH_FILE, found, expected, "check the path");
    }

    private static Optional<String> decode(Path path, byte[] bytes, Report report) {
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
        report.at(
                new Place(path.toString(), line, column),
                "",
                PitCode.NOT_UTF8,
                found,
                "UTF-8 text",
                "save the file as UTF-8");
        return Optional.empty();
    }
}
