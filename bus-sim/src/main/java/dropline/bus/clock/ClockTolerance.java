package dropline.bus.clock;

import dropline.protocol.CharacterFormat;

/**
 * How far a sender's clock may be off for a receiver to take every character, at any phase: the sender's rate over the
 * receiver's. Microchip, AVR USART, "Asynchronous Operational Range": R slow = (D+1)S / (S-1 + D S + SF), R fast =
 * (D+2)S / ((D+1)S + SM), with D the data and parity bits, S the samples a bit, SF and SM the first and the middle
 * sample that count.
 *
 * @param slowest below 1
 * @param fastest above 1
 */
public record ClockTolerance(double slowest, double fastest) {

    /** @param samples a bit, 16 or 8 */
    public static ClockTolerance of(CharacterFormat format, int samples) {
        int bits = format.dataBits() + (format.parity() == CharacterFormat.Parity.NONE ? 0 : 1);
        double first = samples / 2.0;
        return new ClockTolerance(
                (bits + 1.0) * samples / (samples - 1 + (double) bits * samples + first),
                (bits + 2.0) * samples / ((bits + 1.0) * samples + first + 1));
    }

    /** The same, less a part of each limit. */
    public ClockTolerance within(double part) {
        return new ClockTolerance(slowest + part, fastest - part);
    }

    /** Whether characters of a sender are taken. */
    public boolean covers(double senderToReceiver) {
        return senderToReceiver >= slowest && senderToReceiver <= fastest;
    }
}
