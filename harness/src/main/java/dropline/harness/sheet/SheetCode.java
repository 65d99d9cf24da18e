package dropline.harness.sheet;

/** What can be wrong with a spreadsheet of panels. */
enum SheetCode {
    NO_TEXT("the file is no text: a spreadsheet program's own file, most likely"),
    NO_HEADINGS("no row of headings among the first"),
    DUPLICATE_HEADING("two columns say the same"),
    UNREADABLE_ROW("a row whose quotes cannot be followed"),
    NO_PANEL_NAME("a row without the name of its panel"),
    BAD_ADDRESS("an address that is none"),
    BAD_CURRENT("a current that cannot be read"),
    BAD_STATUS("a status that is none"),
    BAD_LIST("a list of parts that cannot be read"),
    ADDRESS_CLASH("two kinds of board with one address on one segment");

    private final String words;

    SheetCode(String words) {
        this.words = words;
    }

    /** What it means, in a few words. */
    String words() {
        return words;
    }
}
