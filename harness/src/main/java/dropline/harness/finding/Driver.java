package dropline.harness.finding;

/** What a talker's driver and frame are doing right now, as far as the trace has told. */
final class Driver {
    boolean on;

    /** Reasons for which it is on: a stuck driver sends its node's frames too. */
    int reasons;

    long onNanos;
    long offNanos = Long.MIN_VALUE / 2;

    /** A frame is on its way. */
    boolean sending;

    long startNanos;
    long endNanos = Long.MIN_VALUE / 2;
    int chars;

    /** Frames since the driver was enabled, and how long they took, ns. */
    int frames;

    long busyNanos;

    /** Another transmission touched this one. */
    boolean clashed;

    /** Its driver let go in the middle of the frame on its way. */
    boolean cut;
}
