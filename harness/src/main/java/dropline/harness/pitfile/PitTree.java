package dropline.harness.pitfile;

import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeText;
import dropline.harness.yaml.YamlText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A pit file as written, to look up, compare and patch by path. A path is the keys from the outside in, joined by dots:
 * {@code segments.left.baud}; a name that holds a dot stands in double quotes: {@code panels."No. 2".place}. Items of a
 * list count from 1. Paths go through the parts of included files as through its own.
 */
public final class PitTree {
    private static final String PART = "further part";

    private final String file;
    private final Map<String, String> texts;
    private final Tree.Mapping joined;
    private final Map<String, Tree.Scalar> values = new LinkedHashMap<>();

    PitTree(String file, Sources.Joined sources) {
        this.file = file;
        this.texts = sources.texts();
        this.joined = sources.joined();
        sources.trees().forEach(tree -> collect("", tree));
    }

    /**
     * A value and where it stands.
     *
     * @param text as written, without quotes
     * @param file the file it stands in
     * @param line counted from 1
     * @param column counted from 1
     */
    public record Value(String text, String file, int line, int column) {}

    /** The texts of the file and of those it includes, by their names, its own first. */
    public Map<String, String> texts() {
        return texts;
    }

    /** The file with all it includes as if it were written in one. */
    public Tree.Mapping joined() {
        return joined;
    }

    /** What reading gives if the file, its name and place apart, were this. */
    public PitFile.Result as(Tree.Mapping other) {
        return PitFile.parse(file, TreeText.of(other));
    }

    /** Every path at which a value stands, in the order of the file, then of those it includes. */
    public List<String> paths() {
        return List.copyOf(values.keySet());
    }

    /** The value at a path. */
    public Optional<Value> get(String path) {
        return Optional.ofNullable(values.get(path))
                .map(v -> new Value(
                        v.text(), v.place().file(), v.place().line(), v.place().column()));
    }

    /** Paths whose values differ between the two, or that only one of them has; those of this tree first. */
    public List<String> differences(PitTree other) {
        List<String> all = new ArrayList<>(values.keySet());
        other.values.keySet().stream().filter(p -> !values.containsKey(p)).forEach(all::add);
        return all.stream()
                .filter(p -> !get(p).map(Value::text).equals(other.get(p).map(Value::text)))
                .toList();
    }

    /**
     * Reads the file with another value at a path; everything else stays as written.
     *
     * @throws IllegalArgumentException where no value stands at the path, or one that is written over several lines
     */
    public PitFile.Result with(String path, String value) {
        Tree.Scalar old = values.get(path);
        if (old == null) {
            throw new IllegalArgumentException("a path to patch must hold a value: path=" + path);
        }
        Map<String, String> patched = new LinkedHashMap<>(texts);
        patched.put(old.place().file(), patched(path, old, value));
        return PitFile.parse(file, text(patched, file), (included, asked, report) -> {
            String text = patched.get(included.toString());
            return text == null ? Sources.included(included, asked, report) : Optional.of(text);
        });
    }

    /** Reads the file as if this text were one more part that it includes. */
    public PitFile.Result withPart(String part) {
        Path here = Path.of(file).normalize();
        String both = "include: [" + YamlText.scalar(String.valueOf(here.getFileName())) + ", " + PART + "]\n";
        Path joined = here.resolveSibling("with " + PART);
        return PitFile.parse(joined.toString(), both, (included, asked, report) -> {
            if (included.equals(joined.resolveSibling(PART))) {
                return Optional.of(part);
            }
            String text = included.equals(here) ? texts.get(file) : texts.get(included.toString());
            return text == null ? Sources.included(included, asked, report) : Optional.of(text);
        });
    }

    private static String text(Map<String, String> texts, String file) {
        return Objects.requireNonNull(texts.get(file));
    }

    private String patched(String path, Tree.Scalar old, String value) {
        String[] lines = text(texts, old.place().file()).split("(?<=\n)", -1);
        String line = lines[old.place().line() - 1];
        int from = line.offsetByCodePoints(0, old.place().column() - 1);
        if (old.quoted()) {
            char quote = line.charAt(from);
            int to = quote == '"' || quote == '\'' ? line.indexOf(quote, from + 1) : -1;
            if (to < 0 || !line.substring(from + 1, to).equals(old.text())) {
                throw new IllegalArgumentException("a value to patch must stand in one line: path=" + path);
            }
            lines[old.place().line() - 1] = line.substring(0, from) + quoted(value) + line.substring(to + 1);
        } else if (line.startsWith(old.text(), from)) {
            lines[old.place().line() - 1] = line.substring(0, from)
                    + value
                    + line.substring(from + old.text().length());
        } else {
            throw new IllegalArgumentException("a value to patch must stand in one line: path=" + path);
        }
        return String.join("", lines);
    }

    private static String quoted(String value) {
        return '"' + value.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    private void collect(String path, Tree tree) {
        if (tree instanceof Tree.Scalar scalar) {
            values.putIfAbsent(path, scalar);
        } else if (tree instanceof Tree.Sequence sequence) {
            for (int i = 0; i < sequence.items().size(); i++) {
                collect(join(path, Integer.toString(i + 1)), sequence.items().get(i));
            }
        } else if (tree instanceof Tree.Mapping mapping) {
            mapping.entries().forEach(e -> collect(join(path, step(e.key().text())), e.value()));
        }
    }

    private static String step(String key) {
        return key.contains(".") || key.contains("\"") ? quoted(key) : key;
    }

    private static String join(String path, String step) {
        return path.isEmpty() ? step : path + "." + step;
    }
}
