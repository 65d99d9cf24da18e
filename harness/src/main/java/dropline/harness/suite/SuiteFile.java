package dropline.harness.suite;

import dropline.harness.problem.Problem;
import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.TextFile;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Reads suite files, and the pit that they name. */
public final class SuiteFile {
    /** The page of the manual that says which keys there are. */
    static final String PAGE = "docs/suite-file.md";

    /** The keys of a suite file, for its reader and for a schema. */
    public static final Form.Keys KEYS = SuiteKeys.SUITE;

    private SuiteFile() {}

    /** What became of a suite file. */
    public sealed interface Result {}

    /** A suite that can be run. */
    public record Understood(Suite suite) implements Result {}

    /** A file that is none, with everything that is wrong with it, its pit and its recordings. */
    public record Wrong(List<Problem> problems) implements Result {
        public Wrong {
            problems = List.copyOf(problems);
        }
    }

    /** Reads a file; a problem names it as {@code path} does, and its paths count from its folder. */
    public static Result read(Path path) throws IOException {
        Report report = new Report();
        Optional<String> text = TextFile.read(path, "a suite file", report);
        return text.isEmpty() ? new Wrong(report.list()) : parse(path.toString(), path, text.get());
    }

    /**
     * Reads the text of a suite file.
     *
     * @param file how problems name it
     * @param path where it lies, or would; its paths count from there
     */
    static Result parse(String file, Path path, String text) throws IOException {
        Report report = new Report();
        Optional<Tree> tree = TreeReader.read(file, text, report);
        if (tree.isEmpty()) {
            return new Wrong(report.list());
        }
        Optional<Suite> suite = new SuiteReader(path, report).read(tree.get());
        return suite.isPresent() && report.isEmpty() ? new Understood(suite.get()) : new Wrong(report.list());
    }
}
