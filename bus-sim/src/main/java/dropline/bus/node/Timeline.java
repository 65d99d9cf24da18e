package dropline.bus.node;

import dropline.bus.chance.Draws;
import dropline.bus.clock.BusyPeriod;
import dropline.bus.pit.Indicator.Blocks;

/**
 * When a node's tasks run: each at its own phase and then at regular times. Asked, never stepped: no event is spent on
 * an idle node.
 *
 * <p>Tasks that would start together are put one behind the other by their phases; tasks of different periods that
 * drift into each other later run side by side, as if each had the processor to itself.
 */
final class Timeline {
    private static final int MOST_HOPS = 64;

    private final long[] every;
    private final long[] takes;
    private final long[] phase;
    private final Blocks[] blocks;
    private final boolean[] refreshes;
    private int count;
    private Blocks stall = Blocks.NOTHING;
    private long stallFrom;
    private long stallUntil;

    /** @param capacity how many tasks there will be */
    Timeline(int capacity) {
        every = new long[capacity];
        takes = new long[capacity];
        phase = new long[capacity];
        blocks = new Blocks[capacity];
        refreshes = new boolean[capacity];
    }

    /** Adds a task and returns its number. The first phase is drawn; later tasks follow the one before. */
    int add(long everyNanos, long takesNanos, Blocks blocking, long phaseStream) {
        long first =
                count == 0 ? (long) (Draws.draw(phaseStream, 0) * everyNanos) : phase[count - 1] + takes[count - 1];
        every[count] = everyNanos;
        takes[count] = takesNanos;
        blocks[count] = blocking;
        phase[count] = first % everyNanos;
        return count++;
    }

    /** Counts a task's ends as refreshes completed. */
    void isRefresh(int task) {
        refreshes[task] = true;
    }

    /** Blocks the program once, beside its tasks; the last such stall counts. */
    void stall(Blocks what, long fromNanos, long untilNanos) {
        stall = what;
        stallFrom = fromNanos;
        stallUntil = untilNanos;
    }

    /** Whether nothing ever blocks. */
    boolean isIdle() {
        return count == 0 && stall == Blocks.NOTHING;
    }

    /** The longest block of the loop by its tasks, ns, or {@link BusyPeriod#ALWAYS}; stalls are left out. */
    long longestLoopBlock() {
        long[] blockEvery = new long[count];
        long[] blockTakes = new long[count];
        int blocking = 0;
        for (int i = 0; i < count; i++) {
            if (counts(blocks[i], false)) {
                blockEvery[blocking] = every[i];
                blockTakes[blocking++] = takes[i];
            }
        }
        return BusyPeriod.nanos(blockEvery, blockTakes, blocking);
    }

    /** Whether interrupts are never off. */
    boolean keepsInterruptsOn() {
        boolean on = stall != Blocks.INTERRUPTS;
        for (int i = 0; i < count; i++) {
            on &= blocks[i] != Blocks.INTERRUPTS;
        }
        return on;
    }

    /** Whether it was ever stalled. */
    boolean wasStalled() {
        return stall != Blocks.NOTHING;
    }

    /** How many tasks there are. */
    int size() {
        return count;
    }

    /** When the last stall began, ns; 0 if there was none. */
    long stallStart() {
        return stallFrom;
    }

    /** The longest block of the loop that began or went on in a stretch, ns; 0 if none. */
    long longestBlock(long fromNanos, long toNanos) {
        long longest =
                counts(stall, false) && stallFrom < toNanos && stallUntil > fromNanos ? stallUntil - stallFrom : 0;
        for (int i = 0; i < count; i++) {
            if (counts(blocks[i], false) && startAtOrAfter(i, fromNanos) < toNanos) {
                longest = Math.max(longest, takes[i]);
            }
        }
        return longest;
    }

    /** Refreshes completed by an instant. */
    long refreshesBy(long nanos) {
        long done = 0;
        for (int i = 0; i < count; i++) {
            if (refreshes[i] && nanos >= phase[i] + takes[i]) {
                done += (nanos - phase[i] - takes[i]) / every[i] + 1;
            }
        }
        return done;
    }

    /** First start of a task at or after an instant. */
    long startAtOrAfter(int task, long atNanos) {
        long since = atNanos - phase[task];
        long turns = since <= 0 ? 0 : (since + every[task] - 1) / every[task];
        return phase[task] + turns * every[task];
    }

    /** End of a task that starts at an instant. */
    long endOf(int task, long startNanos) {
        return startNanos + takes[task];
    }

    /** First instant at or after this one at which nothing blocks the loop. */
    long loopFree(long atNanos) {
        return free(atNanos, false);
    }

    /** First instant at or after this one at which interrupts are on. */
    long interruptsFree(long atNanos) {
        return free(atNanos, true);
    }

    /** Since when the loop has been blocked without pause, or the instant itself if it is not. */
    long loopBlockedSince(long atNanos) {
        return since(atNanos, false);
    }

    /** Since when interrupts have been off without pause, or the instant itself if they are on. */
    long interruptsOffSince(long atNanos) {
        return since(atNanos, true);
    }

    private long free(long atNanos, boolean interrupts) {
        long free = atNanos;
        for (int hop = 0; hop < MOST_HOPS; hop++) {
            long later = free;
            for (int i = 0; i < count; i++) {
                if (!counts(blocks[i], interrupts)) {
                    continue;
                }
                long into = Math.floorMod(later - phase[i], every[i]);
                if (later >= phase[i] && into < takes[i]) {
                    later += takes[i] - into;
                }
            }
            if (counts(stall, interrupts) && later >= stallFrom && later < stallUntil) {
                later = stallUntil;
            }
            if (later == free) {
                return free;
            }
            free = later;
        }
        return free;
    }

    private long since(long atNanos, boolean interrupts) {
        long since = atNanos;
        for (int hop = 0; hop < MOST_HOPS; hop++) {
            long earlier = since;
            for (int i = 0; i < count; i++) {
                if (!counts(blocks[i], interrupts) || earlier < phase[i]) {
                    continue;
                }
                long into = Math.floorMod(earlier - phase[i], every[i]);
                if (into < takes[i] || (into == takes[i] && earlier < atNanos)) {
                    earlier -= into;
                }
            }
            boolean stalled = earlier < stallUntil || (earlier == stallUntil && earlier < atNanos);
            if (counts(stall, interrupts) && earlier > stallFrom && stalled) {
                earlier = stallFrom;
            }
            if (earlier == since) {
                return since;
            }
            since = earlier;
        }
        return since;
    }

    private static boolean counts(Blocks what, boolean interrupts) {
        return what == Blocks.INTERRUPTS || (!interrupts && what == Blocks.LOOP);
    }
}
