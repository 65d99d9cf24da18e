package dropline.harness.layout;

/** What can be wrong with a layout file's text; what can be wrong with the layout is {@code Flaw.Code}'s. */
enum LayoutCode {
    UNKNOWN_KEY("no such key here"),
    DUPLICATE_KEY("a key stands twice"),
    MISSING_KEY("a key that must be there is missing"),
    CONFLICT("two keys exclude each other"),
    WRONG_TYPE("a value of another kind is needed"),
    OUT_OF_RANGE("a value is too small or too large"),
    UNKNOWN_NAME("nothing has this name"),
    AMBIGUOUS_CHECK("different checks are called by this name"),
    AMBIGUOUS_FIELD("two fields of the frame have this name");

    private final String words;

    LayoutCode(String words) {
        this.words = words;
    }

    /** What it means, in a few words. */
    String words() {
        return words;
    }
}
