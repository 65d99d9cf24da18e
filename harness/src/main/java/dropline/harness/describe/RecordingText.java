package dropline.harness.describe;

import dropline.harness.describe.ColumnSummary.Kind;
import dropline.harness.describe.RecordingSummary.ControlSummary;
import dropline.harness.describe.RecordingSummary.Pause;
import java.util.List;

/** A recording's summary in words and tables. */
public final class RecordingText {
    private RecordingText() {}

    /** Sentences first, then columns, then controls. Lines end in {@code \n}. */
    public static String of(RecordingSummary summary) {
        StringBuilder text = new StringBuilder(summary.file()).append(": ");
        text.append(Figures.time(summary.lastsNanos())).append(", ");
        text.append(count(summary.states(), "state")).append(", ");
        text.append(count(summary.columns().size(), "column")).append(", ");
        text.append(count(summary.controls().size(), "control")).append(".\n");
        times(text, summary);
        pauses(text, summary);
        still(text, summary);
        columns(text, summary.columns());
        controls(text, summary.controls());
        return text.toString();
    }

    private static void times(StringBuilder text, RecordingSummary summary) {
        if (summary.states() > 1 && summary.lastsNanos() > 0) {
            double rate = (summary.states() - 1) * 1e9 / summary.lastsNanos();
            text.append("On average ").append(Figures.number(rate)).append(" states a second; as a rule one every ");
            text.append(Figures.time(rounded(summary.periodNanos()))).append(".\n");
        }
        text.append("Its times begin at ").append(Figures.seconds(summary.firstNanos()));
        text.append(summary.unit().isEmpty() ? ".\n" : "; they were taken for " + summary.unit() + ".\n");
    }

    /** To three digits, as far as the histogram goes. */
    private static double rounded(long nanos) {
        return Figures.digits(nanos, 3);
    }

    private static void pauses(StringBuilder text, RecordingSummary summary) {
        if (summary.pauses() == 0) {
            return;
        }
        text.append(count(summary.pauses(), "pause")).append(" of more than five times that, the longest: ");
        List<String> longest =
                summary.longest().stream().map(RecordingText::pause).toList();
        text.append(String.join(", ", longest)).append(".\n");
    }

    private static String pause(Pause pause) {
        return Figures.time(Figures.digits(pause.lastsNanos(), 3)) + " after " + Figures.seconds(pause.atNanos());
    }

    private static void still(StringBuilder text, RecordingSummary summary) {
        long still = summary.columns().stream()
                .filter(column -> column.kind() == Kind.NEVER_MOVES)
                .count();
        if (still > 0) {
            text.append(count(still, "column")).append(still == 1 ? " never moves.\n" : " never move.\n");
        }
    }

    private static void columns(StringBuilder text, List<ColumnSummary> columns) {
        Table table = new Table(
                "column", "looks like", "unit", "least", "greatest", "changes/s", "largest jump", "smallest step");
        for (ColumnSummary column : columns) {
            boolean still = column.kind() == Kind.NEVER_MOVES;
            table.row(
                    column.name(),
                    Figures.words(column.kind()) + (column.wraps() ? ", wraps" : ""),
                    column.unit(),
                    Figures.value(column.least()),
                    Figures.value(column.greatest()),
                    still ? "" : Figures.value(Figures.digits(column.perSecond(), 3)),
                    still ? "" : Figures.value(column.largestJump()),
                    still ? "" : Figures.value(column.smallestStep()));
        }
        section(text, "Columns", table);
    }

    private static void controls(StringBuilder text, List<ControlSummary> controls) {
        Table table = new Table("control", "moves", "least", "greatest");
        for (ControlSummary control : controls) {
            table.row(
                    control.name(),
                    Long.toString(control.moves()),
                    Integer.toString(control.least()),
                    Integer.toString(control.greatest()));
        }
        section(text, "Controls", table);
    }

    private static void section(StringBuilder text, String heading, Table table) {
        if (!table.isEmpty()) {
            text.append('\n').append(heading).append("\n\n").append(table.text());
        }
    }

    private static String count(long count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }
}
