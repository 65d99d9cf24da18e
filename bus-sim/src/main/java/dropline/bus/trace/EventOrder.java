package dropline.bus.trace;

import java.util.Arrays;

/**
 * Holds a segment's events back until no earlier one can come, then hands them to the sink sorted by (time, rank,
 * talker) and mixes them into the digest. Events may be posted ahead of time; one that no longer holds when its time
 * comes (a refresh that shows a newer value) is dropped by the {@link Revision} asked then.
 *
 * <p>A binary heap over parallel arrays: nothing is allocated once it has grown to what a segment keeps in flight.
 */
public final class EventOrder {

    /** Says, when its time has come, whether a posted event still holds. */
    public interface Revision {
        /**
         * Whether the SHOWN, MOVED or SAMPLED event of this slot or control and serial happens at its instant after
         * all.
         */
        boolean holds(Rank rank, long atNanos, int index, int serial);
    }

    private static final Rank[] RANKS = Rank.values();
    private static final int TALKER_BITS = 24;

    private final TraceSink sink;
    private final Revision revision;
    private final Digest digest = new Digest();

    private int[] heap = new int[256];
    private int size;
    private long[] at = new long[256];
    private long[] order = new long[256];
    private int[] a = new int[256];
    private int[] b = new int[256];
    private int[] c = new int[256];
    private int[] d = new int[256];
    private int[] e = new int[256];
    private long[] x = new long[256];
    private long[] y = new long[256];
    private long[] z = new long[256];
    private int[] free = new int[256];
    private int freeCount;
    private long posted;

    public EventOrder(TraceSink sink, Revision revision) {
        this.sink = sink;
        this.revision = revision;
        for (int i = 0; i < free.length; i++) {
            free[i] = free.length - 1 - i;
        }
        freeCount = free.length;
    }

    /** Posts an event of five small integers and three large ones; what each means depends on the rank. */
    public void post(long atNanos, Rank rank, int talker, int b0, int c0, int d0, int e0, long x0, long y0, long z0) {
        if (freeCount == 0) {
            grow();
        }
        int slot = free[--freeCount];
        at[slot] = atNanos;
        order[slot] = ((long) rank.ordinal() << 58)
                | ((long) (talker + 1) << (58 - TALKER_BITS))
                | (posted++ & ((1L << (58 - TALKER_BITS)) - 1));
        a[slot] = talker;
        b[slot] = b0;
        c[slot] = c0;
        d[slot] = d0;
        e[slot] = e0;
        x[slot] = x0;
        y[slot] = y0;
        z[slot] = z0;
        int child = size++;
        while (child > 0) {
            int parent = (child - 1) >>> 1;
            if (!before(slot, heap[parent])) {
                break;
            }
            heap[child] = heap[parent];
            child = parent;
        }
        heap[child] = slot;
    }

    /** Posts an event that needs few integers. */
    public void post(long atNanos, Rank rank, int talker, int b0, int c0, int d0) {
        post(atNanos, rank, talker, b0, c0, d0, 0, 0, 0, 0);
    }

    /** Hands over every event before {@code toNanos}. */
    public void release(long toNanos) {
        while (size > 0 && at[heap[0]] < toNanos) {
            int slot = heap[0];
            int last = heap[--size];
            siftDown(last);
            free[freeCount++] = slot;
            hand(slot);
        }
    }

    /** Ends the trace: what lies beyond is dropped. */
    public void end(long atNanos) {
        release(atNanos);
        digest.add(atNanos);
        sink.ended(atNanos);
    }

    /** The digest of what was handed over. */
    public long digest() {
        return digest.value();
    }

    private boolean before(int first, int second) {
        return at[first] != at[second] ? at[first] < at[second] : order[first] < order[second];
    }

    private void siftDown(int slot) {
        int parent = 0;
        while (true) {
            int child = 2 * parent + 1;
            if (child >= size) {
                break;
            }
            if (child + 1 < size && before(heap[child + 1], heap[child])) {
                child++;
            }
            if (!before(heap[child], slot)) {
                break;
            }
            heap[parent] = heap[child];
            parent = child;
        }
        heap[parent] = slot;
    }

