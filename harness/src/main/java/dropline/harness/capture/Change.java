package dropline.harness.capture;

/**
 * Something changes at one end of the pair.
 *
 * @param atNanos when, ns since the start of the run
 * @param order among changes at the same instant
 * @param segment index of the segment
 * @param talker index of a node, or {@link dropline.bus.trace.TraceSink#CONTROLLER}
 * @param what the change
 */
record Change(long atNanos, long order, int segment, int talker, What what) implements Comparable<Change> {

    /** What changes. */
    enum What {
        DRIVER_OFF,
        DRIVER_ON,
        /** Its UART's output goes to zero. */
        ZERO,
        /** Its UART's output goes to one. */
        ONE
    }

    @Override
    public int compareTo(Change other) {
        int byTime = Long.compare(atNanos, other.atNanos);
        return byTime != 0 ? byTime : Long.compare(order, other.order);
    }
}
