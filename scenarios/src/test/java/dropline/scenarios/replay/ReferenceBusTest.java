package dropline.scenarios.replay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Pit;
import dropline.harness.replay.Replayed;
import dropline.harness.verdict.SegmentResult;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Against the calculation by hand that stands in the pit files. */
final class ReferenceBusTest {
    private static final int NODES = 29;
    /** Request 8 x 20 us, gap 150 us, reply 9.2 x 20 us, controller 50 us. */
    private static final double POLL_NANOS = 544_000;

    private static final double WITHIN = 0.002;

    @Test
    void meanPollCycleIsTheHandCalculatedOne() throws IOException {
        SegmentResult bus = replay(Shipped.REFERENCE_BUS);

        double expected = NODES * POLL_NANOS;
        assertEquals(expected, bus.pollCycle().meanNanos(), expected * WITHIN);
        assertEquals(0, bus.stateFrames());
    }

    /** Four frames of 46 characters and a gap of 50 us take 3,880 us of every 25,000 us. */
    @Test
    void stateTrafficStretchesTheMeanPollCycleByItsShare() throws IOException {
        SegmentResult bus = replay(Shipped.REFERENCE_BUS_WITH_STATE);

        double expected = NODES * POLL_NANOS / (1 - 3_880.0 / 25_000);
        assertEquals(expected, bus.pollCycle().meanNanos(), expected * WITHIN);
        long stateFrames = 4 * 600 * 40;
        assertTrue(Math.abs(bus.stateFrames() - stateFrames) <= 4, () -> "state frames=" + bus.stateFrames());
    }

    /** Every reply comes in time and nothing else speaks, so every transaction is answered at once. */
    @Test
    void everyTransactionIsAnsweredAtTheFirstTry() throws IOException {
        SegmentResult bus = replay(Shipped.REFERENCE_BUS_WITH_STATE);

        assertTrue(bus.asked() - bus.answered() <= 1, () -> "asked=" + bus.asked() + " answered=" + bus.answered());
        assertEquals(0, bus.retried() + bus.timedOut() + bus.gaveUp() + bus.clashes() + bus.overruns());
    }

    private static SegmentResult replay(Path file) throws IOException {
        Pit pit = Shipped.pit(file);
        Replayed replayed = Shipped.load(pit, 600, 1);
        return Shipped.judged(pit, file.toString(), replayed, 1).segments().get(0);
    }
}
