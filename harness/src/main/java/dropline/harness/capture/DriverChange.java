package dropline.harness.capture;

/**
 * A driver was enabled or let go.
 *
 * @param atNanos when, ns since the start of the run
 * @param talker index of a node, or {@link dropline.bus.trace.TraceSink#CONTROLLER}
 * @param on whether it was enabled
 */
public record DriverChange(long atNanos, int talker, boolean on) {}
