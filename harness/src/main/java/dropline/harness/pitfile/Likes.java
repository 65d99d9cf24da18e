package dropline.harness.pitfile;

import dropline.harness.yaml.Place;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Writes out what is like something: a group with {@code like: X} becomes X's keys with its own on top, groups inside
 * it key by key. Works on the tree, so that each key keeps the place where it is written. A group inside that names a
 * like of its own stands for itself; nothing of the outer like's group is left in it.
 */
final class Likes {
    private static final String LIKE = BusKeys.LIKE.name();

    private final Report report;
    private final Map<Shelf, Map<String, Tree.Entry>> shelves = new EnumMap<>(Shelf.class);
    private final Set<Place> open = new LinkedHashSet<>();

    private Likes(Report report) {
        this.report = report;
    }

    /**
     * A file with its likes written out.
     *
     * @param root without what was only there to be like
     * @param open the groups whose like leads to nothing, so that nobody can say what they miss
     */
    record Written(Tree.Mapping root, Set<Place> open) {}

    static Written written(Tree.Mapping root, Tree.Mapping presets, Report report) {
        Likes likes = new Likes(report);
        for (Shelf shelf : Shelf.values()) {
            likes.fill(shelf, root, presets);
        }
        for (Shelf shelf : Shelf.values()) {
            shelf.named(root).forEach(entry -> likes.chain(shelf, entry.key(), entry.value()));
        }
        Tree.Scalar name = new Tree.Scalar("", false, root.place());
        return new Written(likes.group(Schema.ROOT, name, root.without(Schema.SHELVES)), likes.open);
    }

    private void fill(Shelf shelf, Tree.Mapping root, Tree.Mapping presets) {
        Map<String, Tree.Entry> byName = new LinkedHashMap<>();
        shelf.named(presets).forEach(entry -> byName.put(entry.key().text(), entry));
        for (Tree.Entry entry : shelf.named(root)) {
            Tree.Entry earlier = byName.putIfAbsent(entry.key().text(), entry);
            if (earlier != null && earlier.key().place().file().equals(Presets.FILE)) {
                String name = entry.key().text();
                String expected = "a name that no preset has";
                report.at(entry.key(), name, PitCode.DUPLICATE_NAME, expected, "give it another name");
            }
        }
        shelves.put(shelf, byName);
    }

    /** One group written out, then the groups inside it. */
    private Tree.Mapping group(Section section, Tree.Scalar name, Tree.Mapping own) {
        Tree.Mapping merged = section.shelf() == null ? own : merged(section, section.shelf(), name, own);
        if (section.section(NodeKeys.BOARD.name()).isPresent()) {
            merged = withUsualProfile(section, merged);
        }
        return merged.map(entry -> section.section(entry.key().text())
                .map(child -> new Tree.Entry(entry.key(), inside(child, entry)))
                .orElse(entry));
    }

    private Tree inside(Section child, Tree.Entry entry) {
        if (child.shape() == Section.Shape.ONE) {
            return one(child, entry);
        }
        return entry.value() instanceof Tree.Mapping names
                ? names.map(named -> new Tree.Entry(named.key(), one(child, named)))
                : entry.value();
    }

    private Tree one(Section section, Tree.Entry entry) {
        Tree.Mapping own = mapping(section, entry.value());
        return own == null ? entry.value() : group(section, entry.key(), own);
    }

    private Tree.Mapping merged(Section section, Shelf shelf, Tree.Scalar name, Tree own) {
        List<Tree.Mapping> chain = chain(shelf, name, own);
        Tree.Mapping merged = chain.get(chain.size() - 1);
        for (int i = chain.size() - 2; i >= 0; i--) {
            merged = merge(section, chain.get(i), merged);
        }
        return merged;
    }

    /** A group and what it is like, nearest first, up to where a like names nothing or leads back. */
    private List<Tree.Mapping> chain(Shelf shelf, Tree.Scalar name, Tree own) {
        List<Tree.Mapping> chain = new ArrayList<>();
        Map<String, Tree.Entry> known = shelves.getOrDefault(shelf, Map.of());
        Tree.Scalar owner = name;
        Tree.@Nullable Mapping next = likeable(own);
        while (next != null) {
            chain.add(next);
            Optional<Tree.Scalar> like = like(next);
            if (like.isEmpty()) {
                break;
            }
            Tree.Entry named = known.get(like.get().text());
            next = null;
            if (named == null) {
                // the key a person wrote: where the name stands in place of the group, the group's own
                boolean alone =
                        like.get().place().equals(chain.get(chain.size() - 1).place());
                open.add(own.place());
                report.unknownName(like.get(), alone ? owner.text() : LIKE, shelf.each(), known.keySet());
            } else {
                owner = named.key();
                next = likeable(named.value());
            }
            if (next != null && chain.contains(next)) {
                open.add(own.place());
                circular(chain.get(0));
                next = null;
            }
        }
        return chain.isEmpty() ? List.of(new Tree.Mapping(List.of(), own.place())) : chain;
    }

