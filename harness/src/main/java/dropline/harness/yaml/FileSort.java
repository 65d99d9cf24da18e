package dropline.harness.yaml;

/** The sorts of YAML files there are, each told from the others by a key it must have. */
public enum FileSort {
    PIT("segments", "a pit file", "dropline describe reads it"),
    LAYOUT("frames", "the description of a protocol", "dropline layout reads it"),
    DATAGRAM("datagram", "the description of a binary datagram", "dropline record --datagram reads it"),
    SUITE("runs", "a suite file", "dropline check reads it"),
    SIGNALS("signals", "signals alone, a part of a pit file", "name it under include: in a pit file");

    private final String key;
    private final String words;
    private final String use;

    FileSort(String key, String words, String use) {
        this.key = key;
        this.words = words;
        this.use = use;
    }

    /**
     * Whether a file of this sort was asked for and another was given; notes that, so that no key need be looked at.
     */
    public boolean isAnother(Tree root, Report report) {
        if (!(root instanceof Tree.Mapping mapping) || mapping.get(key).isPresent()) {
            return false;
        }
        for (FileSort sort : values()) {
            Tree.Entry told = mapping.get(sort.key).orElse(null);
            // a pit file has signals too, among other keys
            if (told != null && (sort != SIGNALS || mapping.entries().size() == 1)) {
                Tree.Scalar at = told.key();
                String found = at.text() + ", so this is " + sort.words;
                String expected = words + ", which has " + key;
                report.at(at, at.text(), YamlCode.OTHER_FILE, found, expected, sort.use);
                return true;
            }
        }
        return false;
    }
}
