package dropline.bus.pit;

import dropline.bus.chance.Distribution;
import dropline.bus.clock.AvrBaud;
import dropline.bus.clock.UartClock;
import dropline.bus.pit.Indicator.Blocks;
import dropline.protocol.FirmwareVersion;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A node's firmware timing.
 *
 * @param replyFrom where replies are made
 * @param replyGap last stop bit of the request to first start bit of the reply, when nothing blocks
 * @param enableLeadNanos driver on to first start bit, ns
 * @param releaseTailNanos last stop bit to driver off, ns
 * @param loopPassNanos longest pass of an unblocked main loop, ns: a value waits up to one pass before it is applied
 * @param fifoChars characters the UART holds while interrupts are off (2 on an AVR), beside its shift register
 * @param ringChars characters the receive ring holds while the loop is blocked (63 of 64 in the Arduino core)
 * @param tasks what else blocks the loop or the interrupts, beside the refreshes of the node's indicators
 * @param bootNanos reset to first reply, ns
 * @param clockHz clock of the UART, Hz; 0 for one that meets the baud rate exactly
 * @param ticksPerBit clock ticks a bit lasts; 0 with {@code clockHz} 0
 * @param transceiver how its UART meets the pair
 * @param firmware the version that was measured; null where nobody said
 */
public record Profile(
        ReplyFrom replyFrom,
        Distribution replyGap,
        long enableLeadNanos,
        long releaseTailNanos,
        long loopPassNanos,
        int fifoChars,
        int ringChars,
        List<Task> tasks,
        long bootNanos,
        long clockHz,
        int ticksPerBit,
        Transceiver transceiver,
        @Nullable FirmwareVersion firmware) {

    /** Where a node's replies are made. */
    public enum ReplyFrom {
        INTERRUPT,
        LOOP
    }

    /**
     * Something that blocks at regular times.
     *
     * @param everyNanos from one start to the next, ns
     * @param takesNanos how long it blocks, ns
     * @param blocks what it keeps from running
     */
    public record Task(String name, long everyNanos, long takesNanos, Blocks blocks) {
        public Task {
            if (takesNanos <= 0 || everyNanos < takesNanos) {
                throw new IllegalArgumentException(
                        "a task must be over before the next: every=" + everyNanos + " takes=" + takesNanos);
            }
        }
    }

    /** One of a firmware without a version. */
    public Profile(
            ReplyFrom replyFrom,
            Distribution replyGap,
            long enableLeadNanos,
            long releaseTailNanos,
            long loopPassNanos,
            int fifoChars,
            int ringChars,
            List<Task> tasks,
            long bootNanos,
            long clockHz,
            int ticksPerBit,
            Transceiver transceiver) {
        this(
                replyFrom,
                replyGap,
                enableLeadNanos,
                releaseTailNanos,
                loopPassNanos,
                fifoChars,
                ringChars,
                tasks,
                bootNanos,
                clockHz,
                ticksPerBit,
                transceiver,
                null);
    }

    public Profile {
        tasks = List.copyOf(tasks);
        if (enableLeadNanos < 0 || releaseTailNanos < 0 || loopPassNanos < 0 || bootNanos < 0) {
            throw new IllegalArgumentException("times must not be negative: lead=" + enableLeadNanos + " tail="
                    + releaseTailNanos + " loopPass=" + loopPassNanos + " boot=" + bootNanos);
        }
        if (fifoChars < 1 || ringChars < 1) {
            throw new IllegalArgumentException(
                    "buffers must hold at least 1 character: fifo=" + fifoChars + " ring=" + ringChars);
        }
        if (clockHz < 0 || ticksPerBit < 0 || (clockHz == 0) != (ticksPerBit == 0)) {
            throw new IllegalArgumentException(
                    "clock and ticks per bit go together: clockHz=" + clockHz + " ticksPerBit=" + ticksPerBit);
        }
    }

    /** The same firmware on a board straight on USB, where there is no driver to switch and both ways are open. */
    public Profile straight() {
        return new Profile(
                replyFrom,
                replyGap,
                0,
                0,
                loopPassNanos,
                fifoChars,
                ringChars,
                tasks,
                bootNanos,
                clockHz,
                ticksPerBit,
                new Transceiver(
                        Transceiver.Driver.ENABLE_LINE, Transceiver.Receiver.ALWAYS_ON, transceiver.samplesPerBit()),
                firmware);
    }

    /** What times its UART's bits on a segment of this baud rate. */
    public UartClock clock(int baud) {
        return clockHz == 0 ? UartClock.exact(baud) : new UartClock(clockHz, ticksPerBit);
    }

    /** The same firmware answering from elsewhere, with other tasks. */
    public Profile with(ReplyFrom otherReplyFrom, List<Task> otherTasks) {
        return new Profile(
                otherReplyFrom,
                replyGap,
                enableLeadNanos,
                releaseTailNanos,
                loopPassNanos,
                fifoChars,
                ringChars,
                otherTasks,
                bootNanos,
                clockHz,
                ticksPerBit,
                transceiver,
                firmware);
    }

    /**
     * The same board with its UART set to another baud rate: the nearest its clock makes. One without a known clock
     * meets every rate.
     */
    public Profile at(int baud) {
        if (clockHz == 0) {
            return this;
        }
        AvrBaud nearest = AvrBaud.best(clockHz, baud);
        return new Profile(
                replyFrom,
                replyGap,
                enableLeadNanos,
                releaseTailNanos,
                loopPassNanos,
                fifoChars,
                ringChars,
                tasks,
                bootNanos,
                clockHz,
                nearest.clock().ticksPerBit(),
                new Transceiver(transceiver.driver(), transceiver.receiver(), nearest.doubleSpeed() ? 8 : 16));
    }
}
