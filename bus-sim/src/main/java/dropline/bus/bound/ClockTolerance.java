package dropline.bus.bound;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Transceiver;
import dropline.protocol.CharacterFormat;

/**
 * How far a sender's clock may be off for a receiver to take every character, at any phase. Microchip, AVR USART,
 * "Asynchronous Operational Range": R slow = (D+1)S / (S-1 + D S + SF), R fast = (D+2)S / ((D+1)S + SM), with D the
 * data and parity bits, S the samples a bit, SF and SM the first and the middle sample that count.
 */
final class ClockTolerance {
    private ClockTolerance() {}

    /** Whether a node and a controller whose clock is exact surely understand each other. */
    static boolean covers(UartClock node, int baud, CharacterFormat format, Transceiver transceiver) {
        double ratio = node.baud() / baud;
        return takes(1 / ratio, format, transceiver.samplesPerBit())
                && takes(ratio, format, Transceiver.USUAL.samplesPerBit());
    }

    private static boolean takes(double senderToReceiver, CharacterFormat format, int samples) {
        int bits = format.dataBits() + (format.parity() == CharacterFormat.Parity.NONE ? 0 : 1);
        double first = samples / 2.0;
        double slow = (bits + 1.0) * samples / (samples - 1 + (double) bits * samples + first);
        double fast = (bits + 2.0) * samples / ((bits + 1.0) * samples + first + 1);
        return senderToReceiver >= slow && senderToReceiver <= fast;
    }
}
