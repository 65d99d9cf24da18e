package dropline.harness.verdict;

/**
 * Where an update latency went, ns; the six add up to it.
 *
 * @param hostNanos the value changed, until the host sent its state
 * @param adapterNanos until the controller had it: the USB stage
 * @param queueNanos until the frame that delivered it began: waiting for its turn, and any earlier frame that was lost
 * @param wireNanos until the node had heard that frame whole
 * @param nodeWaitNanos until the node's program took it
 * @param deviceNanos until the panel showed it, or began to move
 */
public record Stages(
        long hostNanos, long adapterNanos, long queueNanos, long wireNanos, long nodeWaitNanos, long deviceNanos) {

    /** Nothing. */
    public static final Stages NONE = new Stages(0, 0, 0, 0, 0, 0);

    public Stages {
        if (hostNanos < 0
                || adapterNanos < 0
                || queueNanos < 0
                || wireNanos < 0
                || nodeWaitNanos < 0
                || deviceNanos < 0) {
            throw new IllegalArgumentException(
                    "stages must not be negative: host=" + hostNanos + " adapter=" + adapterNanos
                            + " queue=" + queueNanos + " wire=" + wireNanos + " nodeWait=" + nodeWaitNanos + " device="
                            + deviceNanos);
        }
    }

    /** The latency they add up to, ns. */
    public long totalNanos() {
        return hostNanos + adapterNanos + queueNanos + wireNanos + nodeWaitNanos + deviceNanos;
    }

    /** The length of one stage, ns. */
    public long nanos(Stage stage) {
        return switch (stage) {
            case HOST -> hostNanos;
            case ADAPTER -> adapterNanos;
            case QUEUE -> queueNanos;
            case WIRE -> wireNanos;
            case NODE_WAIT -> nodeWaitNanos;
            case DEVICE -> deviceNanos;
        };
    }

    /** The longest stage; of equals, the first. */
    public Stage longest() {
        Stage longest = Stage.HOST;
        for (Stage stage : Stage.values()) {
            if (nanos(stage) > nanos(longest)) {
                longest = stage;
            }
        }
        return longest;
    }
}
