package dropline.bus.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.clock.AvrBaud;
import dropline.bus.clock.ClockTolerance;
import dropline.bus.clock.UartClock;
import dropline.bus.pit.Transceiver;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.CharacterFormat.Parity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How far a sender's clock may be off from a receiver's. Published: Microchip, AVR USART, "Asynchronous Operational
 * Range", tables 1 and 2, also in Atmel 8331B (XMEGA AU manual), section 23.8. The upper limit of seven bits at double
 * speed is printed as 104.43; the formula beside the table gives 104.35.
 */
final class ToleranceTest {
    /** Half a unit of the tables' last digit. */
    private static final double ROUNDING = 0.00005;

    private static final int PHASES = 400;
    private static final int BAUD = 100_000;

    @ParameterizedTest
    @CsvSource({
        "5, 16, 0.9320, 1.0667",
        "6, 16, 0.9412, 1.0579",
        "7, 16, 0.9481, 1.0511",
        "8, 16, 0.9536, 1.0458",
        "9, 16, 0.9581, 1.0414",
        "10, 16, 0.9617, 1.0378",
        "5, 8, 0.9412, 1.0566",
        "6, 8, 0.9492, 1.0492",
        "7, 8, 0.9552, 1.0435",
        "8, 8, 0.9600, 1.0390",
        "9, 8, 0.9639, 1.0353",
        "10, 8, 0.9670, 1.0323",
    })
    void receiverTakesWhatThePublishedTablesSayAndNoMore(int bits, int samples, double slowest, double fastest) {
        double farther = 0.0008;

        assertTrue(alwaysReceived(bits, samples, slowest + 2 * ROUNDING), "just fast enough");
        assertFalse(alwaysReceived(bits, samples, slowest - farther), "too slow");
        assertTrue(alwaysReceived(bits, samples, fastest - 2 * ROUNDING), "just slow enough");
        assertFalse(alwaysReceived(bits, samples, fastest + farther), "too fast");
    }

    @Test
    void nodeAt16MhzAndNodeAt8MhzDoNotUnderstandEachOtherAt115200Baud() {
        // Arduino AVR core, HardwareSerial.cpp, begin: 115200 is 2.12 % fast at 16 MHz and 3.55 % slow at 8 MHz.
        double fast = AvrBaud.arduinoCore(16_000_000, 115_200).clock().baud();
        double slow = AvrBaud.arduinoCore(8_000_000, 115_200).clock().baud();

        assertEquals(1.0588, fast / slow, 0.0001);
        assertFalse(alwaysReceived(8, 8, fast / slow));
        assertFalse(alwaysReceived(8, 8, slow / fast));
        assertTrue(alwaysReceived(8, 8, fast / 115_200));
    }

    /** A frame between clocks that differ by less is taken as had without looking at its bits. */
    @Test
    void withinTheLimitsEveryCharacterArrivesAtEveryPhase() {
        for (int samples : new int[] {8, 16}) {
            for (int dataBits = 5; dataBits <= 9; dataBits++) {
                for (Parity parity : Parity.values()) {
                    CharacterFormat format = new CharacterFormat(dataBits, parity, 1);
                    ClockTolerance limits = ClockTolerance.of(format, samples).within(0.001);
                    for (int value : new int[] {0, 0x55, 0x80, 0xFF}) {
                        int seen = value & (1 << dataBits) - 1;
                        assertTrue(alwaysReceived(format, seen, samples, limits.slowest()), format + " slow " + value);
                        assertTrue(alwaysReceived(format, seen, samples, limits.fastest()), format + " fast " + value);
                    }
                }
            }
        }
    }

    private static boolean alwaysReceived(int bits, int samples, double ratio) {
        CharacterFormat format =
                bits == 10 ? new CharacterFormat(9, Parity.EVEN, 1) : new CharacterFormat(bits, Parity.NONE, 1);
        return alwaysReceived(format, 0, samples, ratio);
    }

    /** Whether three equal characters without pause arrive at every phase of the receiver's sampling. */
    private static boolean alwaysReceived(CharacterFormat format, int value, int samples, double ratio) {
        UartClock clock = new UartClock(Math.round(BAUD * ratio * 10_000), 10_000);
        Frame frame = new Frame(0, 0, clock, format);
        frame.time(1_000_000, 3, 50_000, 50_000);
        Bytes sent = Bytes.of(value, value, value);
        Waveform wave = new Waveform(any -> sent, new Noise(true, 0), 1e9 / BAUD);
        wave.add(frame);
        Sampler sampler = new Sampler();
        boolean always = true;
        for (long stream = 1; stream <= PHASES; stream++) {
            Uart uart = new Uart(1, 1e9 / BAUD, samples, Transceiver.Receiver.OFF_WHILE_SENDING, stream);
            sampler.listen(wave, uart, format, frame.driverOnNanos, frame.heardNanos + 2 * uart.bitNanos());
            always &= sampler.count() == 3;
            for (int i = 0; i < sampler.count(); i++) {
                always &= sampler.isGood(i) && sampler.value(i) == value;
            }
        }
        return always;
    }
}
