package dropline.harness.pitfile;

import dropline.harness.problem.Nearest;
import dropline.harness.yaml.Place;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Reads a tree by the schema. A file is read twice: as written, for unknown and doubled keys and values of the wrong
 * kind, each reported once at its place; and with its likes written out, for what is then still missing.
 */
final class BlockReader {
    /** What a comma between braces cuts off reads like a key. */
    private static final String IN_QUOTES = "between braces a value with a comma stands in quotes, as in loop-pass:"
            + " \"3 ms, measured 2026-11-20\" or reply-gap: \"200 us + exponential 100 us, at most 3 ms\"";

    private final Report report;
    private final Report gaps;
    private final Set<Place> open;

    private BlockReader(Report report, Report gaps, Set<Place> open) {
        this.report = report;
        this.gaps = gaps;
        this.open = open;
    }

    /** Reads a file as written and reports all but what is missing. */
    static void check(Tree root, Report report) {
        new BlockReader(report, new Report(), Set.of()).read(root);
    }

    /** Reads a file with its likes written out and reports only what is missing. */
    static Block read(Likes.Written file, Report report) {
        return new BlockReader(new Report(), report, file.open()).read(file.root());
    }

    private Block read(Tree root) {
        return read(
                Schema.ROOT, new Tree.Scalar("", false, new Place(root.place().file(), 1, 1)), root);
    }

    /** Reads the group that stands at {@code tree} under {@code name}. */
    private Block read(Section section, Tree.Scalar name, Tree tree) {
        boolean whole = !open.contains(tree.place());
        Block block = new Block(section, name, whole);
        if (tree instanceof Tree.Mapping mapping) {
            readKeys(block, mapping);
        } else if (tree instanceof Tree.Scalar scalar && !scalar.isNothing() && section.shorthand() != null) {
            readValue(block, section.shorthand(), tree);
        } else if (!(tree instanceof Tree.Scalar scalar && scalar.isNothing())) {
            String keys = "keys of its own, indented below it: " + Report.oneOf(section.names());
            report.at(tree, name.text(), PitCode.WRONG_TYPE, keys, null);
            return block;
        }
        if (whole) {
            missing(block);
        }
        return block;
    }

    private void readKeys(Block block, Tree.Mapping mapping) {
        Map<String, Tree.Scalar> seen = new LinkedHashMap<>();
        for (Tree.Entry entry : mapping.entries()) {
            Tree.Scalar name = entry.key();
            Tree.Scalar earlier = seen.putIfAbsent(name.text(), name);
            if (earlier != null) {
                twice(name, earlier, PitCode.DUPLICATE_KEY, "each key once");
                continue;
            }
            Optional<Key<?>> key = block.section().key(name.text());
            Optional<Section> child = block.section().section(name.text());
            if (key.isPresent()) {
                readValue(block, key.get(), entry.value());
            } else if (child.isPresent()) {
                readSection(block, child.get(), entry);
            } else {
                unknown(block.section(), name);
            }
        }
    }

    private <T> void readValue(Block block, Key<T> key, Tree tree) {
        if (!key.isFigure() || !(tree instanceof Tree.Scalar scalar)) {
            put(block, key, tree, tree);
        } else if (Stated.isPreset(tree)) {
            String expected = key.name() + ": " + key.type().words() + "; nothing this is like says it";
            gaps.at(tree, key.name(), PitCode.MISSING_KEY, expected, "write a figure, such as about your best guess");
            block.putUnread(key, tree);
        } else {
            Optional<Stated> stated = Stated.of(scalar, key.name(), report);
            block.putUnread(key, tree);
            stated.ifPresent(figure -> {
                put(block, key, tree, figure.value());
                if (key.bearing() == Key.Bearing.TIMING) {
                    block.put(new Block.Written(key.name(), figure.value().text(), figure.origin(), tree.place()));
                }
            });
        }
    }

    private <T> void put(Block block, Key<T> key, Tree written, Tree bare) {
        Optional<T> value = key.type().read(bare, key.name(), report);
        if (value.isPresent()) {
            block.put(key, written, value.get());
        } else {
            block.putUnread(key, written);
        }
    }

    private void readSection(Block block, Section child, Tree.Entry entry) {
        if (child.shape() == Section.Shape.ONE) {
            block.put(child, read(child, entry.key(), entry.value()));
            return;
        }
        if (!(entry.value() instanceof Tree.Mapping mapping)) {
            if (!(entry.value() instanceof Tree.Scalar scalar && scalar.isNothing())) {
                String names = "names, each with keys of its own indented below it";
                report.at(entry.value(), child.name(), PitCode.WRONG_TYPE, names, null);
            }
            return;
        }
        Map<String, Tree.Scalar> seen = new LinkedHashMap<>();
        for (Tree.Entry named : mapping.entries()) {
            Tree.Scalar name = named.key();
            Tree.Scalar earlier = seen.putIfAbsent(name.text(), name);
            if (earlier != null) {
                twice(name, earlier, PitCode.DUPLICATE_NAME, "each name once under " + child.name());
            } else if (name.text().isBlank()) {
                report.at(name, child.name(), PitCode.WRONG_TYPE, "a name", null);
            } else {
                block.put(child, read(child, name, named.value()));
            }
        }
    }

    private void twice(Tree.Scalar name, Tree.Scalar earlier, PitCode code, String expected) {
        String fix = "delete one of the two, or give it another name; the first is in " + earlier.line(name);
        report.at(name, name.text(), code, expected, fix);
    }

    private void unknown(Section section, Tree.Scalar name) {
        String where = section.name().isEmpty() ? "" : " under " + section.name();
        Optional<String> nearest = Nearest.to(name.text(), section.names());
        String expected = "a key known" + where + ": " + Report.oneOf(section.names());
        String fix =
                nearest.map(n -> "write " + n + ":").orElse("delete it, or see docs/pit-file.md for where it goes");
        boolean cutOff = name.text().startsWith("measured ") || name.text().startsWith("at most ");
        report.at(name, name.text(), PitCode.UNKNOWN_KEY, expected, cutOff ? IN_QUOTES : fix);
    }

    private void missing(Block block) {
        for (Key<?> key : block.section().keys()) {
            if (key.need() == Key.Need.REQUIRED && !block.has(key)) {
                missing(block, key.name(), key.type().words());
            }
        }
        for (Section child : block.section().sections()) {
            if (child.need() == Key.Need.REQUIRED && block.blocks(child).isEmpty()) {
                missing(block, child.name(), child.doc());
            }
        }
    }

    private void missing(Block block, String key, String expected) {
        Tree.Scalar owner = block.nameAt();
        String whole = block.section().name().isEmpty() ? "the file" : owner.text();
        gaps.at(owner, key, PitCode.MISSING_KEY, whole + " without " + key, key + ": " + expected, null);
    }
}
