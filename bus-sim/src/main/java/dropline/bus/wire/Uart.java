package dropline.bus.wire;

import dropline.bus.chance.Draws;
import dropline.bus.clock.ClockTolerance;
import dropline.bus.pit.Transceiver;

/**
 * A receiver on the pair, as bit level knows it: whose it is, how long its bits are, how often it samples them.
 *
 * <p>Contention draws are this receiver's own: two drivers that disagree may look like a one to one receiver and like a
 * zero to another.
 */
public final class Uart {
    /** A bit's sample numbers that count: the first and the middle one of the three in its middle (AVR data sheets). */
    final int firstSample;

    final int middleSample;
    final int party;
    final int samplesPerBit;
    final long stream;
    final Transceiver.Receiver whileSending;
    double bitNanos;
    private double agreedBitNanos;
    private double agreedWith;
    private boolean agrees;

    /**
     * @param party index of a node, or {@link dropline.bus.trace.TraceSink#CONTROLLER}
     * @param bitNanos how long a bit is by its clock, ns
     * @param samplesPerBit 16 or 8
     * @param whileSending what it hears while its own driver is on
     * @param stream of its draws
     */
    public Uart(int party, double bitNanos, int samplesPerBit, Transceiver.Receiver whileSending, long stream) {
        this.party = party;
        this.bitNanos = bitNanos;
        this.samplesPerBit = samplesPerBit;
        this.stream = stream;
        this.whileSending = whileSending;
        firstSample = samplesPerBit / 2;
        middleSample = firstSample + 1;
    }

    /** Sets its clock. */
    public void bitNanos(double nanos) {
        bitNanos = nanos;
    }

    /** How long a bit is by its clock, ns. */
    public double bitNanos() {
        return bitNanos;
    }

    /** Whether it takes every character of a sender whose bits last so long; mostly asked of the same sender again. */
    boolean agreesWith(double senderBitNanos, ClockTolerance tolerance) {
        if (senderBitNanos != agreedWith || bitNanos != agreedBitNanos) {
            agreedWith = senderBitNanos;
            agreedBitNanos = bitNanos;
            agrees = tolerance.covers(bitNanos / senderBitNanos);
        }
        return agrees;
    }

    double sampleNanos() {
        return bitNanos / samplesPerBit;
    }

    /** Where its sampling stands at an instant it has seen nothing before, as a part of a sample, 0..1. */
    double phase(long atNanos) {
        return Draws.draw(stream, atNanos);
    }
}
