package dropline.bus.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.pit.Transceiver;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Protocol;
import dropline.protocol.modbus.ModbusRtu;
import dropline.protocol.sized.Sized;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Closed forms against hand calculations: the reference bus of 29 nodes, and Modbus at 19200 baud. */
final class PlanTest {
    private static final Sized SIZED =
            new Sized(8, List.of(new Sized.ReplyChoice(14, 0.2), new Sized.ReplyChoice(8, 0.8)), 6, 4, 10, 0);

    @Test
    void theReferenceBusPollsItsNodesInTheTimeWorkedOutByHand() {
        Pit pit = pit(29, SIZED, 500_000, CharacterFormat.EIGHT_N_ONE, StateDelivery.BROADCAST);

        PollFloor floor = PollFloor.of(pit, pit.segments().get(0));

        assertEquals(20_000, floor.characterNanos());
        assertEquals(29L * (160_000 + 100_000 + 160_000 + 50_000), floor.shortestCycleNanos());
        assertEquals(29 * 544_000.0, floor.meanCycleNanos(), 1e-3);
    }

    @Test
    void fortyChangedSignalsTakeFourFramesAndTheirGaps() {
        Pit pit = pit(29, SIZED, 500_000, CharacterFormat.EIGHT_N_ONE, StateDelivery.BROADCAST);

        StateTime state = StateTime.of(pit, pit.segments().get(0), 40);

        assertEquals(new StateTime(4, 3_880_000), state);
        double mean = PollFloor.of(pit, pit.segments().get(0)).meanCycleNanos(state.nanos() / 25e6);
        assertEquals(15_776_000 / (1 - 0.1552), mean, 1e-3);
    }

    @Test
    void addressedStateLengthensThePollsThatCarryIt() {
        Pit pit = pit(29, SIZED, 500_000, CharacterFormat.EIGHT_N_ONE, StateDelivery.ADDRESSED);

        // two signals of four characters on each of 29 nodes
        assertEquals(
                new StateTime(29, 29 * 8 * 20_000L),
                StateTime.of(pit, pit.segments().get(0), 58));
    }

    @Test
    void modbusPaysThreeAndAHalfCharactersOnBothSidesOfAFrame() {
        Pit pit = pit(1, ModbusRtu.create(), 19_200, CharacterFormat.EIGHT_E_ONE, StateDelivery.ADDRESSED);

        PollFloor floor = PollFloor.of(pit, pit.segments().get(0));

        // MODBUS over serial line V1.02, 2.5.1.1: 8 characters of 11 bits, t3.5, 7 characters (one register read), t3.5
        assertEquals(572_917, floor.characterNanos());
        assertEquals((8 * 11 + 7 * 11 + 2 * 38.5) * 1e9 / 19_200, (double) floor.shortestCycleNanos(), 4);
    }

    @Test
    void aShareOfOneLeavesNoTimeForPolls() {
        PollFloor floor = new PollFloor(20_000, 1_000_000, 1_000_000);

        assertEquals(2_000_000, floor.meanCycleNanos(0.5), 1e-6);
        assertThrows(IllegalArgumentException.class, () -> floor.meanCycleNanos(1));
    }

    private static Pit pit(int count, Protocol protocol, int baud, CharacterFormat format, StateDelivery state) {
        List<Signal> signals = new ArrayList<>();
        List<Node> nodes = new ArrayList<>();
        for (int n = 0; n < count; n++) {
            signals.add(signal(2 * n));
            signals.add(signal(2 * n + 1));
            nodes.add(node(n));
        }
        Controller controller =
                new Controller(Controller.Kind.HUB, Adapter.NONE, state, 10_000_000, 0, 0, 0, 50_000, 0, 0, 0, 0);
        return new Pit(
                "plan", 0, null, signals, List.of(new Segment("bus", baud, format, protocol, controller, nodes, true)));
    }

    private static Signal signal(int number) {
        return new Signal("s" + number, "", 0, 1, 1, false, "s" + number, 1, 0, number);
    }

    private static Node node(int n) {
        Profile profile = new Profile(
                Profile.ReplyFrom.INTERRUPT,
                Distribution.exponential(100_000, 50_000, Long.MAX_VALUE),
                0,
                0,
                0,
                2,
                63,
                List.of(),
                0,
                0,
                0,
                Transceiver.USUAL);
        Indicator lamps = new Indicator(
                "lamps", Indicator.Kind.LAMP, List.of(2 * n, 2 * n + 1), 0, 0, 0, Indicator.Blocks.NOTHING, 0);
        Budget budget = new Budget(150_000_000, 150_000_000, "chosen for the test");
        Panel panel = new Panel("panel " + n, "", Panel.Status.BUILT, List.of(lamps), List.of(), budget);
        return new Node("node " + n, n + 1, 1, profile, List.of(panel), List.of());
    }
}
