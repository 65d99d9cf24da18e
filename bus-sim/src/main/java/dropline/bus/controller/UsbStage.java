package dropline.bus.controller;

import dropline.bus.chance.Draws;
import dropline.bus.chance.Draws.Purpose;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Adapter;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

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
    private final Fault @Nullable [] slow;
    private long lastPacketNanos;

    /** The stage of one segment, with nothing wrong. */
    public UsbStage(Adapter adapter, long seed, String segmentName) {
        this(adapter, seed, segmentName, -1, List.of());
    }

    /**
     * The stage of one segment.
     *
     * @param segment its index
     * @param faults what goes wrong; those of other segments are left out
     */
    public UsbStage(Adapter adapter, long seed, String segmentName, int segment, List<Fault> faults) {
        slow = slow(segment, faults);
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
        long timer = slow == null ? adapter.latencyTimerNanos() : timerNanos(slow, lastCharNanos);
        if (chars % adapter.packetChars() != 0 && timer > 0) {
            long since = Math.max(0, lastCharNanos - lastPacketNanos);
            sent = lastPacketNanos + (since + timer - 1) / timer * timer;
            sent = Math.max(sent, lastCharNanos);
        }
        lastPacketNanos = sent;
        return sent
                + (long) (Draws.draw(inStream, ordinal) * adapter.frameNanos())
                + adapter.wakeUp().sampleNanos(Draws.draw(wakeStream, ordinal));
    }

    private long timerNanos(Fault[] faults, long atNanos) {
        for (Fault fault : faults) {
            if (fault.spans(atNanos)) {
                return fault.amount();
            }
        }
        return adapter.latencyTimerNanos();
    }

    private static Fault @Nullable [] slow(int segment, List<Fault> faults) {
        List<Fault> mine = new ArrayList<>(faults);
        mine.removeIf(fault -> fault.kind() != FaultKind.SLOW_ADAPTER || fault.segment() != segment);
        for (Fault fault : mine) {
            if (fault.amount() <= 0) {
                throw new IllegalArgumentException(
                        "a slow adapter's latency timer must be above 0: amount=" + fault.amount());
            }
        }
        return mine.isEmpty() ? null : mine.toArray(Fault[]::new);
    }
}
