package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class LoadFeedTest {
    private static final Pit PIT = pit();

    private final StateBlock block = new StateBlock();

    @Test
    void statesComeEveryPeriodAndSignalsTakeTurnsRoundTheNodes() {
        LoadFeed feed = new LoadFeed(PIT, new Pit.Load(25_000_000, 3));

        assertTrue(feed.fill(block, 100_000_001));

        assertEquals("""
                25: 0=-999 3=-999 1=-999
                50: 4=-999 0=-1000 3=-1000
                75: 1=-1000 4=-1000 0=-999
                100: 3=-999 1=-999 4=-999
                """, PitExamples.text(block));
    }

    @Test
    void theNextStretchGoesOnWhereTheLastEnded() {
        LoadFeed feed = new LoadFeed(PIT, new Pit.Load(25_000_000, 1));

        assertTrue(feed.fill(block, 25_000_000));
        assertEquals("", PitExamples.text(block));
        assertTrue(feed.fill(block, 50_000_000));
        assertEquals("25: 0=-999\n", PitExamples.text(block));
        assertTrue(feed.fill(block, 51_000_000));
        assertEquals("50: 3=-999\n", PitExamples.text(block));
    }

    @Test
    void aSignalChangesAtMostOnceAState() {
        LoadFeed feed = new LoadFeed(PIT, new Pit.Load(10_000_000, 99));

        assertTrue(feed.fill(block, 20_000_000));

        assertEquals("10: 0=-999 3=-999 1=-999 4=-999\n", PitExamples.text(block));
    }

    @Test
    void aLoadWithoutChangesStillHasStates() {
        LoadFeed feed = new LoadFeed(PIT, new Pit.Load(10_000_000, 0));

        assertTrue(feed.fill(block, 30_000_000));

        assertEquals("10:\n20:\n", PitExamples.text(block));
    }

    /** Two nodes with signals 0, 1 and 3, 1, 4; signal 2 is shown nowhere. */
    private static Pit pit() {
        List<Signal> signals = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            signals.add(PitExamples.signal("s" + i, 1));
        }
        return PitExamples.pit(
                signals,
                List.of(
                        PitExamples.node(1, List.of(0, 1), List.of()),
                        PitExamples.node(2, List.of(3, 1, 4), List.of())));
    }
}
