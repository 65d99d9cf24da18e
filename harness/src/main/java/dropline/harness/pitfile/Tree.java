package dropline.harness.pitfile;

import java.util.List;

/** A YAML document with its places: lines and columns count from 1. */
sealed interface Tree {

    int line();

    int column();

    /** What a person would recognise as this part, shortened: the text of a scalar, the kind of anything else. */
    String found();

    /**
     * A piece of text.
     *
     * @param quoted whether it stood in quotes or as a block
     */
    record Scalar(String text, boolean quoted, int line, int column) implements Tree {
        private static final int LONGEST = 60;

        /** Whether nothing was written. */
        boolean isNothing() {
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
    record Mapping(List<Entry> entries, int line, int column) implements Tree {
        public Mapping {
            entries = List.copyOf(entries);
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
    record Sequence(List<Tree> items, int line, int column) implements Tree {
        public Sequence {
            items = List.copyOf(items);
        }

        @Override
        public String found() {
            return "a list of " + items.size();
        }
    }
}
