package dropline.bus.controller;

import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import dropline.bus.wire.Frame;
import dropline.protocol.Destination;

/**
 * What waits to be sent to one destination. The latest value wins: a newer one takes the place of one that still waits.
 */
public final class StateQueue {
    private final int destination;
    private final Destination wire;
    private final int[] signals;
    private final long[] pending;
    private final int[] serials;
    private final long[] values;
    private int waiting;
    private int from;
    private int refreshNext;

    /**
     * @param destination a node's index or {@link dropline.bus.trace.TraceSink#ALL}
     * @param wire how the protocol talks to it
     * @param signals the pit's index of each of its slots
     */
    public StateQueue(int destination, Destination wire, int[] signals) {
        this.destination = destination;
        this.wire = wire;
        this.signals = signals;
        this.pending = new long[(signals.length + 63) / 64 + 1];
        this.serials = new int[signals.length];
        this.values = new long[signals.length];
    }

    /** How the protocol talks to this destination. */
    public Destination wire() {
        return wire;
    }

    /** Values that wait. */
    public int waiting() {
        return waiting;
    }

    /** How many slots there are. */
    public int slots() {
        return signals.length;
    }

    /** Queues a change. */
    public void offer(int slot, int serial, long value, long atNanos, EventOrder events) {
        if (isPending(slot)) {
            events.post(atNanos, Rank.COALESCED, destination, signals[slot], serials[slot], 0);
        }
        serials[slot] = serial;
        values[slot] = value;
        mark(slot);
        events.post(atNanos, Rank.QUEUED, destination, signals[slot], serial, 0);
    }

    /** Marks the next slot, in turn, for being sent again though unchanged; says whether the round is over. */
    public boolean refreshNext() {
        if (serials[refreshNext] > 0) {
            mark(refreshNext);
        }
        refreshNext = (refreshNext + 1) % signals.length;
        return refreshNext == 0;
    }

    /** Marks a slot for being sent again. */
    public void mark(int slot) {
        if (!isPending(slot)) {
            pending[slot >> 6] |= 1L << slot;
            waiting++;
        }
    }

    /** Moves as many waiting values into a frame as fit, taking them off the queue. */
    public void take(Frame frame) {
        frame.count = waiting == 0 ? 0 : wire.pick(pending, from, frame.picked);
        for (int i = 0; i < frame.count; i++) {
            int slot = frame.picked[i];
            frame.serials[i] = serials[slot];
            frame.values[i] = values[slot];
            if (isPending(slot)) {
                pending[slot >> 6] &= ~(1L << slot);
                waiting--;
            }
        }
        if (frame.count > 0) {
            frame.noteSlots();
            from = (frame.picked[frame.count - 1] + 1) % signals.length;
        }
    }

    /** Puts back what a lost frame carried. */
    public void putBack(Frame frame) {
        for (int i = 0; i < frame.count; i++) {
            mark(frame.picked[i]);
        }
    }

    /** The pit's index of a slot's signal. */
    public int signal(int slot) {
        return signals[slot];
    }

    private boolean isPending(int slot) {
        return (pending[slot >> 6] >>> slot & 1) != 0;
    }
}
