package dropline.harness.suite;

/**
 * How soon something must be so, ns; {@link #ANY} where it may take any time.
 *
 * @param known the controls of every node are known, from the start and from each restart of the node
 * @param recovery every panel is right again, from when the last fault is over
 * @param silence every panel shows what the host said last, and goes on to, while it is silent
 */
record Within(long known, long recovery, long silence) {
    /** Any time will do. */
    static final long ANY = Long.MAX_VALUE;

    /** Nothing is asked. */
    static final Within ANY_TIME = new Within(ANY, ANY, ANY);
}
