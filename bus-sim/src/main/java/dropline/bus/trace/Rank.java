package dropline.bus.trace;

/**
 * The kinds of event, in the order in which they come at the same instant: physics and bookkeeping, causes before
 * effects.
 */
public enum Rank {
    /** A motion that ends or is cut here belongs to the past. */
    MOVED,
    /** The world changes first: a recorded value is true from its instant on. */
    STATE_CHANGED,
    /** A person's move, likewise. */
    CONTROL_MOVED,
    /** The host sends what is true at that instant. */
    STATE_SENT,
    /** What waited is replaced before what is new is queued. */
    COALESCED,
    /** The controller has a change before it decides what to send. */
    QUEUED,
    /** A reply that ends exactly at its deadline is in time: ends come before time-outs. */
    FRAME_ENDED,
    /** A driver lets go after its last bit and before the next driver is enabled. */
    DRIVER_OFF,
    /** A node forgets before it hears. */
    RESET,
    /** What nobody sent came before what somebody did. */
    PHANTOM,
    /** Heard, and not as it was sent. */
    RECEIVED_WRONG,
    /** Heard, judged lost. */
    OVERRUN,
    /** Heard, taken. */
    ANSWERED,
    /** What an answer says of its node is known with it. */
    NODE_STATUS,
    /** Only what was not answered times out. */
    TIMED_OUT,
    /** Giving up follows the last time-out. */
    GAVE_UP,
    /** Leaving a node alone follows giving up. */
    BACKED_OFF,
    /** The node's program has the value. */
    APPLIED,
    /** A panel shows what was applied. */
    SHOWN,
    /** A contact is believed. */
    SAMPLED,
    /** The host hears of it. */
    TOLD,
    /** A round begins with its first frame. */
    CYCLE_STARTED,
    /** A driver is on before its first bit. */
    DRIVER_ON,
    /** Two transmissions touch once the second driver is on. */
    CLASH,
    /** First bit. */
    FRAME_STARTED,
    /** What stands in the frame that starts. */
    CARRIED;

    /** Whether a node or panel plans it, and may plan otherwise before its time comes. */
    boolean isPlanned() {
        return this == SHOWN || this == MOVED || this == SAMPLED;
    }
}
