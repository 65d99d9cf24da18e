package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.trace.TraceLines;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Nobody is kept waiting for ever, and nothing overtakes what was there first. */
final class TakingTurnsTest {

    @Test
    void pollsComeInTimeThoughStateChangesFasterThanItCanBeSent() {
        Pit pit = pit(Pits.profile(100 * MICRO));
        TraceLines lines = new TraceLines();
        SegmentRun run = new SegmentRun(pit, 0, 1, List.of(), lines);

        // a broadcast of one value takes 200 us and a gap of 50 us: the next change is always there
        run.offer(changes(100 * MICRO, 1000));
        run.advanceTo(100 * MILLI + 1);

        // two broadcasts to a poll: 2 x 250 us and 550 us
        assertEquals(95, lines.only("answered").size(), 2);
    }

    @Test
    void valueHeardLaterIsNotTakenSooner() {
        Profile usual = Pits.profile(100 * MICRO);
        Profile slow = new Profile(
                usual.replyFrom(), usual.replyGap(), 0, 0, 20 * MILLI, 2, 63, List.of(), 0, 0, 0, usual.transceiver());
        TraceLines lines = new TraceLines();
        SegmentRun run = new SegmentRun(pit(slow), 0, 1, List.of(), lines);

        run.offer(changes(2 * MILLI, 400));
        run.advanceTo(1000 * MILLI);

        List<Integer> serials = lines.only("applied").stream()
                .map(line -> Integer.parseInt(line.split(" ")[3]))
                .toList();
        assertTrue(serials.size() > 300, "taken: " + serials.size());
        assertEquals(serials.stream().sorted().toList(), serials);
    }

    private static StateBlock changes(long everyNanos, int count) {
        StateBlock block = new StateBlock();
        for (int i = 1; i <= count; i++) {
            block.addRow(i * everyNanos);
            block.addChange(0, i % 1000);
        }
        return block;
    }

    private static Pit pit(Profile profile) {
        return Pits.pit(
                List.of(Pits.signal(0, false)),
                Pits.controller(StateDelivery.BROADCAST, MILLI, 0),
                List.of(Pits.node("node", 1, profile, List.of(Pits.lamp(0)), List.of())));
    }
}
