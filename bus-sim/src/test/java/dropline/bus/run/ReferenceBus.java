package dropline.bus.run;

import dropline.bus.chance.Distribution;
import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.TraceSink;
import dropline.protocol.CharacterFormat;
import dropline.protocol.sized.Sized;
import java.util.ArrayList;
import java.util.List;

/**
 * A bus that can be worked out by hand: 500 kbaud 8N1, 29 nodes, request 8 characters, reply gap 100 us plus
 * exponential of mean 50 us, reply 8 characters (0.8) or 14 (0.2), 50 us after each reply: 29 x 544 us = 15,776 us a
 * cycle.
 */
final class ReferenceBus {
    static final long MICRO = 1_000L;
    static final long SECOND = 1_000_000_000L;

    private ReferenceBus() {}

    static Pit pit() {
        Profile profile = new Profile(
                Profile.ReplyFrom.INTERRUPT,
                Distribution.exponential(100 * MICRO, 50 * MICRO, Long.MAX_VALUE),
                0,
                0,
                100 * MICRO,
                2,
                63,
                List.of(),
                0,
                0,
                0,
                Transceiver.USUAL);
        List<Signal> signals = new ArrayList<>();
        List<Node> nodes = new ArrayList<>();
        Budget budget = new Budget(100_000 * MICRO, 100_000 * MICRO, "common practice");
        for (int n = 0; n < 29; n++) {
            List<Indicator> lamps = new ArrayList<>();
            for (int k = 0; k < 2; k++) {
                int s = signals.size();
                signals.add(new Signal("lamp" + s, "on/off", 0, 1, 1, false, "lamp" + s, 1, 0, s));
                lamps.add(
                        new Indicator("l" + k, Indicator.Kind.LAMP, List.of(s), 0, 0, 0, Indicator.Blocks.NOTHING, 0));
            }
            Panel panel = new Panel("panel" + n, "", Panel.Status.BUILT, lamps, List.of(), budget);
            nodes.add(new Node("node" + n, n + 1, 1, profile, List.of(panel), List.of()));
        }
        Controller controller = new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                Controller.StateDelivery.BROADCAST,
                20_000 * MICRO,
                0,
                0,
                0,
                50 * MICRO,
                0,
                0,
                0,
                0);
        Sized sized = new Sized(8, List.of(new Sized.ReplyChoice(8, 0.8), new Sized.ReplyChoice(14, 0.2)), 6, 4, 10, 0);
        Segment segment =
                new Segment("reference", 500_000, CharacterFormat.EIGHT_N_ONE, sized, controller, nodes, true);
        return new Pit("reference", 0, null, signals, List.of(segment));
    }

    /** Runs for so many seconds; with state, 40 lamps in turn change every 25 ms, first at 25 ms. */
    static SegmentRun run(int seconds, boolean withState, long seed, int deadNode, TraceSink sink) {
        SegmentRun run =
                new SegmentRun(pit(), 0, seed, deadNode < 0 ? List.of() : List.of(Fault.deadNode(0, deadNode)), sink);
        StateBlock block = new StateBlock();
        boolean[] on = new boolean[58];
        int turn = 0;
        for (int second = 0; second < seconds; second++) {
            block.clear();
            for (int k = 0; withState && k < 40; k++) {
                long at = second * SECOND + k * 25_000L * MICRO;
                if (at > 0) {
                    block.addRow(at);
                    for (int i = 0; i < 40; i++) {
                        on[turn] = !on[turn];
                        block.addChange(turn, on[turn] ? 1 : 0);
                        turn = (turn + 1) % 58;
                    }
                }
            }
            run.offer(block);
            run.advanceTo((second + 1) * SECOND);
        }
        run.end();
        return run;
    }
}
