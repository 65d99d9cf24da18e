package dropline.bus.bound;

/**
 * Why a latency has no bound though nothing is broken.
 *
 * @param kind the reason
 * @param node the node at fault, as a position in {@link dropline.bus.pit.Segment#nodes()}; -1 if none
 * @param nanos the time that is too long or too short, ns; 0 where the reason has none
 * @param limitNanos what it is measured against, ns; 0 where there is none
 */
public record Obstacle(Kind kind, int node, long nanos, long limitNanos) {

    /** What may happen again and again. */
    public enum Kind {
        /** The node is the dead one. */
        DEAD(false),
        /** Nobody holds the idle pair: frames may be spoilt by characters that nobody sent. */
        FLOATING_PAIR(true),
        /** A random time has no stated maximum. */
        NO_MAXIMUM(true),
        /** The slowest reply is still on the pair after the time-out and touches the controller's next frame. */
        LATE_REPLY(true),
        /** The node still drives the pair when the next frame may begin. */
        LATE_RELEASE(true),
        /** The node's reply is in time on the pair, but may reach the host after its time-out. */
        LATE_ADAPTER(false),
        /** The reply may begin while the controller still drives the pair. */
        EARLY_REPLY(false),
        /** The node's clock and the controller's differ by more than a UART surely bears. */
        CLOCK(false),
        /** The node's receiver floats while it sends, which spoils the frame after its reply. */
        FLOATING_RECEIVER(false),
        /** Interrupts are off for longer than the UART's buffer lasts. */
        FIFO_OVERRUN(false),
        /** The loop is blocked for longer than the receive ring lasts. */
        RING_OVERRUN(false),
        /** The node's tasks leave its program no time. */
        ALWAYS_BLOCKED(false),
        /** The protocol has no frame for state. */
        NOT_SENT(false),
        /** A newer value may come before the indicator has got to the last one, again and again. */
        REPLACED(false);

        private final boolean segments;

        Kind(boolean segments) {
            this.segments = segments;
        }

        /** Whether it strikes all nodes of the segment, wherever it comes from. */
        boolean isSegments() {
            return segments;
        }
    }
}
