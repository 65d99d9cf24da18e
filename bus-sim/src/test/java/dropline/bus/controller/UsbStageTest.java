package dropline.bus.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.bus.chance.Distribution;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Adapter;
import java.util.List;
import org.junit.jupiter.api.Test;

/** FTDI AN232B-04: latency timer of 16 ms by default, packets of 62 user bytes, timer restarted at each packet. */
final class UsbStageTest {
    private static final long MILLI = 1_000_000;
    private static final Adapter TIMER = new Adapter("16 ms timer", 16 * MILLI, 62, 0, Distribution.constant(0));

    private final UsbStage stage = stage(TIMER, 0, List.of());

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
        assertEquals(12345, stage(Adapter.NONE, 0, List.of()).inNanos(12345, 8, 0));
    }

    @Test
    void slowAdapterHasItsOwnTimerInItsSpanOnly() {
        Fault slow = new Fault(FaultKind.SLOW_ADAPTER, 3, -1, -1, -1, 10 * MILLI, 100 * MILLI, 0, 40 * MILLI);
        UsbStage struck = stage(Adapter.NONE, 3, List.of(slow));
        UsbStage other = stage(Adapter.NONE, 2, List.of(slow));

        assertEquals(9 * MILLI, struck.inNanos(9 * MILLI, 8, 0));
        assertEquals(49 * MILLI, struck.inNanos(20 * MILLI, 8, 1));
        assertEquals(60 * MILLI, struck.inNanos(60 * MILLI, 62, 2), "a full packet goes at once");
        assertEquals(100 * MILLI, struck.inNanos(100 * MILLI, 8, 3));
        assertEquals(20 * MILLI, other.inNanos(20 * MILLI, 8, 1));
    }

    @Test
    void slowAdapterWithoutATimerIsRefused() {
        Fault slow = new Fault(FaultKind.SLOW_ADAPTER, 0, -1, -1, -1, 0, Fault.TO_THE_END, 0, 0);

        assertThrows(IllegalArgumentException.class, () -> stage(Adapter.NONE, 0, List.of(slow)));
    }

    @Test
    void segmentsOfOneBoardWaitForTheSameTimer() {
        UsbPipe lead = new UsbPipe(TIMER, List.of(0, 1), List.of());
        UsbStage left = new UsbStage(TIMER, lead, 1, "left");
        UsbStage right = new UsbStage(TIMER, lead, 1, "right");

        assertEquals(7 * MILLI, left.inNanos(7 * MILLI, 62, 0), "a full packet goes at once");
        assertEquals(23 * MILLI, right.inNanos(8 * MILLI, 10, 0), "16 ms after the packet of the other segment");
        assertEquals(23 * MILLI, left.inNanos(9 * MILLI, 10, 1), "in the same packet");
        assertEquals(39 * MILLI, right.inNanos(24 * MILLI, 10, 1));
    }

    @Test
    void slowLeadOfABoardIsSlowForAllItsSegments() {
        Fault slow = new Fault(FaultKind.SLOW_ADAPTER, 1, -1, -1, -1, 0, Fault.TO_THE_END, 0, 40 * MILLI);
        UsbPipe lead = new UsbPipe(TIMER, List.of(0, 1), List.of(slow));

        assertEquals(40 * MILLI, new UsbStage(TIMER, lead, 1, "left").inNanos(MILLI, 8, 0));
    }

    private static UsbStage stage(Adapter adapter, int segment, List<Fault> faults) {
        return new UsbStage(adapter, new UsbPipe(adapter, List.of(segment), faults), 1, "s");
    }
}
