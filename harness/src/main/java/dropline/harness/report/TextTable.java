package dropline.harness.report;

import java.util.ArrayList;
import java.util.List;

/** Columns of text, each as wide as its widest cell; figures to the right. */
public final class TextTable {
    private final List<Boolean> right = new ArrayList<>();
    private final List<List<String>> rows = new ArrayList<>();

    /** @param headers one for each column; one that starts with {@code >} is set to the right */
    public TextTable(String... headers) {
        List<String> titles = new ArrayList<>();
        for (String header : headers) {
            boolean figures = header.startsWith(">");
            right.add(figures);
            titles.add(figures ? header.substring(1) : header);
        }
        rows.add(List.copyOf(titles));
    }

    /** Adds a row with a cell for each column. */
    public void row(String... cells) {
        if (cells.length != right.size()) {
            throw new IllegalArgumentException(
                    "a row needs a cell for each column: cells=" + cells.length + " columns=" + right.size());
        }
        rows.add(List.of(cells));
    }

    /** Whether nothing but the headers is there. */
    public boolean isEmpty() {
        return rows.size() == 1;
    }

    /** The table, each line indented by two, an end of line after each. */
    public String text() {
        int columns = right.size();
        int[] widths = new int[columns];
        for (List<String> row : rows) {
            for (int c = 0; c < columns; c++) {
                widths[c] = Math.max(widths[c], length(row.get(c)));
            }
        }
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int c = 0; c < columns; c++) {
                String gap = " ".repeat(widths[c] - length(row.get(c)));
                line.append("  ").append(right.get(c) ? gap + row.get(c) : row.get(c) + gap);
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }

    private static int length(String cell) {
        return cell.codePointCount(0, cell.length());
    }
}
