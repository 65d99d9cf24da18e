package dropline.harness.pitfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A group of keys of the pit file.
 *
 * @param name the key it stands under
 * @param shape whether it stands there once or once for every name
 * @param doc for the reference page
 * @param keys its keys
 * @param sections the groups inside it
 * @param shorthand the key that is meant where a plain value stands in place of the group; null where none may
 * @param shelf where what it may be like stands; null where it cannot be like anything
 * @param need whether it must be there
 */
record Section(
        String name,
        Shape shape,
        String doc,
        List<Key<?>> keys,
        List<Section> sections,
        @Nullable Key<?> shorthand,
        @Nullable Shelf shelf,
        Key.Need need) {

    /** How a group stands under its key. */
    enum Shape {
        ONE,
        NAMED
    }

    Section {
        keys = List.copyOf(keys);
        sections = List.copyOf(sections);
    }

    static Section one(String name, String doc, List<Key<?>> keys, Section... sections) {
        return new Section(name, Shape.ONE, doc, keys, List.of(sections), null, null, Key.Need.OPTIONAL);
    }

    static Section named(String name, String doc, List<Key<?>> keys, Section... sections) {
        return new Section(name, Shape.NAMED, doc, keys, List.of(sections), null, null, Key.Need.OPTIONAL);
    }

    Section required() {
        return new Section(name, shape, doc, keys, sections, shorthand, shelf, Key.Need.REQUIRED);
    }

    /** The same group, which may be like something: {@code like: NAME}. */
    Section like(Shelf from) {
        List<Key<?>> more = new ArrayList<>(List.of(BusKeys.LIKE));
        more.addAll(keys);
        return new Section(name, shape, doc, more, sections, null, from, need);
    }

    /** The same group, for which the name of its like may stand: {@code profile: NAME}. */
    Section orName() {
        return new Section(name, shape, doc, keys, sections, BusKeys.LIKE, shelf, need);
    }

    /** The same group, for which the value of one of its keys may stand. */
    Section orJust(Key<?> key) {
        return new Section(name, shape, doc, keys, sections, key, shelf, need);
    }

    /** The same group under other words. */
    Section as(String otherDoc) {
        return new Section(name, shape, otherDoc, keys, sections, shorthand, shelf, Key.Need.OPTIONAL);
    }

    /** What one of several is called: {@code profile} for {@code profiles}, {@code supply} for {@code supplies}. */
    String each() {
        return name.endsWith("ies") ? name.substring(0, name.length() - 3) + "y" : name.substring(0, name.length() - 1);
    }

    Optional<Key<?>> key(String keyName) {
        for (Key<?> key : keys) {
            if (key.name().equals(keyName)) {
                return Optional.of(key);
            }
        }
        return Optional.empty();
    }

    Optional<Section> section(String sectionName) {
        for (Section section : sections) {
            if (section.name().equals(sectionName)) {
                return Optional.of(section);
            }
        }
        return Optional.empty();
    }

    /** Everything that may be written here. */
    List<String> names() {
        List<String> names =
                new ArrayList<>(keys.stream().<String>map(Key::name).toList());
        sections.forEach(s -> names.add(s.name()));
        return names;
    }
}
