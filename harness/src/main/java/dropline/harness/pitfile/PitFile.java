package dropline.harness.pitfile;

import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import dropline.harness.yaml.FileSort;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.TextFile;
import dropline.harness.yaml.Tree;
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
     * @param figures what it rests on
     * @param nodes names of all nodes in the order of the file
     */
    public record Understood(
            Pit pit, PitTree tree, @Nullable TimeUnit recordingTime, Figures figures, List<String> nodes)
            implements Result {
        public Understood {
            nodes = List.copyOf(nodes);
        }
    }

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
     * Reads the text of a pit file; what it includes is read from where it lies.
     *
     * @param file how problems name it, and where includes count from
     */
    public static Result parse(String file, String text) {
        return parse(file, text, Sources::included);
    }

    static Result parse(String file, String text, Sources.Texts texts) {
        Report report = new Report();
        Optional<Sources.Joined> sources = Sources.read(file, text, texts, report);
        boolean allRead = report.isEmpty();
        if (sources.isPresent() && FileSort.PIT.isAnother(sources.get().trees().get(0), report)) {
            return new Wrong(report.list());
        }
        sources.ifPresent(read -> BlockReader.check(read.joined(), report));
        if (sources.isEmpty() || !allRead) {
            return new Wrong(report.list());
        }
        Tree.Mapping written = sources.get().joined();
        Tree.Mapping presets = Presets.read();
        Likes.Written whole = Ranges.written(Likes.written(written, presets, report), report);
        Block root = BlockReader.read(whole, report);
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
        Figures figures = Figures.of(parts, FigurePaths.of(written, presets));
        return new Understood(
                pit, new PitTree(file, sources.get()), time.orElse(null), figures, List.copyOf(parts.nodeNames()));
    }
}
