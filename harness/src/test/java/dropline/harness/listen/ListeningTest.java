package dropline.harness.listen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.link.Arrival;
import dropline.harness.link.OneNode;
import dropline.protocol.Bytes;
import dropline.protocol.NodeStatus;
import dropline.protocol.frames.DroplineFrame;
import dropline.protocol.frames.DroplineFrames;
import java.util.List;
import org.junit.jupiter.api.Test;

final class ListeningTest {
    private static final long SECOND = 1_000_000_000L;

    private final Pit pit = OneNode.pit();
    private final Segment segment = pit.segments().get(0);
    private final Listening listening = new Listening(pit, 0, List.of());
    private long now;

    private void say(DroplineFrame frame, long atNanos) {
        Bytes bytes = DroplineFrames.encode(frame);
        now = atNanos + UartClock.exact(segment.baud()).heardNanos(segment.format(), bytes.length());
        listening.take(new Arrival.Received(now, bytes));
    }

    private void pollAt(long nanos, int refreshes) {
        say(new DroplineFrame.Poll(OneNode.ADDRESS, 0, List.of()), nanos);
        say(
                new DroplineFrame.Reply(
                        OneNode.ADDRESS, new NodeStatus(0, 0, 0, 0, refreshes & 0xFF), false, List.of()),
                now + SECOND / 1000);
    }

    /** It runs for ten seconds, stands for twenty, runs, and stands again. */
    @Test
    void aDisplayThatComesToAStopIsTroubleOnceEachTime() {
        int refreshes = 0;
        for (int second = 0; second < 60; second++) {
            boolean runs = second < 10 || (second >= 30 && second < 40);
            refreshes += runs ? 1 : 0;
            pollAt(second * SECOND, refreshes);
        }

        assertEquals(2, listening.troubles());
        NodeTally node = listening.nodes().iterator().next();
        assertEquals(2, node.displayStops());
        assertTrue(ListenText.of(listening, true, true).contains("came to a stop 2 times."));
    }

    /** A board without a display never counts one. */
    @Test
    void whatNeverRanDoesNotStop() {
        for (int second = 0; second < 60; second++) {
            pollAt(second * SECOND, 0);
        }

        assertEquals(0, listening.troubles());
    }
}
