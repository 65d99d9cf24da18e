package dropline.bus.bound;

/** A part of the way from a change to the panel, or from a move to the host. */
public enum Stage {
    /** A control was moved, until its node believes it. */
    CONTACT,
    /** The value changed, until the host sends its state. */
    HOST,
    /** The USB stage: until the controller has the state, or the host the reply. */
    ADAPTER,
    /** Waiting for its turn, until the frame that carries it begins. */
    QUEUE,
    /** That frame on the wire. */
    WIRE,
    /** Until the node's program takes it. */
    NODE_WAIT,
    /** Until the panel shows it. */
    DEVICE
}
