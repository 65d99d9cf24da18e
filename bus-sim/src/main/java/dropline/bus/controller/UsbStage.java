package dropline.bus.controller;

import dropline.bus.chance.Draws;
import dropline.bus.chance.Draws.Purpose;
import dropline.bus.pit.Adapter;

/**
 * What the USB adapter costs one segment. Outward a write waits for the next USB frame. Inward a received character
 * waits in its pipe, then for the next USB frame and for the host to wake.
 */
public final class UsbStage {
    private final Adapter adapter;
    private final UsbPipe pipe;
    private final long outStream;
    private final long inStream;
    private final long wakeStream;

    /** The stage of one segment; {@code pipe} is its adapter's. */
    public UsbStage(Adapter adapter, UsbPipe pipe, long seed, String segmentName) {
        this.adapter = adapter;
        this.pipe = pipe;
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
        return pipe.leavesNanos(lastCharNanos, chars)
                + (long) (Draws.draw(inStream, ordinal) * adapter.frameNanos())
                + adapter.wakeUp().sampleNanos(Draws.draw(wakeStream, ordinal));
    }
}
