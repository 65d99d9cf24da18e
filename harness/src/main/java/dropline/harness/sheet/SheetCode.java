package dropline.harness.sheet;

/** What can be wrong with a spreadsheet of panels. */
enum SheetCode {
    NO_TEXT,
    NO_HEADINGS,
    DUPLICATE_HEADING,
    UNREADABLE_ROW,
    NO_PANEL_NAME,
    BAD_ADDRESS,
    BAD_CURRENT,
    BAD_STATUS,
    BAD_LIST,
    ADDRESS_CLASH
}
