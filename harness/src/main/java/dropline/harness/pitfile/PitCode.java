package dropline.harness.pitfile;

/** What can be wrong with a pit file; each is a page of {@code docs/problems}. */
enum PitCode {
    NO_SUCH_FILE("the file cannot be read"),
    EMPTY_FILE("the file holds no keys"),
    OTHER_FILE("the file is of another sort"),
    NOT_UTF8("a byte is not UTF-8 text"),
    TAB_IN_INDENT("a line is indented with a tab"),
    BAD_YAML("the text is no YAML 1.2"),
    ALIAS_USED("an anchor or alias stands in the file"),
    TOO_DEEP("groups are nested too deeply"),
    UNKNOWN_KEY("no such key here"),
    DUPLICATE_KEY("a key stands twice"),
    MISSING_KEY("a key that must be there is missing"),
    UNUSED_KEY("a key has no meaning here"),
    CONFLICT("two keys exclude each other"),
    WRONG_TYPE("a value of another kind is needed"),
    MISSING_UNIT("a quantity has no unit"),
    WRONG_UNIT("a quantity has another unit than is needed"),
    OUT_OF_RANGE("a value is too small or too large"),
    IMPOSSIBLE_RANGE("a range ends before it begins"),
    UNKNOWN_NAME("nothing has this name"),
    DUPLICATE_NAME("two parts have the same name"),
    CIRCULAR("something is like itself, or a file includes itself"),
    ADDRESS_CLASH("two nodes of a segment have the same address"),
    NUMBER_CLASH("two signals or controls have the same number"),
    REGISTER_CLASH("two values lie in the same Modbus register"),
    DOES_NOT_FIT("a node cannot be spoken to in this protocol's frames"),
    EMPTY_SEGMENT("a segment has no node"),
    HUB_SHARED("two segments hang on a hub that carries one conversation"),
    NOT_ALONE("two nodes are on a segment that is straight on USB"),
    WRONG_ORDER("an order on the cable is not each node of the segment once");

    private final String words;

    PitCode(String words) {
        this.words = words;
    }

    /** What it means, in a few words. */
    String words() {
        return words;
    }
}
