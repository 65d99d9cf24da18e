package dropline.bus.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import dropline.bus.trace.TraceSink;
import org.junit.jupiter.api.Test;

final class SegmentRunTest {

    @Test
    void pollCycleOfTheReferenceBusIs29Times544Micros() {
        CycleTimes cycles = new CycleTimes();

        ReferenceBus.run(600, false, 1, -1, cycles);

        assertEquals(15_776_000, cycles.meanNanos(), 15_776_000 * 0.002);
    }

    @Test
    void stateTakes3880MicrosOfEvery25MillisOfTheReferenceBus() {
        CycleTimes cycles = new CycleTimes();

        ReferenceBus.run(600, true, 1, -1, cycles);

        double expected = 15_776_000 / (1 - 0.1552);
        assertEquals(expected, cycles.meanNanos(), expected * 0.002);
    }

    @Test
    void sameSeedSameDigestOtherSeedOtherDigest() {
        TraceSink nothing = new TraceSink() {};

        long first = ReferenceBus.run(5, true, 7, -1, nothing).digest();

        assertEquals(first, ReferenceBus.run(5, true, 7, -1, nothing).digest());
        assertNotEquals(first, ReferenceBus.run(5, true, 8, -1, nothing).digest());
    }

    @Test
    void deadNodeCostsItsTimeOutEveryCycle() {
        CycleTimes cycles = new CycleTimes();

        ReferenceBus.run(60, false, 1, 3, cycles);

        double expected = 28 * 544_000 + 160_000 + 20_000_000 + 50_000;
        assertEquals(expected, cycles.meanNanos(), expected * 0.005);
    }
}
