package dropline.harness.diff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The outcome of comparing two traces.
 *
 * @param events how many events both have alike before they differ, or in all
 * @param divergence where they differ first, in plain words, a line each; empty if they do not
 */
public record TraceDiff(long events, List<String> divergence) {
    public TraceDiff {
        divergence = List.copyOf(divergence);
    }

    /** Whether both have the same events. */
    public boolean same() {
        return divergence.isEmpty();
    }

    /**
     * Compares two traces; holds a line of each at a time.
     *
     * @throws TraceException if one is no trace, or they are not of the same pit
     * @throws IOException if a file cannot be read
     */
    public static TraceDiff of(Path first, Path second) throws IOException {
        try (TraceReader one = new TraceReader(first);
                TraceReader two = new TraceReader(second)) {
            mustMatch(first, one.head().pit(), second, two.head().pit());
            long events = 0;
            while (true) {
                TraceLine a = one.next();
                TraceLine b = two.next();
                if (a == null && b == null) {
                    return new TraceDiff(events, List.of());
                }
                if (a == null || b == null || !a.text().equals(b.text())) {
                    Side left = new Side(first, one, a);
                    Side right = new Side(second, two, b);
                    return new TraceDiff(events, words(left, right));
                }
                events++;
            }
        }
    }

    /** One of the two, where they differ. */
    private record Side(
            Path file, TraceReader reader, @Nullable TraceLine line) {
        long atNanos() {
            return line == null ? Long.MAX_VALUE : line.atNanos();
        }

        /** What it has at the instant at which the two part. */
        String has(long atNanos, TraceLine other) {
            EventWords words = new EventWords(reader.head());
            if (line == null) {
                return "ends here";
            }
            String where = " (line " + reader.lineNumber() + ")";
            boolean here = line.atNanos() == atNanos && line.segment() == other.segment();
            if (here) {
                return words.of(line) + where;
            }
            return "nothing then; its next event is at " + EventWords.seconds(line.atNanos()) + " on segment "
                    + words.segment(line) + ": " + words.of(line) + where;
        }
    }

    private static List<String> words(Side left, Side right) {
        Side earlier = comesFirst(left, right) ? left : right;
        TraceLine line = earlier.line();
        if (line == null) {
            throw new AssertionError("one of the two must go on");
        }
        String segment = new EventWords(earlier.reader().head()).segment(line);
        String one = left.reader().head().seed();
        String two = right.reader().head().seed();
        List<String> said = new ArrayList<>(List.of(
                "They differ at " + EventWords.seconds(line.atNanos()) + " on segment " + segment + ":",
                "  " + left.file() + ": " + left.has(line.atNanos(), line),
                "  " + right.file() + ": " + right.has(line.atNanos(), line)));
        if (!one.equals(two)) {
            said.add("They are runs of different seeds: " + one + " and " + two + ".");
        }
        return said;
    }

    private static boolean comesFirst(Side left, Side right) {
        if (left.atNanos() != right.atNanos()) {
            return left.atNanos() < right.atNanos();
        }
        TraceLine a = left.line();
        TraceLine b = right.line();
        return b == null || a != null && a.segment() <= b.segment();
    }

    private static void mustMatch(Path first, List<String> one, Path second, List<String> two) throws TraceException {
        for (int i = 0; i < Math.max(one.size(), two.size()); i++) {
            String a = i < one.size() ? one.get(i) : "nothing more";
            String b = i < two.size() ? two.get(i) : "nothing more";
            if (!a.equals(b)) {
                throw new TraceException("these traces are not of the same pit: the head of " + first + " has '" + a
                        + "', that of " + second + " has '" + b + "'");
            }
        }
    }
}
