package dropline.bus.clock;

import dropline.protocol.CharacterFormat;

/**
 * The clock that times a UART's bits. Positions in a frame are ticks from its origin, turned into ns once; character
 * times are never added up rounded.
 *
 * @param hz ticks a second, 1..8,000,000,000
 * @param ticksPerBit ticks a bit lasts, at least 1
 */
public record UartClock(long hz, int ticksPerBit) {
    private static final long NANOS_PER_SECOND = 1_000_000_000L;

    public UartClock {
        if (hz < 1 || hz > 8_000_000_000L) {
            throw new IllegalArgumentException("clock must be 1..8000000000 Hz: hz=" + hz);
        }
        if (ticksPerBit < 1) {
            throw new IllegalArgumentException("a bit must last at least 1 tick: ticksPerBit=" + ticksPerBit);
        }
    }

    /** A clock that meets the baud rate exactly. */
    public static UartClock exact(int baud) {
        return new UartClock(baud, 1);
    }

    /** Ticks as ns: whole seconds plus the remainder rounded to nearest; no overflow below 292 years. */
    public static long ticksToNanos(long ticks, long hz) {
        long seconds = ticks / hz;
        long remainder = ticks % hz;
        return seconds * NANOS_PER_SECOND + (remainder * NANOS_PER_SECOND + hz / 2) / hz;
    }

    /** The last tick at or before an instant; inverts {@link #ticksToNanos} up to its rounding. */
    public static long nanosToTicks(long nanos, long hz) {
        long seconds = nanos / NANOS_PER_SECOND;
        long remainder = nanos % NANOS_PER_SECOND;
        return seconds * hz + (remainder * hz + hz / 2) / NANOS_PER_SECOND;
    }

    /** How long this many half bits last, ns. */
    public long halfBitsNanos(long halfBits) {
        return ticksToNanos(halfBits * ticksPerBit, 2 * hz);
    }

    /** How long this many characters last without pause, first start edge to last stop bit's end, ns. */
    public long charsNanos(CharacterFormat format, long chars) {
        return halfBitsNanos(2L * format.bits() * chars);
    }

    /** First start edge to the sample of the last character's stop bit (half a bit before its end), ns. */
    public long heardNanos(CharacterFormat format, long chars) {
        return halfBitsNanos(2L * format.bits() * chars - 2L * format.stopBits() + 1);
    }

    /** How long a bit is, ns, unrounded. */
    public double bitNanos() {
        return (double) NANOS_PER_SECOND * ticksPerBit / hz;
    }

    /** Actual bits a second. */
    public double baud() {
        return (double) hz / ticksPerBit;
    }
}
