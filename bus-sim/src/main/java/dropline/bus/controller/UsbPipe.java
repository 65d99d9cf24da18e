package dropline.bus.controller;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Adapter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When what was received leaves an adapter: with a full packet or when the latency timer runs out, which starts afresh
 * at every packet (FTDI AN232B-04). All segments of a board send through one pipe: what one of them fills or flushes
 * sets the timer for all.
 */
public final class UsbPipe {
    private final Adapter adapter;
    private final Fault @Nullable [] slow;
    private long lastPacketNanos;

    /**
     * @param segments those that send through it
     * @param faults what goes wrong; those of other segments are left out
     */
    public UsbPipe(Adapter adapter, Collection<Integer> segments, List<Fault> faults) {
        this.adapter = adapter;
        slow = slow(segments, faults);
    }

    /** When a message of this many characters leaves whose last one came at an instant, ns. */
    long leavesNanos(long lastCharNanos, int chars) {
        long sent = lastCharNanos;
        long timer = slow == null ? adapter.latencyTimerNanos() : timerNanos(slow, lastCharNanos);
        if (chars % adapter.packetChars() != 0 && timer > 0) {
            long since = Math.max(0, lastCharNanos - lastPacketNanos);
            sent = lastPacketNanos + (since + timer - 1) / timer * timer;
            sent = Math.max(sent, lastCharNanos);
        }
        lastPacketNanos = sent;
        return sent;
    }

    private long timerNanos(Fault[] faults, long atNanos) {
        for (Fault fault : faults) {
            if (fault.spans(atNanos)) {
                return fault.amount();
            }
        }
        return adapter.latencyTimerNanos();
    }

    private static Fault @Nullable [] slow(Collection<Integer> segments, List<Fault> faults) {
        List<Fault> mine = new ArrayList<>(faults);
        mine.removeIf(fault -> fault.kind() != FaultKind.SLOW_ADAPTER || !segments.contains(fault.segment()));
        for (Fault fault : mine) {
            if (fault.amount() <= 0) {
                throw new IllegalArgumentException(
                        "a slow adapter's latency timer must be above 0: amount=" + fault.amount());
            }
        }
        return mine.isEmpty() ? null : mine.toArray(Fault[]::new);
    }
}
