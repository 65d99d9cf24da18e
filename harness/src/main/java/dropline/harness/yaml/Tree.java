package dropline.harness.yaml;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** A YAML document, each part with its place. */
public sealed interface Tree {

    Place place();

    /** Its line in words, for somebody who looks at {@code here}: {@code line 8}, or {@code line 8 of left.yaml}. */
    default String line(Tree here) {
        return place().seenFrom(here.place());
    }

    /** What a person would recognise as this part, shortened: the text of a scalar, the kind of anything else. */
    String found();

    /**
     * A piece of text.
     *
     * @param quoted whether it stood in quotes or as a block
     */
    record Scalar(String text, boolean quoted, Place place) implements Tree {
        private static final int LONGEST = 60;

        /** Whether nothing was written. */
        public boolean isNothing() {
            return text.isEmpty() && !quoted;
        }

        @Override
        public String found() {
            String plain = text.replace("\n", "\\n").replace("\r", "\\r").replace("\t", "\\t");
            String shown = plain.length() > LONGEST ? plain.substring(0, LONGEST) + "..." : plain;
            return isNothing() ? "nothing" : quoted ? '"' + shown + '"' : shown;
        }
    }

    /** Keys and values in the order written; a key may stand twice. */
    record Mapping(List<Entry> entries, Place place) implements Tree {
        public Mapping {
            entries = List.copyOf(entries);
        }

        /** The first entry of this key. */
        public Optional<Entry> get(String key) {
            return entries.stream().filter(e -> e.key().text().equals(key)).findFirst();
        }

        /** The same without these keys. */
        public Mapping without(Collection<String> keys) {
            return new Mapping(
                    entries.stream().filter(e -> !keys.contains(e.key().text())).toList(), place);
        }

        /** The same with each entry made into another. */
        public Mapping map(UnaryOperator<Entry> change) {
            return new Mapping(entries.stream().map(change).toList(), place);
        }

        /** The same with each key once: its first. */
        public Mapping once() {
            Map<String, Entry> first = new LinkedHashMap<>();
            entries.forEach(e -> first.putIfAbsent(e.key().text(), e));
            return first.size() == entries.size() ? this : new Mapping(List.copyOf(first.values()), place);
        }

        @Override
        public String found() {
            return entries.isEmpty()
                    ? "a group without keys"
                    : "a group of keys that starts with " + entries.get(0).key().text();
        }
    }

    /** One key and its value. */
    record Entry(Scalar key, Tree value) {}

    /** A list. */
    record Sequence(List<Tree> items, Place place) implements Tree {
        public Sequence {
            items = List.copyOf(items);
        }

        @Override
        public String found() {
            return "a list of " + items.size();
        }
    }
}
