package dropline.harness.finding;

import dropline.bus.fault.FaultKind;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Injected faults against what was named, counted; a page of the manual. */
final class Confusion {
    private static final int MOST_SHOWN = 4;

    private final Tiers tiers;
    private final Map<FaultKind, Row> rows = new EnumMap<>(FaultKind.class);
    private int healthy;
    private final List<String> falseAlarms = new ArrayList<>();

    private static final class Row {
        int runs;
        int unseen;
        int right;
        int nothing;
        final Map<String, Integer> named = new TreeMap<>();
        final Map<String, Integer> wrong = new TreeMap<>();
    }

    Confusion(Tiers tiers) {
        this.tiers = tiers;
    }

    /** The class a fault belongs to: the test's own knowledge, and the only place where the two meet. */
    static Cause cause(FaultKind kind) {
        return Cause.valueOf(kind.name());
    }

    void healthy(long seed, List<Finding> found) {
        healthy++;
        if (!found.isEmpty()) {
            falseAlarms.add("seed " + seed + ": " + label(found.get(0)));
        }
    }

    /** @param seen whether the fault changed anything that this way of looking can see */
    void add(Injection injection, boolean seen, List<Finding> found) {
        Row row = rows.computeIfAbsent(injection.fault().kind(), kind -> new Row());
        row.runs++;
        if (!seen) {
            row.unseen++;
            return;
        }
        if (found.isEmpty()) {
            row.nothing++;
            return;
        }
        Finding first = found.get(0);
        boolean right = first.causes().contains(cause(injection.fault().kind()));
        boolean onIt = first.subject() == injection.subject() && first.part() == injection.part();
        if (right && (onIt || tiers == Tiers.CONTROLLER)) {
            row.right++;
            row.named.merge(label(first), 1, Integer::sum);
        } else {
            row.wrong.merge(label(first) + (right ? " (elsewhere)" : ""), 1, Integer::sum);
        }
    }

    int seen() {
        return rows.values().stream().mapToInt(row -> row.runs - row.unseen).sum();
    }

    int right() {
        return rows.values().stream().mapToInt(row -> row.right).sum();
    }

    int runs() {
        return rows.values().stream().mapToInt(row -> row.runs).sum();
    }

    double share() {
        return (double) right() / seen();
    }

    List<String> falseAlarms() {
        return falseAlarms;
    }

    /** The groups of classes that findings named, numbered in the order of the catalogue. */
    private Map<String, Integer> columns() {
        Map<String, Integer> columns = new LinkedHashMap<>();
        for (Row row : rows.values()) {
            row.named.keySet().forEach(label -> columns.putIfAbsent(label, columns.size() + 1));
        }
        for (Row row : rows.values()) {
            row.wrong
                    .keySet()
                    .forEach(label -> columns.putIfAbsent(label.replace(" (elsewhere)", ""), columns.size() + 1));
        }
        return columns;
    }

    String table() {
        Map<String, Integer> columns = columns();
        StringBuilder text = new StringBuilder();
        text.append("| injected | runs | nothing to see | named right | named (group: "
                + "runs) | wrong (group: runs) | no finding |\n");
        text.append("| --- | ---: | ---: | ---: | --- | --- | ---: |\n");
        rows.forEach((kind, row) -> text.append(String.format(
                Locale.ROOT,
                "| %s | %d | %d | %s | %s | %s | %d |\n",
                kind.word(),
                row.runs,
                row.unseen,
                row.runs == row.unseen ? "-" : row.right + " of " + (row.runs - row.unseen),
                cells(row.named, columns),
                cells(row.wrong, columns),
                row.nothing)));
        text.append(String.format(
                Locale.ROOT,
                "| **healthy** | %d | - | - | - | %d | %d |\n",
                healthy,
                falseAlarms.size(),
                healthy - falseAlarms.size()));
        text.append("\nThe groups:\n\n");
        columns.forEach((label, number) ->
                text.append(number).append(". ").append(label).append('\n'));
        return text.toString();
    }

    private static String cells(Map<String, Integer> counts, Map<String, Integer> columns) {
        if (counts.isEmpty()) {
            return "";
        }
        return counts.entrySet().stream()
                .map(cell -> {
                    String label = cell.getKey().replace(" (elsewhere)", "");
                    String mark = label.equals(cell.getKey()) ? "" : "*";
                    return columns.get(label) + mark + ": " + cell.getValue();
                })
                .collect(Collectors.joining(", "));
    }

    private static String label(Finding finding) {
        List<Cause> causes = finding.causes();
        String shown = causes.stream().limit(MOST_SHOWN).map(Cause::word).collect(Collectors.joining(", "));
        return causes.size() <= MOST_SHOWN
                ? shown
                : shown + " and " + (causes.size() - MOST_SHOWN) + " more ("
                        + causes.stream().skip(MOST_SHOWN).map(Cause::word).collect(Collectors.joining(", ")) + ")";
    }
}
