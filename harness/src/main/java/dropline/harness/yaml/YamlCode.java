package dropline.harness.yaml;

/** What can be wrong with the text of any YAML file, whatever its keys. */
public enum YamlCode {
    NO_SUCH_FILE("the file cannot be read"),
    EMPTY_FILE("the file holds no keys"),
    OTHER_FILE("the file is of another sort"),
    NOT_UTF8("a byte is not UTF-8 text"),
    TAB_IN_INDENT("a line is indented with a tab"),
    BAD_YAML("the text is no YAML 1.2"),
    ALIAS_USED("an anchor or alias stands in the file"),
    TOO_DEEP("groups are nested too deeply"),
    UNKNOWN_NAME("nothing has this name");

    private final String words;

    YamlCode(String words) {
        this.words = words;
    }

    /** What it means, in a few words. */
    public String words() {
        return words;
    }
}
