package dropline.bus.node;

import dropline.bus.pit.Indicator;
import dropline.bus.wire.Frame;
import dropline.protocol.NodeStatus;

/**
 * A board on the pair: modelled from a profile, emulated from a firmware image, or attached on a port. The bus does not
 * know which it talks to.
 */
public interface NodeBehaviour {
    /** Nothing planned. */
    long QUIET = Long.MAX_VALUE;

    /**
     * A frame for this node, or for all, has become visible whole at {@link Frame#heardNanos}; called once, then, in
     * order. Only frames that arrive undisturbed on the pair come here; whether the node's buffers held them is its own
     * affair.
     */
    void hear(Frame frame);

    /** Lets the node run up to an instant, never beyond it. */
    void advanceTo(long nanos);

    /**
     * A promise: it neither enables its driver nor begins a character before this instant unless something is heard;
     * {@link #QUIET} if nothing is planned.
     */
    long quietUntil();

    /** Whether it neither hears nor answers at an instant: unplugged, hung, or starting up. */
    boolean isSilent(long atNanos);

    /** Whether it takes a request for its own: one to its address, or to one it wrongly answers to. */
    boolean takes(Frame request);

    /**
     * Whether it misses a frame that stands undisturbed on the pair.
     *
     * @param afterReply whether another node's reply was the last frame before it
     */
    boolean misses(Frame frame, boolean afterReply);

    /** Whether something has its receiver's output float while it sends. */
    boolean floats(long atNanos);

    /** It did not get a frame as it was sent. */
    void heardWrong();

    /** Restarts; silent until an instant. Whatever it was about to send is forgotten. */
    void reset(long atNanos, long readyNanos);

    /** Something blocks its loop or its interrupts once. */
    void stall(Indicator.Blocks what, long fromNanos, long untilNanos);

    /** How long a bit is by its UART's clock at an instant, ns. */
    double bitNanos(long atNanos);

    /** What it says of itself in a reply. */
    NodeStatus status(Frame reply);

    /** Posts what its reply said of it, once that is known, if there is news. */
    void tellStatus(long atNanos);

    /** The transmission it last began, or is about to begin. */
    Frame transmission();

    /** The transmission that begins at {@link #quietUntil}; it begins by being asked for. */
    Frame transmit();
}
