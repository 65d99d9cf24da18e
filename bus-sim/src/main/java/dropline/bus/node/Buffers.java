package dropline.bus.node;

import dropline.bus.clock.BusyPeriod;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Traffic;

/**
 * What a node's receive buffers could hold: a UART FIFO with a shift register while interrupts are off, a ring while
 * the loop is blocked. Whole characters; everything on the pair counts, whoever it was for.
 *
 * <p>FIFO: as the AVR's USART, the character after a full FIFO waits in the shift register and is lost once a further
 * start bit begins (data sheet, "Data OverRun"). Ring: a character that finds it full is dropped (Arduino AVR core,
 * HardwareSerial).
 */
final class Buffers {
    private final Timeline timeline;
    private final Traffic traffic;
    private final int fifoChars;
    private final int ringChars;
    private final boolean onlyTheRing;
    private final long longestBlockNanos;

    /** @param timeline with all its tasks */
    Buffers(Timeline timeline, Traffic traffic, int fifoChars, int ringChars) {
        this.timeline = timeline;
        this.traffic = traffic;
        this.fifoChars = fifoChars;
        this.ringChars = ringChars;
        onlyTheRing = timeline.keepsInterruptsOn();
        longestBlockNanos = timeline.longestLoopBlock();
    }

    /** Whether any character of a frame just heard was lost. */
    boolean lost(Frame frame) {
        if (timeline.isIdle() || ringSurelyHolds(frame)) {
            return false;
        }
        boolean lost = lostAround(frame, frame.heardNanos);
        for (int task = -2; task < timeline.size() && !lost; task++) {
            long start = startOf(task, frame.startNanos);
            lost = start >= frame.startNanos && start < frame.heardNanos && lostAround(frame, start);
        }
        return lost;
    }

    /** Whether even the longest block of the loop that touches a frame lets no more in than the ring holds. */
    private boolean ringSurelyHolds(Frame frame) {
        return onlyTheRing
                && longestBlockNanos != BusyPeriod.ALWAYS
                && !timeline.wasStalled()
                && traffic.completed(frame.heardNanos) - traffic.completed(frame.startNanos - longestBlockNanos)
                        <= ringChars;
    }

    private long startOf(int task, long fromNanos) {
        return switch (task) {
            case -2 -> timeline.stallStart();
            case -1 -> fromNanos;
            default -> timeline.startAtOrAfter(task, fromNanos);
        };
    }

    private boolean lostAround(Frame frame, long instant) {
        long on = timeline.interruptsFree(instant);
        long free = timeline.loopFree(instant);
        if (on == instant && free == instant) {
            return false;
        }
        long last = traffic.completed(frame.heardNanos) - 1;
        long first = last - frame.chars + 1;
        return (on > instant && lostInBlackout(first, last, timeline.interruptsOffSince(instant), on))
                || (free > instant
                        && lostInRing(
                                first, last, timeline.loopBlockedSince(instant), Math.min(free, frame.heardNanos)));
    }

    private boolean lostInBlackout(long first, long last, long offNanos, long onNanos) {
        long before = traffic.completed(offNanos);
        long completed = traffic.completed(onNanos);
        boolean furtherBegun = traffic.begun(onNanos) > completed;
        long firstLost = before + fifoChars;
        long lastLost = completed - (furtherBegun ? 1 : 2);
        return firstLost <= lastLost && first <= lastLost && last >= firstLost;
    }

    private boolean lostInRing(long first, long last, long blockedNanos, long untilNanos) {
        long firstLost = traffic.completed(blockedNanos) + ringChars;
        long lastLost = traffic.completed(untilNanos) - 1;
        return firstLost <= lastLost && first <= lastLost && last >= firstLost;
    }
}
