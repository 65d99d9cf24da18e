package dropline.harness.link;

import dropline.protocol.Bytes;

/** What came over a link. */
public sealed interface Arrival {
    /** By the link's clock, ns. */
    long atNanos();

    /**
     * Bytes, at least one.
     *
     * @param atNanos when the last of them was there
     */
    record Received(long atNanos, Bytes bytes) implements Arrival {}

    /**
     * The link broke off and is being sought again. Whatever was received before has been handed over.
     *
     * @param why in words for the person
     */
    record Lost(long atNanos, String why) implements Arrival {}

    /** It is there again. */
    record Back(long atNanos) implements Arrival {}

    /**
     * Bytes came faster than they were taken away, and were let go.
     *
     * @param bytes how many
     */
    record Overrun(long atNanos, long bytes) implements Arrival {}
}
