package dropline.bus.indicator;

import dropline.bus.trace.EventOrder;

/**
 * Something that takes time to show a value, so that what it does next depends on what it is doing now. It is given its
 * commands when their time has come, and stepped whenever it does something by itself.
 */
interface Mechanism {
    /** In place of an instant: nothing happens by itself. */
    long NEVER = Long.MAX_VALUE;

    /** The node sends it to a value. */
    void command(long atNanos, int serial, long value, EventOrder events);

    /** When it does something by itself next, ns, or {@link #NEVER}. */
    long nextNanos();

    /** Lets it do that. */
    void step(EventOrder events);

    /** Its node restarts: it has no command any more, and its program runs again at {@code readyNanos}. */
    void forget(long nowNanos, long readyNanos, EventOrder events);
}
