package dropline.harness.stream;

import dropline.harness.recording.TimeHeader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The names a stream has used so far, numbered in the order of their coming. The first that is called a time is the
 * stream's own time, the first that is called a sequence number its sequence; all others are signals.
 */
final class Names {
    /** Stands for no name: blank, unprintable, or one too many. */
    static final int NONE = -1;

    /** As many as a recording has columns. */
    static final int MOST = 65_535;

    private static final int LONGEST = 200;
    private static final Pattern TIME = Pattern.compile("(sim|simulation|elapsed)?[ _.-]*(time|timestamp|elapsed)");
    private static final Pattern UNIT =
            Pattern.compile("[^a-z]+(s|sec|secs|ms|us|ns|[a-z]*seconds?|millis|micros|nanos)" + "[^a-z]*$");
    private static final Pattern SEQUENCE =
            Pattern.compile("(seq|seqno|sequence|(sequence|packet|message)[ _.-]?(no|number|id|counter))");

    private final List<String> names = new ArrayList<>();
    private char[][] spelled = new char[64][];
    private int[] table = new int[256];
    private int time = NONE;
    private int sequence = NONE;
    private long timeUnitNanos = 1_000_000_000L;
    private long refused;

    int size() {
        return names.size();
    }

    String name(int number) {
        return names.get(number);
    }

    boolean isTime(int number) {
        return number == time;
    }

    boolean isSequence(int number) {
        return number == sequence;
    }

    /** The unit of the stream's own time, ns. */
    long timeUnitNanos() {
        return timeUnitNanos;
    }

    /** What the stream's own time is called; null if it has none. */
    @Nullable
    String timeName() {
        return time == NONE ? null : names.get(time);
    }

    /** What the stream's own sequence number is called; null if it has none. */
    @Nullable
    String sequenceName() {
        return sequence == NONE ? null : names.get(sequence);
    }

    /** Values whose name could not be one. */
    long refused() {
        return refused;
    }

    /** The number of a name, which may be a new one; {@link #NONE} where this is no name. */
    int number(char[] text, int from, int to) {
        int slot = slot(text, from, to);
        return table[slot] != 0 ? table[slot] - 1 : add(text, from, to);
    }

    int number(String name) {
        return number(name.toCharArray(), 0, name.length());
    }

    /** Whether the text is the name of this number; false for numbers that are none. */
    boolean is(int number, char[] text, int from, int to) {
        if (number < 0 || number >= names.size()) {
            return false;
        }
        char[] name = spelled[number];
        return Arrays.equals(name, 0, name.length, text, from, to);
    }

    private int slot(char[] text, int from, int to) {
        int hash = 0;
        for (int i = from; i < to; i++) {
            hash = 31 * hash + text[i];
        }
        int slot = (hash ^ hash >>> 15) & table.length - 1;
        while (table[slot] != 0 && !is(table[slot] - 1, text, from, to)) {
            slot = slot + 1 & table.length - 1;
        }
        return slot;
    }

    private int add(char[] text, int from, int to) {
        String name = new String(text, from, to - from);
        boolean usable =
                !name.isBlank() && name.length() <= LONGEST && name.chars().noneMatch(c -> c < ' ');
        if (!usable || names.size() == MOST) {
            refused++;
            return NONE;
        }
        int number = names.size();
        if (number == spelled.length) {
            spelled = Arrays.copyOf(spelled, number * 2);
        }
        names.add(name);
        spelled[number] = name.toCharArray();
        if (names.size() * 2 > table.length) {
            table = new int[table.length * 2];
            for (int i = 0; i < names.size(); i++) {
                table[slot(spelled[i], 0, spelled[i].length)] = i + 1;
            }
        } else {
            table[slot(text, from, to)] = number + 1;
        }
        giveRole(number, name.strip().toLowerCase(Locale.ROOT));
        return number;
    }

    private void giveRole(int number, String name) {
        boolean unitNamed = UNIT.matcher(name).find();
        String bare = UNIT.matcher(name).replaceFirst("");
        if (time == NONE && (TIME.matcher(bare).matches() || (unitNamed && bare.equals("t")))) {
            time(number, TimeHeader.unit(name));
        } else if (sequence == NONE && SEQUENCE.matcher(name).matches()) {
            sequence = number;
        }
    }

    private void time(int number, @Nullable TimeUnit unit) {
        time = number;
        timeUnitNanos = (unit == null ? TimeUnit.SECONDS : unit).toNanos(1);
    }
}
