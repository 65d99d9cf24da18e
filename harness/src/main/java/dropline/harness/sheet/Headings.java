package dropline.harness.sheet;

import dropline.harness.problem.Nearest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Which column of a spreadsheet is which. */
final class Headings {
    private final List<String> heads;
    private final Map<Column, Integer> index = new EnumMap<>(Column.class);

    /** @param heads what stands in the first row */
    Headings(List<String> heads) {
        this.heads = List.copyOf(heads);
        for (int i = 0; i < heads.size(); i++) {
            int at = i;
            Column.of(heads.get(i)).ifPresent(column -> index.putIfAbsent(column, at));
        }
    }

    /** Whether a row reads like headings: it names the panel and another column, or three others. */
    boolean areHeadings() {
        return index.containsKey(Column.PANEL) && index.size() >= 2 || index.size() >= 3;
    }

    /** Whether it might be headings, if no row reads better. */
    boolean mayBeHeadings() {
        return index.containsKey(Column.PANEL);
    }

    /** Heads that no column has, each with the column it is spelt most like. */
    List<String> others() {
        List<String> others = new ArrayList<>();
        for (int i = 0; i < heads.size(); i++) {
            String head = heads.get(i).strip();
            if (!head.isEmpty() && !index.containsValue(i)) {
                List<String> known = Arrays.stream(Column.values())
                        .filter(column -> !index.containsKey(column))
                        .map(Column::head)
                        .toList();
                others.add(head
                        + Nearest.to(head, known)
                                .map(near -> " (did you mean " + near + "?)")
                                .orElse(""));
            }
        }
        return others;
    }

    boolean has(Column column) {
        return index.containsKey(column);
    }

    /** The cell of a column in a row, stripped; empty where the row has none. */
    String cell(List<String> row, Column column) {
        Integer at = index.get(column);
        return at == null || at >= row.size() ? "" : row.get(at).strip();
    }

    /** The column's number, from 1. */
    int number(Column column) {
        return index.getOrDefault(column, -1) + 1;
    }

    /** The column's head as written. */
    String head(Column column) {
        Integer at = index.get(column);
        return at == null ? column.head() : heads.get(at);
    }

    /** A column's head that an earlier one has too; null where there is none. */
    @Nullable
    Column doubled() {
        for (int i = 0; i < heads.size(); i++) {
            Column column = Column.of(heads.get(i)).orElse(null);
            if (column != null && index.getOrDefault(column, i) != i) {
                return column;
            }
        }
        return null;
    }

    /** What stands in columns of other names, as {@code head: text}. */
    List<String> notes(List<String> row) {
        return IntStream.range(0, row.size())
                .filter(i -> !row.get(i).isBlank() && !index.containsValue(i))
                .mapToObj(i -> (i < heads.size() && !heads.get(i).isBlank()
                                ? heads.get(i).strip() + ": "
                                : "")
                        + row.get(i).strip().replaceAll("\\s+", " "))
                .toList();
    }
}
