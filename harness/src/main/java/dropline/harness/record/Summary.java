package dropline.harness.record;

import dropline.harness.report.Figures;
import java.util.ArrayList;
import java.util.List;

/** What has come of a recording, in sentences; what is nought is not mentioned, unless it is what a person asks for. */
public final class Summary {
    private Summary() {}

    /** The sentences, what matters most first. */
    public static List<String> of(Tally tally) {
        List<String> lines = new ArrayList<>();
        if (tally.states() == 0) {
            lines.add("No state came: " + Figures.plural(tally.received(), tally.unit()) + " received.");
        } else {
            double seconds = tally.lastNanos() / 1e9;
            String rate = seconds < 1 ? "" : ", " + Figures.decimal(tally.states() / seconds, 1) + " states/s";
            lines.add(Figures.plural(tally.states(), "state") + " of "
                    + Figures.plural(tally.names(), "name") + " in " + Figures.duration(tally.lastNanos()) + rate
                    + "; time: " + tally.time() + ".");
        }
        lines.add(Figures.plural(tally.received(), tally.unit()) + " received, " + Figures.count(tally.read()) + " read"
                + leftOut(tally) + ".");
        lines.add(lost(tally));
        if (tally.numbered()) {
            lines.add("Missing by the stream's own numbers: " + Figures.count(tally.missing())
                    + ", those dropped here among them.");
        }
        examples(lines, "Malformed: ", tally.malformedExamples());
        if (tally.noNumbers() > 0) {
            lines.add("Left out for being no number: " + Figures.plural(tally.noNumbers(), "field") + ", as in "
                    + String.join(", ", tally.noNumberExamples()) + ".");
        }
        count(lines, tally.nameless(), "Left out for want of a usable name: ", "field");
        count(lines, tally.jumps(), "The stream's own time was set: ", "time");
        count(lines, tally.outages(), "The connection was lost: ", "time");
        if (tally.forwarded() + tally.notForwarded() > 0) {
            lines.add("Passed on: " + Figures.count(tally.forwarded()) + "; could not be passed on: "
                    + Figures.count(tally.notForwarded()) + ".");
        }
        return lines;
    }

    private static String leftOut(Tally tally) {
        return part(tally.malformed(), "malformed")
                + part(tally.late(), "late and left out")
                + part(tally.repeated(), "repeated and left out");
    }

    private static String part(long count, String what) {
        return count == 0 ? "" : ", " + Figures.count(count) + " " + what;
    }

    private static String lost(Tally tally) {
        String here = "Dropped here for want of room: " + Figures.count(tally.dropped());
        if (tally.systemDrops().isEmpty()) {
            return here + "; by the operating system: not known.";
        }
        long drops = tally.systemDrops().getAsLong();
        return here + "; by the operating system: " + Figures.count(drops) + "."
                + (drops > 0 ? " Its buffer is too small, see docs/record.md." : "");
    }

    private static void examples(List<String> lines, String what, List<String> examples) {
        examples.forEach(example -> lines.add(what + example));
    }

    private static void count(List<String> lines, long count, String what, String unit) {
        if (count > 0) {
            lines.add(what + Figures.plural(count, unit) + ".");
        }
    }
}
