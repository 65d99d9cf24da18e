package dropline.harness.pitfile;

import dropline.harness.yaml.Place;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** A group of keys as written: values already read, places kept. */
final class Block {
    private final Section section;
    private final Tree.Scalar name;
    private final boolean whole;
    private final Map<String, Object> values = new LinkedHashMap<>();
    private final Map<String, Tree> places = new LinkedHashMap<>();
    private final Map<String, List<Block>> blocks = new LinkedHashMap<>();
    private final List<Written> figures = new ArrayList<>();

    /**
     * A figure as written.
     *
     * @param text without its origin
     */
    record Written(String key, String text, Origin origin, Place place) {}

    /**
     * @param name the key it stands under, or its own name where it is one of several
     * @param whole whether all it is like is known
     */
    Block(Section section, Tree.Scalar name, boolean whole) {
        this.section = section;
        this.whole = whole;
        this.name = name;
    }

    void put(Key<?> key, Tree at, Object value) {
        places.put(key.name(), at);
        values.put(key.name(), value);
    }

    /** Notes that a key was written, though its value could not be read. */
    void putUnread(Key<?> key, Tree at) {
        places.put(key.name(), at);
    }

    /** Notes a figure with its origin. */
    void put(Written figure) {
        figures.add(figure);
    }

    /** The figures written in this group and in those inside it. */
    void figures(Consumer<Written> sink) {
        figures.forEach(sink);
        blocks.values().forEach(named -> named.forEach(block -> block.figures(sink)));
    }

    private boolean holds(Place figure) {
        for (Written written : figures) {
            if (written.place().equals(figure)) {
                return true;
            }
        }
        for (List<Block> named : blocks.values()) {
            for (Block block : named) {
                if (block.holds(figure)) {
                    return true;
                }
            }
        }
        return false;
    }

    /**
     * The same group with one figure scaled, wherever in it that is used; groups without it are shared. A figure that
     * cannot be scaled is reported.
     */
    Block scaled(Place figure, Scale scale, Report report) {
        if (!holds(figure)) {
            return this;
        }
        Block scaled = new Block(section, name, whole);
        scaled.values.putAll(values);
        scaled.places.putAll(places);
        scaled.figures.addAll(figures);
        blocks.forEach((child, named) -> scaled.blocks.put(
                child, named.stream().map(b -> b.scaled(figure, scale, report)).toList()));
        for (Key<?> key : section.keys()) {
            if (key.isFigure() && has(key) && at(key).place().equals(figure)) {
                scaled.scale(key, scale, report);
            }
        }
        return scaled;
    }

    private <T> void scale(Key<T> key, Scale scale, Report report) {
        Optional<T> value = written(key).flatMap(v -> key.type().scaled(v, scale));
        if (value.isPresent()) {
            values.put(key.name(), value.get());
        } else {
            report.at(at(key), key.name(), PitCode.OUT_OF_RANGE, key.type().words(), null);
        }
    }

    void put(Section child, Block block) {
        blocks.computeIfAbsent(child.name(), n -> new ArrayList<>()).add(block);
    }

    String name() {
        return name.text();
    }

    Tree.Scalar nameAt() {
        return name;
    }

    Section section() {
        return section;
    }

    /** Whether all it is like is known; where it is not, nobody can say what is missing in it. */
    boolean isWhole() {
        return whole;
    }

    /** Whether the key was written, readable or not. */
    boolean has(Key<?> key) {
        return places.containsKey(key.name());
    }

    /** Where the value was written; where it was not, the name of the group. */
    Tree at(Key<?> key) {
        Tree at = places.get(key.name());
        return at == null ? name : at;
    }

    /** The value written, else the one that stands in for it; empty where there is neither. */
    <T> Optional<T> get(Key<T> key) {
        if (has(key)) {
            return written(key);
        }
        String standard = key.standard();
        if (standard == null) {
            return Optional.empty();
        }
        Optional<T> value = key.type().read(new Tree.Scalar(standard, true, name.place()), key.name(), new Report());
        if (value.isEmpty()) {
            throw new AssertionError(
                    "a key's standing value must be readable: key=" + key.name() + " value=" + standard);
        }
        return value;
    }

    /** The value written; empty where none is, or none that could be read. */
    @SuppressWarnings("unchecked") // put only by BlockReader, with the key's own type
    <T> Optional<T> written(Key<T> key) {
        return Optional.ofNullable((T) values.get(key.name()));
    }

    /** Where a figure comes from that was written in this group. */
    Origin origin(Key<?> key) {
        return at(key) instanceof Tree.Scalar scalar
                ? Stated.of(scalar, key.name(), new Report())
                        .map(Stated::origin)
                        .orElse(Origin.UNSTATED)
                : Origin.UNSTATED;
    }

    /** A value that is known to be there, once a file has no problems. */
    <T> T value(Key<T> key) {
        return get(key).orElseThrow(() -> new AssertionError("a key must have been checked: key=" + key.name()));
    }

    /** The group of this section, if written. */
    Optional<Block> block(Section child) {
        List<Block> found = blocks(child);
        return found.isEmpty() ? Optional.empty() : Optional.of(found.get(0));
    }

    /** The groups of this section in the order written. */
    List<Block> blocks(Section child) {
        return blocks.getOrDefault(child.name(), List.of());
    }

    /** A group in which nothing is written, where this one has none. */
    Block blockOrEmpty(Section child) {
        return block(child).orElseGet(() -> new Block(child, name, whole));
    }
}
