package dropline.bus.trace;

/**
 * Holds a segment's events back until no earlier one can come, then hands them to the sink sorted by (time, rank,
 * talker) and mixes them into the digest. Events may be posted ahead of time; one that no longer holds when its time
 * comes (a refresh that shows a newer value) is dropped by the {@link Revision} asked then.
 *
 * <p>Each kind of event comes nearly in order by itself, so events stand in a few lines, by kind, and the first of all
 * is one of the lines' firsts. Only what nodes and panels will do later waits in a heap. Nothing is allocated once all
 * have grown to what a segment keeps in flight.
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
    private final Line near = new Line();
    private final Line ends = new Line();
    private final Line applied = new Line();
    private final Line shown = new Line();
    private final Ahead ahead = new Ahead();
    private long posted;
    private long reachedNanos = Long.MIN_VALUE;

    public EventOrder(TraceSink sink, Revision revision) {
        this.sink = sink;
        this.revision = revision;
    }

    /** Posts an event of five small integers and three large ones; what each means depends on the rank. */
    public void post(long atNanos, Rank rank, int talker, int b, int c, int d, int e, long x, long y, long z) {
        Pending where = whereFor(rank, atNanos);
        int event = where.add(atNanos, order(rank, talker));
        long[] words = where.words;
        words[event + Event.AB] = pair(talker, b);
        words[event + Event.CD] = pair(c, d);
        words[event + Event.E] = e;
        words[event + Event.X] = x;
        words[event + Event.Y] = y;
        words[event + Event.Z] = z;
    }

    /** Posts an event that needs few integers. */
    public void post(long atNanos, Rank rank, int talker, int b, int c, int d) {
        post(atNanos, rank, talker, b, c, d, 0, 0, 0, 0);
    }

    private Pending whereFor(Rank rank, long atNanos) {
        return switch (rank) {
            case FRAME_ENDED, DRIVER_OFF -> ends;
            case APPLIED -> atNanos > reachedNanos ? ahead : applied;
            case SHOWN -> atNanos > reachedNanos ? ahead : shown;
            case MOVED, SAMPLED, TOLD -> ahead;
            default -> near;
        };
    }

    private long order(Rank rank, int talker) {
        return ((long) rank.ordinal() << RANK_SHIFT)
                | ((long) (talker + 1) << TALKER_SHIFT)
                | (posted++ & ((1L << TALKER_SHIFT) - 1));
    }

    private static long pair(int first, int second) {
        return ((long) first << 32) | (second & 0xFFFFFFFFL);
    }

    /** Hands over every event before {@code toNanos}. */
    public void release(long toNanos) {
        reachedNanos = toNanos;
        Pending first = first();
        while (first.at < toNanos) {
            hand(first.words, first.first);
            first.pass();
            first = first();
        }
    }

    private Pending first() {
        Pending first = near.isBefore(ends) ? near : ends;
        first = applied.isBefore(first) ? applied : first;
        first = shown.isBefore(first) ? shown : first;
        return ahead.isBefore(first) ? ahead : first;
    }

    private void hand(long[] words, int event) {
        Rank rank = RANKS[(int) (words[event + Event.ORDER] >>> RANK_SHIFT)];
        if (rank.isPlanned() && !revision.holds(rank, words[event], Event.a(words, event), Event.b(words, event))) {
            return;
        }
        Event.digest(words, event, rank, digest);
        Event.hand(words, event, rank, sink);
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
}
