package dropline.harness.layout;

/** What can be wrong with a layout file's text beside its keys; what can be with the layout is {@code Flaw.Code}'s. */
enum LayoutCode {
    CONFLICT("two keys exclude each other"),
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
