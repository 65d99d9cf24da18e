package dropline.harness.size;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The stretch of what is played in which the signals of some segments change most often.
 *
 * @param fromNanos where it begins
 * @param untilNanos where it ends
 * @param wholeNanos how long all of it is
 * @param changes how many changes of the segment's signals it holds
 * @param statesPerSecond recorded states a second, from the first to the last; 0 where there are not two
 * @param bySignal how often each of the pit's signals changes in all of it, in their order
 */
public record Busiest(
        long fromNanos, long untilNanos, long wholeNanos, long changes, double statesPerSecond, List<Long> bySignal) {
    private static final long SECOND = 1_000_000_000L;

    /** Of one segment. */
    static Busiest of(Source.Opening whole, Pit pit, int segment, int seconds) throws IOException {
        return of(whole, pit, List.of(segment), seconds);
    }

    /** Reads all of it and finds the stretch of this many whole seconds; all of it where it is no longer. */
    public static Busiest of(Source.Opening whole, Pit pit, List<Integer> segments, int seconds) throws IOException {
        boolean[] wanted = Tape.signals(pit, segments);
        List<Long> bySecond = new ArrayList<>();
        long[] bySignal = new long[wanted.length];
        long rows = 0;
        long first = -1;
        long last = -1;
        long end;
        try (Source source = whole.open()) {
            StateBlock read = new StateBlock();
            boolean more = true;
            for (long until = SECOND; more; until += SECOND) {
                long to = Math.min(until, source.endNanos());
                more = source.feed().fill(read, to) && to < source.endNanos();
                bySecond.add(changes(read, wanted, until == SECOND, bySignal));
                rows += read.rows();
                first = first < 0 && read.rows() > 0 ? read.rowNanos(0) : first;
                last = read.rows() > 0 ? read.rowNanos(read.rows() - 1) : last;
            }
            end = source.endNanos() == Long.MAX_VALUE ? source.reachedNanos() + 1 : source.endNanos();
        }
        long within = 0;
        long most = -1;
        int best = 0;
        for (int second = 0; second < bySecond.size(); second++) {
            within += bySecond.get(second) - (second < seconds ? 0 : bySecond.get(second - seconds));
            if (second >= Math.min(seconds, bySecond.size()) - 1 && within > most) {
                most = within;
                best = Math.max(0, second - seconds + 1);
            }
        }
        return new Busiest(
                best * SECOND,
                Math.min(end, (best + seconds) * SECOND),
                end,
                most,
                last > first ? (rows - 1) * 1e9 / (last - first) : 0,
                boxed(bySignal));
    }

    /** What stands at the very first instant is no change. */
    private static long changes(StateBlock read, boolean[] wanted, boolean first, long[] bySignal) {
        long changes = 0;
        for (int row = first ? 1 : 0; row < read.rows(); row++) {
            for (int i = read.firstChange(row); i < read.endChange(row); i++) {
                changes += wanted[read.signal(i)] ? 1 : 0;
                bySignal[read.signal(i)]++;
            }
        }
        return changes;
    }

    private static List<Long> boxed(long[] counts) {
        return Arrays.stream(counts).boxed().toList();
    }

    /** How many states a second the host sends: its own rate where it has one. */
    double statesPerSecond(long statePeriodNanos) {
        return statePeriodNanos > 0 ? 1e9 / statePeriodNanos : statesPerSecond;
    }
}
