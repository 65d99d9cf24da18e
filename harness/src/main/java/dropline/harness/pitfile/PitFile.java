package dropline.harness.pitfile;

import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.TextFile;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Reads pit files. The keys are in {@code docs/pit-file.md}, what can be wrong in {@code docs/problems}. */
public final class PitFile {
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
        Optional<String> text = TextFile.read(path, "a pit file", report);
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
}
