package dropline.bus.trace;

import java.util.Arrays;

/**
 * Holds a segment's events back until no earlier one can come, then hands them to the sink sorted by (time, rank,
 * talker) and mixes them into the digest. Events may be posted ahead of time; one that no longer holds when its time
 * comes (a refresh that shows a newer value) is dropped by the {@link Revision} asked then.
 *
 * <p>What the controller and the wire do is posted nearly in order, so it stands in a line that is sorted from its end;
 * what nodes and panels do lies further ahead and waits in a binary heap. Nothing is allocated once both have grown to
 * what a segment keeps in flight.
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
    private static final int RANK_SHIFT = 58;
    private static final int TALKER_BITS = 24;
    private static final int TALKER_SHIFT = RANK_SHIFT - TALKER_BITS;

    private final TraceSink sink;
    private final Revision revision;
    private final Digest digest = new Digest();
    private final Event handed = new Event();

    private long[] words = new long[256 * Event.WORDS];
    private int[] free = new int[256];
    private int freeCount;
    private int[] line = new int[256];
    private int lineFirst;
    private int lineEnd;
    private int[] heap = new int[256];
    private int heapSize;
    private long posted;

    public EventOrder(TraceSink sink, Revision revision) {
        this.sink = sink;
        this.revision = revision;
        freeFrom(0);
    }

    /** Posts an event of five small integers and three large ones; what each means depends on the rank. */
    public void post(long atNanos, Rank rank, int talker, int b, int c, int d, int e, long x, long y, long z) {
        int event = place(atNanos, rank, talker, pair(talker, b), pair(c, d));
        words[event + Event.E] = e;
        words[event + Event.X] = x;
        words[event + Event.Y] = y;
        words[event + Event.Z] = z;
    }

    /** Posts an event that needs few integers. */
    public void post(long atNanos, Rank rank, int talker, int b, int c, int d) {
        post(atNanos, rank, talker, b, c, d, 0, 0, 0, 0);
    }

    /** Hands over every event before {@code toNanos}. */
    public void release(long toNanos) {
        int event = next();
        while (event >= 0 && words[event] < toNanos) {
            if (lineFirst != lineEnd && line[lineFirst & (line.length - 1)] == event) {
                lineFirst++;
            } else {
                removeTop();
            }
            free[freeCount++] = event;
            hand(event);
            event = next();
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

    private static long pair(int first, int second) {
        return ((long) first << 32) | (second & 0xFFFFFFFFL);
    }

    private int place(long atNanos, Rank rank, int talker, long ab, long cd) {
        if (freeCount == 0) {
            grow();
        }
        int event = free[--freeCount];
        words[event] = atNanos;
        words[event + Event.ORDER] = ((long) rank.ordinal() << RANK_SHIFT)
                | ((long) (talker + 1) << TALKER_SHIFT)
                | (posted++ & ((1L << TALKER_SHIFT) - 1));
        words[event + Event.AB] = ab;
        words[event + Event.CD] = cd;
        if (rank.liesAhead()) {
            addToHeap(event);
        } else {
            addToLine(event);
        }
        return event;
    }

    /** The event that comes first, or -1. */
    private int next() {
        int ahead = heapSize == 0 ? -1 : heap[0];
        if (lineFirst == lineEnd) {
            return ahead;
        }
        int near = line[lineFirst & (line.length - 1)];
        return ahead >= 0 && before(ahead, near) ? ahead : near;
    }

    private boolean before(int first, int second) {
        long difference = words[first] - words[second];
        return difference != 0 ? difference < 0 : words[first + Event.ORDER] < words[second + Event.ORDER];
    }

    private void addToLine(int event) {
        int mask = line.length - 1;
        int at = lineEnd++;
        while (at != lineFirst && before(event, line[(at - 1) & mask])) {
            line[at & mask] = line[(at - 1) & mask];
            at--;
        }
        line[at & mask] = event;
    }

    private void addToHeap(int event) {
        int child = heapSize++;
        while (child > 0) {
            int parent = (child - 1) >>> 1;
            if (!before(event, heap[parent])) {
                break;
            }
            heap[child] = heap[parent];
            child = parent;
        }
        heap[child] = event;
    }

    private void removeTop() {
        int event = heap[--heapSize];
        int parent = 0;
        while (true) {
            int child = 2 * parent + 1;
            if (child >= heapSize) {
                break;
            }
            if (child + 1 < heapSize && before(heap[child + 1], heap[child])) {
                child++;
            }
            if (!before(heap[child], event)) {
                break;
            }
            heap[parent] = heap[child];
            parent = child;
        }
        heap[parent] = event;
    }

    private void hand(int event) {
        Rank rank = RANKS[(int) (words[event + Event.ORDER] >>> RANK_SHIFT)];
        handed.read(words, event);
        if (rank.isPlanned() && !revision.holds(rank, handed.at, handed.a, handed.b)) {
            return;
        }
        handed.digest(digest, rank);
        rank.hand(sink, handed);
    }

    private void grow() {
        int old = free.length;
        int now = old * 2;
        words = Arrays.copyOf(words, now * Event.WORDS);
        free = new int[now];
        heap = Arrays.copyOf(heap, now);
        int[] longer = new int[now];
        for (int at = lineFirst; at != lineEnd; at++) {
            longer[at & (now - 1)] = line[at & (old - 1)];
        }
        line = longer;
        freeFrom(old);
    }

    /** Frees the room of every event from this one on. */
    private void freeFrom(int first) {
        for (int i = free.length - 1; i >= first; i--) {
            free[freeCount++] = i * Event.WORDS;
        }
    }
}
