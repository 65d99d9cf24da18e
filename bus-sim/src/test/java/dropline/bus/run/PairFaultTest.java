package dropline.bus.run;

import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.FaultKind;
import dropline.protocol.frames.DroplineFrames;
import dropline.protocol.modbus.ModbusRtu;
import org.junit.jupiter.api.Test;

/** What each fault of the pair and of what goes over it does. */
final class PairFaultTest extends FaultyBus {
    @Test
    void pairWithoutBiasYieldsPhantomsAndLosesFrames() {
        run(DroplineFrames.create(), segment(FaultKind.MISSING_BIAS, 0, 0));

        assertTrue(
                count("phantom") > 20 && count("received-wrong") > 20,
                () -> "phantom=" + count("phantom") + " wrong=" + count("received-wrong"));
    }

    @Test
    void floatingReceiverOutputSpoilsTheFrameAfterTheOwnReply() {
        run(DroplineFrames.create(), node(FaultKind.FLOATING_RECEIVER, 1, 0, 0));

        assertTrue(wrongAt(1) > 0);
        assertEquals(0, wrongAt(0) + wrongAt(2));
    }

    @Test
    void echoIsHarmlessWhereRepliesAreMarkedAndFatalOtherwise() {
        run(DroplineFrames.create(), segment(FaultKind.ECHO, 0, 0));
        assertEquals(0, count("timed-out"));

        run(ModbusRtu.create(), segment(FaultKind.ECHO, 0, 0));
        assertEquals(0, count("answered"));
    }

    @Test
    void noiseSpoilsFramesOfEverybody() {
        run(DroplineFrames.create(), segment(FaultKind.NOISE_BURST, 100, 2 * MILLI));

        assertTrue(count("received-wrong") > 10);
        assertEquals(0, count("clash"));
        assertTrue(count("answered") > 30);
    }

    @Test
    void lostStateFrameIsMissedByAllAndSentAgain() {
        run(DroplineFrames.create(), segment(FaultKind.LOST_STATE_FRAME, 0.3, 0));

        assertTrue(wrongAt(0) > 3 && wrongAt(1) > 3 && wrongAt(2) > 3);
        assertEquals(0, count("timed-out"), "polls carry no state here");
    }
}
