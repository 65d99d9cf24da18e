package dropline.harness.baseline;

/** What a figure is of. */
public record Subject(Kind kind, String name) implements Comparable<Subject> {

    /** What can be followed. */
    public enum Kind {
        SEGMENT("segments", "segment"),
        NODE("nodes", "board"),
        PANEL("panels", "panel"),
        CONTROL("controls", "control");

        private final String group;
        private final String word;

        Kind(String group, String word) {
            this.group = group;
            this.word = word;
        }

        /** How a file calls all of them. */
        String group() {
            return group;
        }

        /** One of them, for people. */
        public String word() {
            return word;
        }
    }

    @Override
    public int compareTo(Subject other) {
        int kinds = kind.compareTo(other.kind);
        return kinds != 0 ? kinds : name.compareTo(other.name);
    }

    @Override
    public String toString() {
        return kind.word() + " " + name;
    }
}
