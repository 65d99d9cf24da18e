package dropline.bus.pit;

import dropline.bus.chance.Distribution;

/**
 * The USB stage between host and wire. A received byte waits for a full packet or the latency timer, then for the next
 * USB frame, then for the host to wake (FTDI AN232B-04; USB 2.0, 1 ms frames).
 *
 * @param name for people
 * @param latencyTimerNanos 0 where there is no such timer, else 1..255 ms
 * @param packetChars characters that make a full packet (62 in AN232B-04)
 * @param frameNanos USB frame period, ns; 0 for none
 * @param wakeUp time until the host's program has the packet
 */
public record Adapter(String name, long latencyTimerNanos, int packetChars, long frameNanos, Distribution wakeUp) {

    /** No stage at all: host and wire meet directly. */
    public static final Adapter NONE = new Adapter("none", 0, 62, 0, Distribution.constant(0));

    public Adapter {
        if (latencyTimerNanos < 0 || latencyTimerNanos > 255_000_000L) {
            throw new IllegalArgumentException("latency timer must be 0..255 ms: nanos=" + latencyTimerNanos);
        }
        if (packetChars < 1 || frameNanos < 0) {
            throw new IllegalArgumentException("packet must hold a character, frame not be negative: packet="
                    + packetChars + " frame=" + frameNanos);
        }
    }
}
