package dropline.harness.yaml;

/** What can be wrong with keys and values of a {@link Group}. */
public enum KeyCode {
    UNKNOWN_KEY("no such key here"),
    DUPLICATE_KEY("a key stands twice"),
    MISSING_KEY("a key that must be there is missing"),
    WRONG_TYPE("a value of another kind is needed"),
    OUT_OF_RANGE("a value is too small or too large");

    private final String words;

    KeyCode(String words) {
        this.words = words;
    }

    /** What it means, in a few words. */
    public String words() {
        return words;
    }
}
