package dropline.harness.profile;

import dropline.bus.pit.Indicator.Blocks;
import dropline.harness.verdict.Words;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Collects the lines that a firmware prints with {@code dropline_time.h}, whatever else it prints between them:
 * {@code time NAME LONGEST COUNT SPAN loop|interrupts SUM}, times in us, SUM that of the characters before it modulo
 * 256 in two hexadecimal digits.
 */
public final class TimedTasks {
    private static final Pattern LINE =
            Pattern.compile(".*?(time (\\S+) (\\d{1,10}) (\\d{1,5}) (\\d{1,10}) (loop|interrupts) )([0-9A-F]{2})");
    private static final Pattern LIKE_A_LINE = Pattern.compile(".*\\btime \\S+ \\d+.*");
    private static final Pattern PLAIN_NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]*");
    private static final int LONGEST_LINE = 512;
    private static final long MICRO = 1_000;

    private final Map<String, Task> tasks = new TreeMap<>();
    private final StringBuilder line = new StringBuilder();
    private int lines;
    private int spoilt;

    /** What was timed under one name. */
    public static final class Task {
        private final String name;
        private final Blocks blocks;
        private long longestNanos;
        private long count;
        private long gaps;
        private long spanNanos;

        Task(String name, Blocks blocks) {
            this.name = name;
            this.blocks = blocks;
        }

        public String name() {
            return name;
        }

        public Blocks blocks() {
            return blocks;
        }

        /** The longest it took, ns. */
        public long longestNanos() {
            return longestNanos;
        }

        /** How often it came. */
        public long count() {
            return count;
        }

        /**
         * From one begin to the next on average, ns; not less than it takes.
         *
         * @param listenedNanos how long was listened, for one that came but once between two lines
         */
        public long everyNanos(long listenedNanos) {
            long every = gaps > 0 ? spanNanos / gaps : listenedNanos / Math.max(1, count);
            return Math.max(Math.max(every, longestNanos), MICRO);
        }
    }

    /** The next byte that came. */
    public void take(int value) {
        if (value == '\n') {
            take(line.toString().strip());
            line.setLength(0);
        } else if (line.length() < LONGEST_LINE) {
            line.append((char) (value & 0xFF));
        }
    }

    private void take(String whole) {
        Matcher matcher = LINE.matcher(whole);
        if (!matcher.matches() || sum(matcher.group(1)) != Integer.parseInt(matcher.group(7), 16)) {
            spoilt += LIKE_A_LINE.matcher(whole).matches() ? 1 : 0;
            return;
        }
        lines++;
        Blocks blocks = matcher.group(6).equals("loop") ? Blocks.LOOP : Blocks.INTERRUPTS;
        Task task = tasks.computeIfAbsent(matcher.group(2), name -> new Task(name, blocks));
        long times = Long.parseLong(matcher.group(4));
        if (times > 0) {
            task.longestNanos = Math.max(task.longestNanos, Long.parseLong(matcher.group(3)) * MICRO);
            task.count += times;
            task.gaps += times - 1;
            task.spanNanos += Long.parseLong(matcher.group(5)) * MICRO;
        }
    }

    private static int sum(String text) {
        int sum = 0;
        for (byte one : text.getBytes(StandardCharsets.ISO_8859_1)) {
            sum += one & 0xFF;
        }
        return sum & 0xFF;
    }

    /** All of them that came at all, by name. */
    public Collection<Task> all() {
        return tasks.values().stream().filter(task -> task.count > 0).toList();
    }

    /** Lines that were right. */
    public int lines() {
        return lines;
    }

    /** Lines that were none any more when they came. */
    public int spoilt() {
        return spoilt;
    }

    /**
     * A part of a pit file that others include.
     *
     * @param profile what the profile is called
     * @param like the profile that says everything else
     * @param day when it was measured: {@code 2026-11-20}
     * @param listenedNanos how long was listened, ns
     */
    public String text(String profile, String like, String day, long listenedNanos) {
        StringBuilder text = new StringBuilder();
        text.append("# What its own program timed, over ")
                .append(Words.time(listenedNanos))
                .append(", ")
                .append(day)
                .append(": the longest of each, and how often they come on average.\n")
                .append("# In the pit file: include this file, and give the board profile: ")
                .append(profile)
                .append("\n# What does not stand here was not timed: the profile it is like states it.\n")
                .append("profiles:\n  ")
                .append(named(profile))
                .append(":\n    like: ")
                .append(like)
                .append("\n    tasks:\n");
        for (Task task : all()) {
            text.append("      ")
                    .append(named(task.name()))
                    .append(":\n        every: ")
                    .append(millis(task.everyNanos(listenedNanos)))
                    .append(" ms, measured ")
                    .append(day)
                    .append("\n        takes: ")
                    .append(millis(Math.max(MICRO, task.longestNanos())))
                    .append(" ms, measured ")
                    .append(day)
                    .append("\n        blocks: ")
                    .append(task.blocks().name().toLowerCase(Locale.ROOT))
                    .append('\n');
        }
        return text.toString();
    }

    /** A name as YAML has it. */
    private static String named(String name) {
        return PLAIN_NAME.matcher(name).matches() ? name : "'" + name.replace("'", "''") + "'";
    }

    private static String millis(long nanos) {
        return String.format(Locale.ROOT, "%.3f", nanos / 1e6);
    }
}
