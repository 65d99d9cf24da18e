package dropline.bus.node;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.pit.Indicator.Blocks;
import org.junit.jupiter.api.Test;

final class TimelineTest {

    @Test
    void loopIsFreeAfterTasksThatFollowEachOther() {
        Timeline timeline = new Timeline(2);
        timeline.add(1000, 100, Blocks.LOOP, 7);
        timeline.add(1000, 200, Blocks.INTERRUPTS, 7);
        long start = timeline.startAtOrAfter(0, 5000);

        assertEquals(start + 300, timeline.loopFree(start + 50));
        assertEquals(start, timeline.loopBlockedSince(start + 250));
        assertEquals(start + 300, timeline.interruptsFree(start + 150));
        assertEquals(start + 50, timeline.interruptsFree(start + 50));
        assertEquals(start + 300, timeline.loopFree(start + 300));
    }

    @Test
    void taskThatBlocksNothingLeavesTheLoopFree() {
        Timeline timeline = new Timeline(1);
        timeline.add(1000, 900, Blocks.NOTHING, 7);
        long start = timeline.startAtOrAfter(0, 5000);

        assertEquals(start + 1, timeline.loopFree(start + 1));
        assertEquals(start + 1000, timeline.startAtOrAfter(0, start + 1));
    }
}
