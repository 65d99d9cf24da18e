package dropline.harness.describe;

import java.util.ArrayList;
import java.util.List;

/** Rows of text in columns. The first row is the heading. */
final class Table {
    private static final String BETWEEN = "  ";

    private final List<List<String>> rows = new ArrayList<>();

    Table(String... heading) {
        rows.add(List.of(heading));
    }

    void row(String... cells) {
        if (cells.length != rows.get(0).size()) {
            throw new IllegalArgumentException("a row must have a cell for each column: cells=" + cells.length);
        }
        rows.add(List.of(cells));
    }

    boolean isEmpty() {
        return rows.size() == 1;
    }

    /** The rows, each ended by a line end, a rule below the heading. */
    String text() {
        int columns = rows.get(0).size();
        int[] widths = new int[columns];
        for (List<String> row : rows) {
            for (int c = 0; c < columns; c++) {
                widths[c] = Math.max(widths[c], width(row.get(c)));
            }
        }
        StringBuilder text = new StringBuilder();
        for (int r = 0; r < rows.size(); r++) {
            line(text, rows.get(r), widths);
            if (r == 0) {
                List<String> rule = new ArrayList<>();
                for (int width : widths) {
                    rule.add("-".repeat(width));
                }
                line(text, rule, widths);
            }
        }
        return text.toString();
    }

    private static void line(StringBuilder text, List<String> cells, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int c = 0; c < widths.length; c++) {
            line.append(c == 0 ? "" : BETWEEN).append(cells.get(c));
            line.append(" ".repeat(widths[c] - width(cells.get(c))));
        }
        text.append(line.toString().stripTrailing()).append('\n');
    }

    private static int width(String cell) {
        return cell.codePointCount(0, cell.length());
    }
}