    private void circular(Tree.Mapping first) {
        String expected = "likes that end somewhere; this one leads back to itself";
        String fix = "write out the figures of one of them and delete its like:";
        report.at(like(first).orElseThrow(), LIKE, PitCode.CIRCULAR, expected, fix);
    }

    private static Optional<Tree.Scalar> like(Tree.Mapping group) {
        return group.get(LIKE)
                .map(Tree.Entry::value)
                .filter(Tree.Scalar.class::isInstance)
                .map(Tree.Scalar.class::cast)
                .filter(name -> !name.isNothing());
    }

    /** The keys of one group with those of another below them. */
    private static Tree.Mapping merge(Section section, Tree.Mapping over, Tree.Mapping under) {
        Map<String, Tree.Entry> entries = new LinkedHashMap<>();
        under.entries().forEach(entry -> entries.putIfAbsent(entry.key().text(), entry));
        Tree.Mapping once = over.once();
        for (Tree.Entry entry : once.entries()) {
            Tree.Entry below = entries.get(entry.key().text());
            Optional<Section> child = section.section(entry.key().text());
            entries.put(
                    entry.key().text(),
                    below == null || child.isEmpty()
                            ? own(section, entry, below)
                            : new Tree.Entry(entry.key(), mergeInside(child.get(), entry.value(), below.value())));
        }
        return new Tree.Mapping(List.copyOf(entries.values()), over.place());
    }

    /** A key's own value, save where it says to take that of the like. */
    private static Tree.Entry own(Section section, Tree.Entry entry, Tree.@Nullable Entry below) {
        boolean figure = section.key(entry.key().text()).filter(Key::isFigure).isPresent();
        return below != null && figure && Stated.isPreset(entry.value()) ? below : entry;
    }

    private static Tree mergeInside(Section child, Tree over, Tree under) {
        if (child.shape() == Section.Shape.ONE) {
            return mergeOne(child, over, under);
        }
        if (!(over instanceof Tree.Mapping names && under instanceof Tree.Mapping earlier)) {
            return over instanceof Tree.Scalar scalar && scalar.isNothing() ? under : over;
        }
        Map<String, Tree.Entry> entries = new LinkedHashMap<>();
        earlier.entries().forEach(entry -> entries.putIfAbsent(entry.key().text(), entry));
        for (Tree.Entry entry : names.once().entries()) {
            Tree.Entry below = entries.get(entry.key().text());
            Tree value = below == null ? entry.value() : mergeOne(child, entry.value(), below.value());
            entries.put(entry.key().text(), new Tree.Entry(entry.key(), value));
        }
        return new Tree.Mapping(List.copyOf(entries.values()), names.place());
    }

    private static Tree mergeOne(Section section, Tree over, Tree under) {
        Tree.Mapping own = mapping(section, over);
        Tree.Mapping below = mapping(section, under);
        if (own == null
                || below == null
                || (section.shelf() != null && like(own).isPresent())) {
            return over;
        }
        return merge(section, own, below);
    }

    /** A node's profile that is like nothing else is like its board's. */
    private Tree.Mapping withUsualProfile(Section node, Tree.Mapping merged) {
        String profile = BusKeys.PROFILE.name();
        Optional<Tree.Mapping> board = merged.get(NodeKeys.BOARD.name())
                .map(entry -> merged(NodeKeys.BOARD, Shelf.BOARDS, entry.key(), entry.value()));
        Optional<Tree.Entry> usual = board.flatMap(b -> b.get(profile));
        if (usual.isEmpty()) {
            return merged;
        }
        return merge(node, merged, new Tree.Mapping(List.of(usual.get()), merged.place()));
    }

    /** A group's keys; a plain value in place of a group is that of its shorthand, mostly the name of its like. */
    private static Tree.@Nullable Mapping mapping(Section section, Tree tree) {
        if (tree instanceof Tree.Scalar scalar && !scalar.isNothing()) {
            Key<?> shorthand = section.shorthand();
            return shorthand == null ? null : only(shorthand.name(), scalar);
        }
        return likeable(tree);
    }

    private static Tree.Mapping only(String key, Tree.Scalar value) {
        Tree.Scalar name = new Tree.Scalar(key, false, value.place());
        return new Tree.Mapping(List.of(new Tree.Entry(name, value)), value.place());
    }

    private static Tree.@Nullable Mapping likeable(Tree tree) {
        if (tree instanceof Tree.Mapping mapping) {
            return mapping.once();
        }
        if (!(tree instanceof Tree.Scalar scalar)) {
            return null;
        }
        return scalar.isNothing() ? new Tree.Mapping(List.of(), scalar.place()) : only(LIKE, scalar);
    }
}
