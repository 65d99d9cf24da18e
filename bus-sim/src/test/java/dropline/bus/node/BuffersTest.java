package dropline.bus.node;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Traffic;
import dropline.protocol.CharacterFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class BuffersTest {
    private static final long HOUR = 3_600_000_000_000L;
    private static final int FIFO = 2;
    private static final int RING = 63;

    /**
     * AVR USART, "Data OverRun": two characters and the shift register. Traffic without a pause: a blackout of two
     * character times is always safe; one of more than three, and the half bit between a stop bit's sample and the next
     * start edge, always loses.
     */
    @ParameterizedTest
    @CsvSource({"115200, 173600, 264800", "250000, 80000, 122100", "1000000, 20000, 30600"})
    void blackoutOfTwoCharactersIsSafeAndOfMoreThanThreeIsNot(int baud, long safeNanos, long lossyNanos) {
        for (int step = 0; step < 97; step++) {
            long shift = step * 10_000_000_000L / baud / 97;
            assertFalse(lost(baud, 200, safeNanos, Blocks.INTERRUPTS, shift), "safe, shift " + shift);
            assertTrue(lost(baud, 200, lossyNanos, Blocks.INTERRUPTS, shift), "lossy, shift " + shift);
        }
    }

    /**
     * Addressable LEDs hold interrupts off for 30 us each (24 bits of 1.25 us, WS2812 data sheet, from memory); how
     * many are always safe follows from two character times of ten bits.
     */
    @ParameterizedTest
    @CsvSource({"57600, 11", "115200, 5", "250000, 2", "500000, 1", "1000000, 0"})
    void safeNumberOfAddressableLeds(int baud, int leds) {
        int safe = 0;
        while (neverLoses(baud, (safe + 1) * 30_000L)) {
            safe++;
        }
        assertTrue(safe >= leds, "found safe " + safe);
        long twoChars = UartClock.exact(baud).charsNanos(CharacterFormat.EIGHT_N_ONE, 2);
        assertEquals(leds, twoChars / 30_000);
    }

    /** Arduino AVR core: 63 of 64 ring bytes can be used; at 115200 baud 8N1 they fill in 5.469 ms. */
    @Test
    void ringOf63FillsIn5469MicrosAt115200() {
        long fill = UartClock.exact(115200).charsNanos(CharacterFormat.EIGHT_N_ONE, 63);

        assertEquals(5_468_750, fill);
        assertFalse(lost(115200, 63, fill, Blocks.LOOP, 0));
        assertTrue(lost(115200, 64, fill + 100_000, Blocks.LOOP, 0));
    }

    @Test
    void frameHeardWhileNothingBlocksIsKept() {
        assertFalse(lost(115200, 200, 1, Blocks.NOTHING, 0));
    }

    private static boolean neverLoses(int baud, long offNanos) {
        for (int step = 0; step < 97; step++) {
            if (lost(baud, 200, offNanos, Blocks.INTERRUPTS, step * 10_000_000_000L / baud / 97)) {
                return false;
            }
        }
        return true;
    }

    /** One frame without pauses; a task blocks from its beginning, or for interrupts from somewhere within, shifted. */
    private static boolean lost(int baud, int chars, long blockedNanos, Blocks blocks, long shiftNanos) {
        Timeline timeline = new Timeline(1);
        timeline.add(HOUR, blockedNanos, blocks, 42);
        long blockedFrom = timeline.startAtOrAfter(0, 0);
        UartClock clock = UartClock.exact(baud);
        long before = blocks == Blocks.LOOP ? 0 : clock.charsNanos(CharacterFormat.EIGHT_N_ONE, 20) + shiftNanos;
        Frame frame = new Frame(-1, 0, clock, CharacterFormat.EIGHT_N_ONE);
        frame.time(blockedFrom - before, chars, 0, 0);
        Traffic traffic = new Traffic();
        traffic.add(frame);
        return new Buffers(timeline, traffic, FIFO, RING).lost(frame);
    }
}
