package dropline.bus.controller;

import dropline.bus.chance.Draws;
import dropline.bus.chance.Draws.Purpose;
import dropline.bus.pit.Adapter;

/**
 * What the USB adapter costs. Outward a write waits for the next USB frame. Inward a received character waits for a
 * full packet or the latency timer, which starts afresh at every packet, then for the next USB frame and for the host
 * to wake (FTDI AN232B-04).
 */
public final class UsbStage {
    private final Adapter adapter;
    private final long outStream;
    private final long inStream;
    private final long wakeStream;
    private long lastPacketNanos;

    /** The stage of one segment. */
    public UsbStage(Adapter adapter, long seed, String segmentName) {
        this.adapter = adapter;
        long hash = Draws.nameHash(segmentName);
        outStream = Draws.stream(seed, hash, Purpose.USB_OUT);
        inStream = Draws.stream(seed, hash, Purpose.USB_IN);
        wakeStream = Draws.stream(seed, hash, Purpose.WAKE_UP);
    }

    /** From the host's write to the adapter having it, ns. */
    public long outNanos(long ordinal) {
        return (long) (Draws.draw(outStream, ordinal) * adapter.frameNanos());
    }

    /** When the host has a message of this many characters whose last one came at an instant, ns. */
    public long inNanos(long lastCharNanos, int chars, long ordinal) {
        long sent = lastCharNanos;
        if (chars % adapter.packetChars() != 0 && adapter.latencyTimerNanos() > 0) {
            long timer = adapter.latencyTimerNanos();
            long since = Math.max(0, lastCharNanos - lastPacketNanos);
            sent = lastPacketNanos + (since + timer - 1) / timer * timer;
            sent = Math.max(sent, lastCharNanos);
        }
        lastPacketNanos = sent;
        return sent
                + (long) (Draws.draw(inStream, ordinal) * adapter.frameNanos())
                + adapter.wakeUp().sampleNanos(Draws.draw(wakeStream, ordinal));
    }
}
