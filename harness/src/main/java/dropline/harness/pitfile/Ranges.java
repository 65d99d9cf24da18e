package dropline.harness.pitfile;

import dropline.harness.yaml.Place;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Writes out nodes that stand for one each address, and the panels they carry, on a tree whose likes are written out:
 * {@code oil} with {@code addresses: 1..3} becomes {@code oil 1}, {@code oil 2} and {@code oil 3}. In the texts of such
 * a node and of its panels, {@code #} is the address.
 */
final class Ranges {
    private static final String MARK = "#";
    private static final String NODES = NodeKeys.NODES.name();
    private static final String PANELS = PanelKeys.PANELS.name();

    private final Report report;
    private final Map<String, NodeKeys.Addresses> ranges = new LinkedHashMap<>();
    private final Set<String> unread = new LinkedHashSet<>();
    private final Map<String, Tree.Scalar> taken = new LinkedHashMap<>();
    private final Set<Place> open;

    private Ranges(Report report, Set<Place> open) {
        this.report = report;
        this.open = new LinkedHashSet<>(open);
    }

    /** The same file with every range written out. */
    static Likes.Written written(Likes.Written file, Report report) {
        Ranges ranges = new Ranges(report, file.open());
        Tree.Mapping nodes = ranges.each(file.root(), NODES);
        Tree.Mapping all = ranges.each(nodes, PANELS);
        return new Likes.Written(all, ranges.open);
    }

    private Tree.Mapping each(Tree.Mapping root, String section) {
        return root.map(entry -> {
            if (!entry.key().text().equals(section) || !(entry.value() instanceof Tree.Mapping names)) {
                return entry;
            }
            taken.clear();
            names.once().entries().forEach(named -> taken.put(named.key().text(), named.key()));
            List<Tree.Entry> written = new ArrayList<>();
            for (Tree.Entry named : names.once().entries()) {
                written.addAll(section.equals(NODES) ? node(named) : panel(named));
            }
            return new Tree.Entry(entry.key(), new Tree.Mapping(written, names.place()));
        });
    }

    private List<Tree.Entry> node(Tree.Entry node) {
        if (!(node.value() instanceof Tree.Mapping keys)) {
            return List.of(node);
        }
        Optional<Tree.Entry> several = keys.get(NodeKeys.ADDRESSES.name());
        Optional<Tree.Entry> one = keys.get(NodeKeys.ADDRESS.name());
        if (several.isEmpty()) {
            return List.of(node);
        }
        if (one.isPresent()) {
            String fix = "delete one; addresses: makes one node of each, address: is for a single one";
            report.at(several.get().value(), "addresses", PitCode.CONFLICT, "address or addresses, not both", fix);
        }
        Optional<NodeKeys.Addresses> range =
                NodeKeys.ADDRESSES.type().read(several.get().value(), "addresses", new Report());
        if (one.isPresent() || range.isEmpty()) {
            open.add(keys.place());
            unread.add(node.key().text());
            return List.of(node);
        }
        ranges.put(node.key().text(), range.get());
        List<Tree.Entry> nodes = new ArrayList<>();
        for (int address = range.get().first(); address <= range.get().last(); address++) {
            Tree.Scalar number = new Tree.Scalar(
                    Integer.toString(address), false, several.get().value().place());
            List<Tree.Entry> own = new ArrayList<>();
            for (Tree.Entry entry : keys.entries()) {
                own.add(
                        entry.equals(several.get())
                                ? new Tree.Entry(
                                        new Tree.Scalar(
                                                "address", false, entry.key().place()),
                                        number)
                                : marked(entry, number.text()));
            }
            nodes.add(new Tree.Entry(name(node.key(), number.text()), new Tree.Mapping(own, keys.place())));
        }
        return nodes;
    }

    private List<Tree.Entry> panel(Tree.Entry panel) {
        if (!(panel.value() instanceof Tree.Mapping written)) {
            return List.of(panel);
        }
        String node = written.get(PanelKeys.NODE.name())
                .filter(entry -> entry.value() instanceof Tree.Scalar)
                .map(entry -> ((Tree.Scalar) entry.value()).text())
                .orElse("");
        if (unread.stream().anyMatch(name -> (node + " ").startsWith(name + " "))) {
            // what it is on cannot be said before the range is mended
            return List.of();
        }
        NodeKeys.Addresses range = ranges.get(node);
        if (range == null) {
            return List.of(panel);
        }
        List<Tree.Entry> panels = new ArrayList<>();
        for (int address = range.first(); address <= range.last(); address++) {
            String number = Integer.toString(address);
            Tree.Mapping keys = written.map(entry -> entry.key().text().equals(PanelKeys.NODE.name())
                    ? new Tree.Entry(entry.key(), numbered((Tree.Scalar) entry.value(), number))
                    : marked(entry, number));
            panels.add(new Tree.Entry(name(panel.key(), number), keys));
        }
        return panels;
    }

    /** The name of one of several, which nothing else may have. */
    private Tree.Scalar name(Tree.Scalar of, String number) {
        Tree.Scalar name = numbered(of, number);
        Tree.Scalar other = taken.putIfAbsent(name.text(), name);
        if (other != null) {
            String found = of.found() + ", one of which is " + name.text();
            String fix = "give one of them another name; " + other.text() + " stands in " + other.line(of) + " too";
            report.at(of, of.text(), PitCode.DUPLICATE_NAME, found, "names that nothing else has", fix);
        }
        return name;
    }

    private static Tree.Scalar numbered(Tree.Scalar name, String number) {
        String text = name.text().contains(MARK) ? name.text().replace(MARK, number) : name.text() + " " + number;
        return new Tree.Scalar(text, name.quoted(), name.place());
    }

    private static Tree.Entry marked(Tree.Entry entry, String number) {
        return new Tree.Entry(marked(entry.key(), number), marked(entry.value(), number));
    }

    private static Tree.Scalar marked(Tree.Scalar scalar, String number) {
        return scalar.text().contains(MARK)
                ? new Tree.Scalar(scalar.text().replace(MARK, number), scalar.quoted(), scalar.place())
                : scalar;
    }

    private static Tree marked(Tree tree, String number) {
        if (tree instanceof Tree.Scalar scalar) {
            return marked(scalar, number);
        }
        if (tree instanceof Tree.Sequence list) {
            return new Tree.Sequence(
                    list.items().stream().map(item -> marked(item, number)).toList(), list.place());
        }
        if (tree instanceof Tree.Mapping mapping) {
            return mapping.map(entry -> marked(entry, number));
        }
        throw new AssertionError(tree);
    }
}
