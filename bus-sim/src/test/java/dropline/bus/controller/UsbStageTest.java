package dropline.bus.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import org.junit.jupiter.api.Test;

/** FTDI AN232B-04: latency timer of 16 ms by default, packets of 62 user bytes, timer restarted at each packet. */
final class UsbStageTest {
    private static final long MILLI = 1_000_000;
    private final UsbStage stage =
            new UsbStage(new Adapter("16 ms timer", 16 * MILLI, 62, 0, Distribution.constant(0)), 1, "s");

    @Test
    void loneCharacterWaitsForTheLatencyTimer() {
        assertEquals(16 * MILLI, stage.inNanos(1, 1, 0));
    }

    @Test
    void fullPacketGoesAtOnceAndSixtyOneCharactersDoNot() {
        assertEquals(5 * MILLI, stage.inNanos(5 * MILLI, 62, 0));
        assertEquals(21 * MILLI, stage.inNanos(6 * MILLI, 61, 1));
    }

    @Test
    void timerStartsAfreshAtEachPacket() {
        stage.inNanos(7 * MILLI, 62, 0);

        assertEquals(23 * MILLI, stage.inNanos(8 * MILLI, 10, 1));
        assertEquals(39 * MILLI, stage.inNanos(24 * MILLI, 10, 2));
    }

    @Test
    void noAdapterCostsNothing() {
        assertEquals(12345, new UsbStage(Adapter.NONE, 1, "s").inNanos(12345, 8, 0));
    }
}
