package dropline.harness.pitfile;

import dropline.harness.yaml.Report;
import dropline.harness.yaml.TextFile;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A pit file and those it includes: their texts, and their trees joined as if all were written in one. */
final class Sources {
    private static final int MOST_FILES = 1_000;

    private final Texts texts;
    private final Report report;
    private final Map<String, String> read = new LinkedHashMap<>();
    private final Map<String, Tree.Mapping> trees = new LinkedHashMap<>();
    private final List<String> open = new ArrayList<>();
    private long characters;

    private Sources(Texts texts, Report report) {
        this.texts = texts;
        this.report = report;
    }

    /** Where an included file's text comes from. */
    @FunctionalInterface
    interface Texts {
        /** A file's text, or empty with the reason reported at the name that asks for it. */
        Optional<String> of(Path path, Tree.Scalar asked, Report report);
    }

    /**
     * What was read.
     *
     * @param texts by the name of their file, the including file first
     * @param trees each file as written
     * @param joined all of them in one, an included file's parts where its {@code include} stands
     */
    record Joined(Map<String, String> texts, List<Tree.Mapping> trees, Tree.Mapping joined) {
        Joined {
            texts = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(texts));
            trees = List.copyOf(trees);
        }
    }

    /** The text of an included file, from where it lies. */
    static Optional<String> included(Path path, Tree.Scalar asked, Report report) {
        return TextFile.read(path, "a pit file", Schema.INCLUDE.name(), asked, report);
    }

    /** Reads a file and all it includes; empty where there is nothing that could be looked at further. */
    static Optional<Joined> read(String file, String text, Texts texts, Report report) {
        Sources sources = new Sources(texts, report);
        List<Tree.Entry> entries = sources.entries(file, text);
        Tree.Mapping main = sources.trees.get(file);
        if (main == null) {
            return Optional.empty();
        }
        Tree.Mapping joined = new Tree.Mapping(joined(Schema.ROOT, entries), main.place());
        return Optional.of(new Joined(sources.read, List.copyOf(sources.trees.values()), joined));
    }

    /** The entries of one file with those of the files it includes in place of its includes. */
    private List<Tree.Entry> entries(String file, String text) {
        read.put(file, text);
        characters += text.length();
        Optional<Tree> tree = TreeReader.read(file, text, report);
        if (tree.isEmpty()) {
            return List.of();
        }
        if (!(tree.get() instanceof Tree.Mapping mapping)) {
            BlockReader.check(tree.get(), report);
            return List.of();
        }
        trees.put(file, mapping);
        open.add(file);
        List<Tree.Entry> entries = new ArrayList<>();
        for (Tree.Entry entry : mapping.entries()) {
            if (entry.key().text().equals(Schema.INCLUDE.name())) {
                Schema.INCLUDE
                        .type()
                        .read(entry.value(), Schema.INCLUDE.name(), report)
                        .ifPresent(names -> names.forEach(name -> entries.addAll(included(file, name))));
            } else {
                entries.add(entry);
            }
        }
        open.remove(file);
        return entries;
    }

    private List<Tree.Entry> included(String from, Tree.Scalar name) {
        Path path;
        try {
            path = Path.of(from).resolveSibling(name.text().replace('\\', '/')).normalize();
        } catch (InvalidPathException e) {
            String found = name.found() + ", which no file can be called";
            report.at(name, "include", PitCode.NO_SUCH_FILE, found, "the path of a pit file", "check the path");
            return List.of();
        }
        String file = path.toString();
        if (open.stream().anyMatch(earlier -> isSame(earlier, path))) {
            String ring = String.join(", ", open) + ", " + file;
            String expected = "files that do not include each other in a ring: " + ring;
            report.at(name, "include", PitCode.CIRCULAR, expected, "delete this include");
            return List.of();
        }
        if (read.keySet().stream().anyMatch(earlier -> isSame(earlier, path))) {
            return List.of();
        }
        Optional<String> text = texts.of(path, name, report);
        if (text.isEmpty()) {
            return List.of();
        }
        if (read.size() >= MOST_FILES || characters + text.get().length() > TextFile.LARGEST_BYTES) {
            String most = "at most " + MOST_FILES + " files and " + TextFile.LARGEST_BYTES + " bytes in all";
            report.at(name, "include", PitCode.OUT_OF_RANGE, most, "include less");
            return List.of();
        }
        return entries(file, text.get());
    }

    private static boolean isSame(String file, Path other) {
        return Path.of(file).toAbsolutePath().normalize().equals(other.toAbsolutePath());
    }

    /** Groups of names that stand in several files become one group; what stands twice otherwise stays twice. */
    private static List<Tree.Entry> joined(Section section, List<Tree.Entry> entries) {
        List<Tree.Entry> joined = new ArrayList<>();
        for (Tree.Entry entry : entries) {
            int same = -1;
            for (int i = 0; i < joined.size() && same < 0; i++) {
                same = isJoinable(section, joined.get(i), entry) ? i : -1;
            }
            if (same < 0) {
                joined.add(entry);
            } else {
                Tree.Entry first = joined.get(same);
                joined.set(same, new Tree.Entry(first.key(), join(section, first, entry)));
            }
        }
        return joined;
    }

    private static boolean isJoinable(Section section, Tree.Entry first, Tree.Entry second) {
        String key = first.key().text();
        boolean apart = !first.key().place().file().equals(second.key().place().file());
        return apart
                && key.equals(second.key().text())
                && section.section(key).filter(Sources::holdsNames).isPresent()
                && first.value() instanceof Tree.Mapping
                && second.value() instanceof Tree.Mapping;
    }

    /** Whether a group holds nothing but names, or groups of names. */
    private static boolean holdsNames(Section section) {
        return section.shape() == Section.Shape.NAMED || section.keys().isEmpty();
    }

    private static Tree join(Section section, Tree.Entry first, Tree.Entry second) {
        if (!(first.value() instanceof Tree.Mapping one && second.value() instanceof Tree.Mapping other)) {
            throw new AssertionError(
                    "only groups are joined: key=" + first.key().text());
        }
        List<Tree.Entry> both = new ArrayList<>(one.entries());
        both.addAll(other.entries());
        Section child = section.section(first.key().text()).orElseThrow();
        return new Tree.Mapping(child.shape() == Section.Shape.NAMED ? both : joined(child, both), one.place());
    }
}
