package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;

import dropline.bus.Pits;
import dropline.bus.chance.Distribution;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.TraceLines;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Protocol;
import java.util.List;

/** A bus of three nodes at 250 kbaud (a bit is 4 us) on which something goes wrong, and what its trace counts. */
abstract class FaultyBus {
    static final long BIT = 4 * MICRO;
    private static final long RUN = 400 * MILLI;
    private static final long TURN = 10 * MILLI;

    TraceLines lines = new TraceLines();

    void run(Protocol protocol, Fault... faults) {
        run(pit(protocol, profile(130 * MICRO), 2 * MILLI), faults);
    }

    void run(Pit pit, Fault... faults) {
        lines = new TraceLines();
        SegmentRun run = new SegmentRun(pit, 0, 1, List.of(faults), lines);
        StateBlock block = new StateBlock();
        for (int i = 0; i < RUN / TURN; i++) {
            block.clear();
            block.addRow(i * TURN + MILLI);
            for (int signal = 0; signal < 3; signal++) {
                block.addChange(signal, i + 1);
            }
            run.offer(block);
            run.advanceTo((i + 1) * TURN);
        }
        run.end();
    }

    /** The second node has a profile of its own. */
    static Pit pit(Protocol protocol, Profile second, long timeOutNanos) {
        boolean broadcasts = protocol.canBroadcast() && protocol.acknowledgesState();
        Controller controller = new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                broadcasts ? Controller.StateDelivery.BROADCAST : Controller.StateDelivery.ADDRESSED,
                timeOutNanos,
                1,
                0,
                0,
                50 * MICRO,
                0,
                0,
                2 * BIT,
                2 * BIT);
        List<Node> nodes = List.of(node(0, profile(100 * MICRO)), node(1, second), node(2, profile(100 * MICRO)));
        Segment segment = new Segment("bus", 250_000, CharacterFormat.EIGHT_N_ONE, protocol, controller, nodes, true);
        return new Pit(
                "pit",
                0,
                null,
                List.of(Pits.signal(1, false), Pits.signal(2, false), Pits.signal(3, false)),
                List.of(segment));
    }

    static Node node(int index, Profile profile) {
        return Pits.node("node" + index, 1 + index, profile, List.of(Pits.lamp(index)), List.of());
    }

    static Profile profile(long gapNanos) {
        return new Profile(
                Profile.ReplyFrom.LOOP,
                Distribution.constant(gapNanos),
                2 * BIT,
                BIT,
                10 * MICRO,
                2,
                63,
                List.of(),
                0,
                0,
                0,
                Transceiver.USUAL);
    }

    static Fault node(FaultKind kind, int node, double rate, long amount) {
        return new Fault(kind, 0, node, -1, -1, 0, Fault.TO_THE_END, rate, amount);
    }

    static Fault segment(FaultKind kind, double rate, long amount) {
        return new Fault(kind, 0, -1, -1, -1, 0, Fault.TO_THE_END, rate, amount);
    }

    static Fault at(Fault fault, long fromNanos) {
        return new Fault(
                fault.kind(), 0, fault.node(), -1, -1, fromNanos, Fault.TO_THE_END, fault.rate(), fault.amount());
    }

    int count(String word) {
        return lines.only(word).size();
    }

    long answeredBy(int node) {
        return lines.only("answered").stream()
                .filter(line -> line.split(" ")[2].equals(String.valueOf(node)))
                .count();
    }

    long wrongAt(int receiver) {
        return lines.only("received-wrong").stream()
                .filter(line -> line.split(" ")[2].equals(String.valueOf(receiver)))
                .count();
    }
}
