package dropline.harness.fault;

import java.util.List;

/** The catalogue as plain text, for a terminal. */
public final class CatalogueText {
    private static final int WIDTH = 96;
    private static final int MARK = 12;

    private final StringBuilder text = new StringBuilder();

    private CatalogueText() {}

    /** Some entries, an empty line between two. */
    public static String of(List<Entry> entries) {
        CatalogueText page = new CatalogueText();
        entries.forEach(page::entry);
        return page.text.toString();
    }

    private void entry(Entry entry) {
        if (text.length() > 0) {
            text.append('\n');
        }
        text.append(entry.kind().word()).append('\n');
        line("what", entry.what());
        line("strikes", entry.strikes() + "; " + entry.usualRate() + " unless said");
        if (!entry.usualAmount().isEmpty()) {
            line("usually by", entry.usualAmount());
        }
        line("you see", entry.see());
        for (Entry.Sighting sighting : entry.sightings()) {
            line(sighting.witness(), sighting.words());
        }
        line("inject", "--fault \"" + entry.inject() + "\"");
        entry.cautions().forEach(caution -> line("CAUTION", caution));
    }

    /** Wraps at spaces; further lines stand below the first one's words. */
    private void line(String mark, String words) {
        StringBuilder line = new StringBuilder("  ").append(mark);
        line.append(" ".repeat(Math.max(1, MARK - mark.length())));
        String indent = " ".repeat(line.length());
        boolean first = true;
        for (String word : words.split(" ", -1)) {
            if (!first && line.length() + 1 + word.length() > WIDTH) {
                text.append(line).append('\n');
                line = new StringBuilder(indent);
                first = true;
            }
            line.append(first ? "" : " ").append(word);
            first = false;
        }
        text.append(line).append('\n');
    }
}
