package dropline.bus.trace;

/**
 * Receives the events of one segment, sorted by (time, {@link Rank}, talker). Integer arguments only; times are ns
 * since the start of the run.
 *
 * <p>Parts are numbered by {@link dropline.bus.pit.Layout}: {@code node}, {@code slot}, {@code control}; {@code signal}
 * is the pit's. {@code destination} is a node, or {@link #ALL}. {@code talker} is a node, or {@link #CONTROLLER}.
 * {@code serial} counts the changes of one signal (or control) from 1; {@code transaction} counts the segment's polls
 * with all their retries from 1, or its broadcasts, from 1 too. Values are in units of the signal's resolution.
 */
public interface TraceSink {
    /** In place of a node: the controller talks. */
    int CONTROLLER = -1;

    /** In place of a node: a frame for all. */
    int ALL = -1;

    /** What a frame is for. */
    int REQUEST = 0;

    /** What a frame is for. */
    int REPLY = 1;

    /** What a frame is for. */
    int BROADCAST = 2;

    // --- controller tier

    /** The simulator's value changed by at least a resolution step. */
    default void stateChanged(long atNanos, int signal, int serial, long value) {}

    /** The host sent its state: all that had changed until then. */
    default void stateSent(long atNanos) {}

    /** The controller has a change and keeps it for a destination until it can be sent. */
    default void queued(long atNanos, int destination, int signal, int serial) {}

    /** A newer value replaced one that still waited. */
    default void coalesced(long atNanos, int destination, int signal, int serial) {}

    /** First start bit of a frame. {@code node} is the one polled or replying, or {@link #ALL}. */
    default void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {}

    /** A value stands in the request or broadcast that starts at this instant. */
    default void carried(long atNanos, int destination, int signal, int serial, int transaction) {}

    /** End of a frame's last stop bit. */
    default void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {}

    /** The controller has a whole, good reply; {@code gapNanos} may be negative (reply too soon). */
    default void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {}

    /** No good reply by the deadline. */
    default void timedOut(long atNanos, int node, int transaction, int attempt) {}

    /** The last try failed. */
    default void gaveUp(long atNanos, int node, int transaction) {}

    /** The node is left alone until {@code untilNanos}. */
    default void backedOff(long atNanos, int node, long untilNanos) {}

    /** A new round of polls begins, from 1. */
    default void cycleStarted(long atNanos, int cycle) {}

    /**
     * What a reply said of its node, where the protocol tells: restarts so far, frames it received wrong so far, its
     * longest loop since it last told, refreshes completed so far. At every change of the first two, else about once a
     * second.
     */
    default void nodeStatus(
            long atNanos, int node, int boots, int receiveErrors, long longestLoopNanos, long refreshes) {}

    /** The host was told of a control's state. */
    default void told(long atNanos, int control, int serial) {}

    // --- wire tier

    /** A driver is enabled. */
    default void driverOn(long atNanos, int talker) {}

    /** A driver lets go. */
    default void driverOff(long atNanos, int talker) {}

    /** Two transmissions touch; neither frame is received. */
    default void clash(long atNanos, int talker, int other) {}

    /** A receiver (a node, or {@link #CONTROLLER}) did not get this talker's frame as it was sent. */
    default void receivedWrong(long atNanos, int receiver, int talker, int transaction) {}

    /** A receiver got so many characters that nobody sent. */
    default void phantom(long atNanos, int receiver, int chars) {}

    // --- inside tier

    /** A node restarted; it is silent until {@code readyNanos} and has forgotten what it showed. */
    default void reset(long atNanos, int node, long readyNanos) {}

    /** A frame meant for this node was lost in its buffers. */
    default void overrun(long atNanos, int node, int transaction) {}

    /** The node's program has the value; the frame that brought it was heard whole at {@code heardNanos}. */
    default void applied(long atNanos, int slot, int serial, long heardNanos) {}

    /** The panel shows this value, or has begun to move towards it. */
    default void shown(long atNanos, int slot, int serial) {}

    /**
     * A moving indicator goes from one position to another at constant speed, in units of the resolution. A motion cut
     * short by a new command is followed by one that starts where it was cut.
     */
    default void moved(long atNanos, int slot, long from, long untilNanos, long to) {}

    /** A person moved a control. */
    default void controlMoved(long atNanos, int control, int serial, int value) {}

    /** The node believes the control's new state. */
    default void sampled(long atNanos, int control, int serial) {}

    /** Nothing more comes; the run ended here. */
    default void ended(long atNanos) {}
}
