package dropline.bus.node;

import dropline.bus.wire.Frame;

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
     * A promise: no driver is enabled before this instant unless something is heard; {@link #QUIET} if nothing is
     * planned.
     */
    long quietUntil();

    /** The transmission it last began, or is about to begin. */
    Frame transmission();

    /** The transmission that begins at {@link #quietUntil}; its driver is enabled by asking for it. */
    Frame transmit();
}
