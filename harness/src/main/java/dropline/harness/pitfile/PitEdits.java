package dropline.harness.pitfile;

import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Changes to the text of one pit file, one after the other; everything else stays as it was written, comments too. A
 * path is the keys from the outside in. Values are given as they are to stand in the file.
 */
public final class PitEdits {
    private final String file;
    private String text;

    /** @param file how the file is called */
    public PitEdits(String file, String text) {
        this.file = file;
        this.text = text;
    }

    /** The text as it is now. */
    public String text() {
        return text;
    }

    /** Whether there is a group or a value at a path. */
    public boolean has(String... path) {
        return find(path).isPresent();
    }

    /** The value at a path, if it is a piece of text. */
    public Optional<String> scalar(String... path) {
        return find(path)
                .map(Tree.Entry::value)
                .filter(Tree.Scalar.class::isInstance)
                .map(value -> ((Tree.Scalar) value).text());
    }

    /** Whether what stands at a path is a group. */
    public boolean isGroup(String... path) {
        return find(path)
                .map(Tree.Entry::value)
                .filter(Tree.Mapping.class::isInstance)
                .isPresent();
    }

    /** The names in a group, in their order; none where there is no such group. */
    public List<String> names(String... path) {
        return find(path)
                .map(Tree.Entry::value)
                .filter(Tree.Mapping.class::isInstance)
                .map(group -> ((Tree.Mapping) group)
                        .entries().stream().map(entry -> entry.key().text()).toList())
                .orElse(List.of());
    }

    /**
     * Gives a key of a group a value, whether or not it has one.
     *
     * @throws NotEditable where there is no such group in this file
     */
    public void set(String value, String... path) {
        Optional<Tree.Entry> there = find(path);
        YamlLines lines = new YamlLines(text);
        if (there.isPresent()) {
            int colon = lines.colonAfter(there.get().key());
            text = text.substring(0, colon + 1) + " " + value + text.substring(lines.end(there.get()));
            return;
        }
        Tree.Mapping group = group(parent(path));
        String written = path[path.length - 1] + ": " + value;
        int start = lines.at(group.place());
        if (lines.isFlow(group)) {
            text = text.substring(0, start + 1)
                    + written
                    + (group.entries().isEmpty() ? "" : ", ")
                    + text.substring(start + 1);
        } else {
            Tree.Entry last = group.entries().get(group.entries().size() - 1);
            int end = lines.endOfLine(lines.end(last));
            text = text.substring(0, end) + "\n" + indent(group) + written + text.substring(end);
        }
    }

    /** Takes a key with its value out of its group, with the comment that stands right above it; none, if it is not. */
    public void remove(String... path) {
        Optional<Tree.Entry> there = find(path);
        if (there.isEmpty()) {
            return;
        }
        YamlLines lines = new YamlLines(text);
        Tree.Mapping group = group(parent(path));
        int from = lines.at(there.get().key().place());
        int to = lines.end(there.get());
        if (lines.isFlow(group)) {
            int comma = lines.skipBlanks(to);
            boolean last = comma >= text.length() || text.charAt(comma) != ',';
            if (last) {
                int before = text.lastIndexOf(',', from);
                from = group.entries().size() > 1 ? before : from;
            } else {
                to = lines.skipBlanks(comma + 1);
            }
            text = text.substring(0, from) + text.substring(to);
        } else {
            int end = Math.min(text.length(), lines.endOfLine(to) + 1);
            text = text.substring(0, lines.startOfComment(from)) + text.substring(end);
        }
    }

    /**
     * Puts a copy of a named part behind another of the same group, under another name.
     *
     * @param after the name it is to follow
     * @throws NotEditable where there is no such part in this file
     */
    public void copy(String newName, String after, String... path) {
        Tree.Mapping group = group(parent(path));
        Tree.Entry copied = find(path).orElseThrow(() -> missing(path));
        Tree.Entry before = group.get(after).orElseThrow(() -> missing(path));
        YamlLines lines = new YamlLines(text);
        int keyEnd = lines.colonAfter(copied.key());
        String value = text.substring(keyEnd, lines.end(copied));
        int end = lines.end(before);
        if (lines.isFlow(group)) {
            text = text.substring(0, end) + ", " + newName + value + text.substring(end);
        } else {
            int at = lines.endOfLine(end);
            text = text.substring(0, at) + "\n\n" + indent(group) + newName + value + text.substring(at);
        }
    }

    private static String indent(Tree.Mapping group) {
        return " ".repeat(group.entries().get(0).key().place().column() - 1);
    }

    private Tree.Mapping root() {
        Tree tree = TreeReader.read(file, text, new Report())
                .orElseThrow(() -> new IllegalStateException("a file must stay readable while it is edited"));
        if (tree instanceof Tree.Mapping mapping) {
            return mapping;
        }
        throw new IllegalStateException("a pit file must be a group of keys");
    }

    private Optional<Tree.Entry> find(String... path) {
        Tree.Mapping at = root();
        Optional<Tree.Entry> entry = Optional.empty();
        for (int step = 0; step < path.length; step++) {
            entry = at.get(path[step]);
            if (entry.isEmpty()) {
                return entry;
            }
            if (entry.get().value() instanceof Tree.Mapping inner) {
                at = inner;
            } else if (step < path.length - 1) {
                return Optional.empty();
            }
        }
        return entry;
    }

    private Tree.Mapping group(String... path) {
        Optional<Tree> group =
                path.length == 0 ? Optional.of(root()) : find(path).map(Tree.Entry::value);
        if (group.isPresent() && group.get() instanceof Tree.Mapping mapping) {
            return mapping;
        }
        throw missing(path);
    }

    private static String[] parent(String... path) {
        List<String> all = new ArrayList<>(List.of(path));
        all.remove(all.size() - 1);
        return all.toArray(String[]::new);
    }

    private NotEditable missing(String... path) {
        return new NotEditable(String.join(": ", path) + " does not stand in " + file + " itself as a group of keys");
    }

    /** What is to be changed does not stand in the file in a form in which it can be. */
    public static final class NotEditable extends RuntimeException {
        private static final long serialVersionUID = 1L;

        /** @param message what stands in the way, for people */
        public NotEditable(String message) {
            super(message);
        }
    }
}
