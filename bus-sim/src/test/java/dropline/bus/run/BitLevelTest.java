package dropline.bus.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.trace.TraceLines;
import org.junit.jupiter.api.Test;

final class BitLevelTest {
    private static final int BUSES = 3000;

    @Test
    void bitsEverywhereAndOnDemandGiveTheSameTrace() {
        int clashes = 0;
        int wrong = 0;
        for (long seed = 1; seed <= BUSES; seed++) {
            TraceLines onDemand = new TraceLines();
            TraceLines everywhere = new TraceLines();
            RandomBus bus = new RandomBus(seed);

            bus.run(new SegmentRun(bus.pit(), 0, seed, bus.faults(), onDemand, false));
            bus.run(new SegmentRun(bus.pit(), 0, seed, bus.faults(), everywhere, true));

            String run = "seed=" + seed + " faults=" + bus.faults();
            for (int i = 0;
                    i < Math.min(onDemand.lines().size(), everywhere.lines().size());
                    i++) {
                assertEquals(onDemand.lines().get(i), everywhere.lines().get(i), run);
            }
            assertEquals(onDemand.lines().size(), everywhere.lines().size(), run);
            clashes += onDemand.only("clash").size();
            wrong += onDemand.only("received-wrong").size();
        }
        int foundClashes = clashes;
        int foundWrong = wrong;
        assertTrue(
                clashes > 1000 && wrong > 1000,
                () -> "the buses must be in trouble often: clashes=" + foundClashes + " wrong=" + foundWrong);
    }
}
