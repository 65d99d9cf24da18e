package dropline.harness.layout;

import dropline.harness.problem.Problem;
import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.TextFile;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import dropline.protocol.custom.Custom;
import dropline.protocol.custom.Layout;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Reads layout files. A file gives a protocol and what is worth knowing of it, or all of its problems. */
public final class LayoutFile {
    /** The page of the manual that says which keys there are. */
    static final String PAGE = "docs/custom-protocols.md";

    /** The keys of a layout file, for its reader and for a schema. */
    public static final Form.Keys KEYS = LayoutKeys.LAYOUT;

    private LayoutFile() {}

    /** What became of a layout file. */
    public sealed interface Result {}

    /**
     * A file that describes a protocol.
     *
     * @param cautions what is not wrong and still worth knowing, at its places
     */
    public record Understood(Custom protocol, List<Problem> cautions) implements Result {
        public Understood {
            cautions = List.copyOf(cautions);
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
        Optional<String> text = TextFile.read(path, "a layout file", report);
        return understood(path.toString(), text, report);
    }

    /**
     * Reads a file that a pit file names.
     *
     * @param asked where it is named, under the key {@code layout}
     * @param report hears of what is wrong
     */
    public static Optional<Custom> read(Path path, Tree.Scalar asked, Report report) {
        Report own = new Report();
        Optional<String> text = TextFile.read(path, "a layout file", "layout", asked, own);
        Result result = understood(path.toString(), text, own);
        if (result instanceof Wrong wrong) {
            wrong.problems().forEach(report::add);
        }
        return result instanceof Understood understood ? Optional.of(understood.protocol()) : Optional.empty();
    }

    /**
     * Reads the text of a layout file.
     *
     * @param file how problems name it
     */
    public static Result parse(String file, String text) {
        Report report = new Report();
        return understood(file, Optional.of(text), report);
    }

    private static Result understood(String file, Optional<String> text, Report report) {
        Report cautions = new Report();
        Optional<Tree> tree = text.flatMap(t -> TreeReader.read(file, t, report));
        Optional<Layout> layout = tree.flatMap(t -> new LayoutReader(report).read(t, cautions));
        return layout.isPresent() ? new Understood(Custom.of(layout.get()), cautions.list()) : new Wrong(report.list());
    }
}