    /**
     * Digests an event and hands it over; in small steps, since the compiler of a running program likes small methods.
     */
    private void hand(int i) {
        Rank rank = RANKS[(int) (order[i] >>> 58)];
        boolean planned = rank == Rank.SHOWN || rank == Rank.MOVED || rank == Rank.SAMPLED;
        if (planned && !revision.holds(rank, at[i], a[i], b[i])) {
            return;
        }
        digest.add(at[i]);
        digest.add(((long) rank.ordinal() << 32) ^ a[i]);
        digest.add(((long) b[i] << 32) ^ (c[i] & 0xFFFFFFFFL));
        digest.add(((long) d[i] << 32) ^ (e[i] & 0xFFFFFFFFL));
        digest.add(x[i] + 31 * y[i] + 961 * z[i]);
        switch (rank) {
            case DRIVER_ON, DRIVER_OFF, FRAME_STARTED, FRAME_ENDED, CLASH -> handFrame(rank, i);
            case STATE_CHANGED, STATE_SENT, COALESCED, QUEUED, CARRIED -> handState(rank, i);
            case ANSWERED, TIMED_OUT, GAVE_UP, BACKED_OFF, CYCLE_STARTED -> handPoll(rank, i);
            case OVERRUN, APPLIED, SHOWN, MOVED, CONTROL_MOVED, SAMPLED, TOLD -> handEnds(rank, i);
        }
    }

    private void handFrame(Rank rank, int i) {
        switch (rank) {
            case DRIVER_ON -> sink.driverOn(at[i], a[i]);
            case DRIVER_OFF -> sink.driverOff(at[i], a[i]);
            case FRAME_STARTED -> sink.frameStarted(at[i], a[i], b[i], c[i], d[i], e[i]);
            case FRAME_ENDED -> sink.frameEnded(at[i], a[i], b[i], c[i], d[i]);
            case CLASH -> sink.clash(at[i], a[i], b[i]);
            default -> throw new AssertionError(rank);
        }
    }

    private void handState(Rank rank, int i) {
        switch (rank) {
            case STATE_CHANGED -> sink.stateChanged(at[i], a[i], b[i], x[i]);
            case STATE_SENT -> sink.stateSent(at[i]);
            case COALESCED -> sink.coalesced(at[i], a[i], b[i], c[i]);
            case QUEUED -> sink.queued(at[i], a[i], b[i], c[i]);
            case CARRIED -> sink.carried(at[i], a[i], b[i], c[i], d[i]);
            default -> throw new AssertionError(rank);
        }
    }

    private void handPoll(Rank rank, int i) {
        switch (rank) {
            case ANSWERED -> sink.answered(at[i], a[i], b[i], c[i], x[i]);
            case TIMED_OUT -> sink.timedOut(at[i], a[i], b[i], c[i]);
            case GAVE_UP -> sink.gaveUp(at[i], a[i], b[i]);
            case BACKED_OFF -> sink.backedOff(at[i], a[i], x[i]);
            case CYCLE_STARTED -> sink.cycleStarted(at[i], b[i]);
            default -> throw new AssertionError(rank);
        }
    }

    private void handEnds(Rank rank, int i) {
        switch (rank) {
            case OVERRUN -> sink.overrun(at[i], a[i], b[i]);
            case APPLIED -> sink.applied(at[i], a[i], b[i], x[i]);
            case SHOWN -> sink.shown(at[i], a[i], b[i]);
            case MOVED -> sink.moved(at[i], a[i], x[i], y[i], z[i]);
            case CONTROL_MOVED -> sink.controlMoved(at[i], a[i], b[i], c[i]);
            case SAMPLED -> sink.sampled(at[i], a[i], b[i]);
            case TOLD -> sink.told(at[i], a[i], b[i]);
            default -> throw new AssertionError(rank);
        }
    }

    private void grow() {
        int old = at.length;
        int now = old * 2;
        heap = Arrays.copyOf(heap, now);
        at = Arrays.copyOf(at, now);
        order = Arrays.copyOf(order, now);
        a = Arrays.copyOf(a, now);
        b = Arrays.copyOf(b, now);
        c = Arrays.copyOf(c, now);
        d = Arrays.copyOf(d, now);
        e = Arrays.copyOf(e, now);
        x = Arrays.copyOf(x, now);
        y = Arrays.copyOf(y, now);
        z = Arrays.copyOf(z, now);
        free = Arrays.copyOf(free, now);
        for (int i = now - 1; i >= old; i--) {
            free[freeCount++] = i;
        }
    }
}
