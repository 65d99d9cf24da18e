package dropline.bus.trace;

/** Events that wait, the first of them known. */
abstract class Pending {
    /** In place of an instant: nothing waits. */
    static final long NEVER = Long.MAX_VALUE;

    /** The words of the events that wait; see {@link Event}. */
    long[] words;

    /** Where those of the first event begin. */
    int first;

    /** Its instant, ns, or {@link #NEVER}. */
    long at = NEVER;

    /** Its place among others at that instant. */
    long order;

    Pending(int capacity) {
        words = new long[capacity * Event.WORDS];
    }

    /** Takes in an event; tells where its words begin. The first two, by which it is sorted, are set. */
    abstract int add(long atNanos, long itsOrder);

    /** Lets go of the first event. */
    abstract void pass();

    final boolean isBefore(Pending other) {
        return at < other.at || (at == other.at && order < other.order);
    }
}
