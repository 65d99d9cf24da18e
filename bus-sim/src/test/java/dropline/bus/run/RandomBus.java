package dropline.bus.run;

import dropline.bus.chance.Distribution;
import dropline.bus.chance.Draws;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.fault.FaultKind.Timing;
import dropline.bus.fault.FaultKind.Unit;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.pit.Transceiver;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Protocol;
import dropline.protocol.frames.DroplineFrames;
import dropline.protocol.modbus.ModbusRtu;
import dropline.protocol.sized.Sized;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.LongConsumer;

/** A small bus, everything about it drawn from one number; some of its nodes' clocks are off, some answer late. */
final class RandomBus {
    private static final int[] BAUDS = {9600, 19_200, 57_600, 115_200, 250_000, 500_000, 1_000_000};
    private static final FaultKind[] KINDS = {
        FaultKind.DEAD_NODE,
        FaultKind.RESET,
        FaultKind.DRIVER_ENABLED_LATE,
        FaultKind.DRIVER_ENABLED_EARLY,
        FaultKind.DRIVER_RELEASED_LATE,
        FaultKind.DRIVER_RELEASED_EARLY,
        FaultKind.REPLY_TOO_SOON,
        FaultKind.DUPLICATE_ADDRESS,
        FaultKind.STUCK_DRIVER,
        FaultKind.BABBLING_NODE,
        FaultKind.ANSWERS_ANOTHER,
        FaultKind.EAVESDROPPER,
        FaultKind.WRONG_BAUD,
        FaultKind.CLOCK_OFF,
        FaultKind.BLACKOUT,
        FaultKind.RING_OVERRUN,
        FaultKind.LOOP_STALL,
        FaultKind.MISSING_BIAS,
        FaultKind.FLOATING_RECEIVER,
        FaultKind.ECHO,
        FaultKind.NOISE_BURST,
        FaultKind.SWAPPED_PAIR,
        FaultKind.LOST_STATE_FRAME,
        FaultKind.BROWN_OUT,
        FaultKind.BACK_FEED,
        FaultKind.COMMON_WIRE_LIFTED
    };

    private final long stream;
    private final Pit pit;
    private final List<Fault> faults = new ArrayList<>();
    private final long charNanos;
    private int drawn;

    RandomBus(long seed) {
        stream = Draws.mix(seed);
        int baud = BAUDS[below(BAUDS.length)];
        CharacterFormat format = below(2) == 0 ? CharacterFormat.EIGHT_N_ONE : CharacterFormat.EIGHT_E_ONE;
        charNanos = format.bits() * 1_000_000_000L / baud;
        List<Signal> signals = new ArrayList<>();
        List<Node> nodes = new ArrayList<>();
        int count = 1 + below(4);
        for (int n = 0; n < count; n++) {
            signals.add(new Signal("signal" + n, "", 0, 1000, 1, false, "signal" + n, 1, 0, 10 + n));
            nodes.add(node(n, baud));
        }
        boolean addressed = below(3) == 0;
        Protocol protocol =
                switch (below(4)) {
                    case 0 -> DroplineFrames.create();
                    case 1 -> ModbusRtu.create();
                    case 2 -> InventedLayouts.of(below(InventedLayouts.COUNT));
                    default ->
                        new Sized(8, List.of(new Sized.ReplyChoice(6, 0.5), new Sized.ReplyChoice(9, 0.5)), 6, 4, 4, 0);
                };
        Controller controller = new Controller(
                below(2) == 0 ? Controller.Kind.HUB : Controller.Kind.HOST,
                Adapter.NONE,
                addressed ? Controller.StateDelivery.ADDRESSED : Controller.StateDelivery.BROADCAST,
                (10 + below(60)) * charNanos,
                below(3),
                below(4),
                50 * charNanos,
                below(3) * charNanos,
                0,
                below(2) * 400L * charNanos,
                below(3) * charNanos / 4,
                below(3) * charNanos / 4);
        pit = new Pit(
                "random",
                0,
                null,
                signals,
                List.of(new Segment("bus", baud, format, protocol, controller, nodes, below(20) > 0)));
        for (int f = below(3); f > 0; f--) {
            faults.add(fault(count, baud));
        }
    }

    Pit pit() {
        return pit;
    }

    List<Fault> faults() {
        return faults;
    }

    /** Runs for 40 stretches, with a change of one signal in each. */
    void run(SegmentRun run) {
        run(run::offer, run::advanceTo);
        run.end();
    }

    /** As above, short of the end. */
    void run(Consumer<StateBlock> offer, LongConsumer advanceTo) {
        StateBlock block = new StateBlock();
        int controls = Layout.of(pit).controls().size();
        long step = 60 * charNanos;
        for (int i = 0; i < 40; i++) {
            block.clear();
            block.addRow(i * step + step / 2);
            block.addChange(i % pit.signals().size(), i + 1);
            if (controls > 0) {
                block.addMove(i * step + step / 3, i % controls, i / controls % 3);
            }
            offer.accept(block);
            advanceTo.accept((i + 1) * step);
        }
    }

    private Node node(int n, int baud) {
        int parts = 981_000 + below(38_000);
        Transceiver transceiver = new Transceiver(
                Transceiver.Driver.values()[below(3)], Transceiver.Receiver.values()[below(3)], below(2) == 0 ? 16 : 8);
        Profile profile = new Profile(
                below(2) == 0 ? Profile.ReplyFrom.LOOP : Profile.ReplyFrom.INTERRUPT,
                Distribution.constant(below(4) * charNanos + below(1000)),
                below(3) * charNanos / 8,
                below(3) * charNanos / 8,
                below(2) * charNanos,
                2,
                63,
                below(3) > 0
                        ? List.of()
                        : List.of(new Profile.Task(
                                "task", 100 * charNanos, 8 * charNanos, Indicator.Blocks.values()[below(3)])),
                20 * charNanos,
                (long) baud * parts / 1000,
                1000,
                transceiver);
        Indicator indicator = indicator(n, Indicator.Kind.values()[below(Indicator.Kind.values().length)]);
        Control control = control(n, Control.Kind.values()[below(Control.Kind.values().length)]);
        Panel panel = new Panel(
                "panel" + n,
                "",
                Panel.Status.BUILT,
                List.of(indicator),
                below(2) == 0 ? List.of() : List.of(control),
                new Budget(1, 1, "none"));
        return new Node("node" + n, 1 + n, 1, profile, List.of(panel), List.of());
    }

    private Indicator indicator(int signal, Indicator.Kind kind) {
        boolean zeroes = kind.moves() && below(2) == 0;
        Motion motion = new Motion(
                kind.moves() ? 1e8 / charNanos : 0,
                kind.moves() && below(2) == 0 ? 1e15 / charNanos / charNanos : 0,
                0,
                zeroes ? Motion.Zeroing.values()[1 + below(2)] : Motion.Zeroing.NONE,
                zeroes ? 1e8 / charNanos : 0);
        return new Indicator(
                "shows",
                kind,
                List.of(signal),
                below(2) * 30L * charNanos,
                kind.refreshes() || kind.hasFrames() ? 40 * charNanos : 0,
                kind.refreshes() ? 4 * charNanos : 0,
                kind.refreshes() ? Indicator.Blocks.values()[below(3)] : Indicator.Blocks.NOTHING,
                motion,
                new Indicator.Glow(50_000 * charNanos, 80_000 * charNanos));
    }

    private Control control(int n, Control.Kind kind) {
        boolean positions = kind == Control.Kind.SELECTOR || kind == Control.Kind.THREE_WAY_TOGGLE;
        return new Control(
                "control" + n,
                kind,
                100 + n,
                below(2) * 40L * charNanos,
                below(2) * 10L * charNanos,
                0,
                positions ? new Control.Positions(3, below(3) * 30L * charNanos, 1) : Control.Positions.NONE,
                kind == Control.Kind.KEY_MATRIX ? new Control.Matrix(2, 2, 30 * charNanos, below(2) == 0) : null,
                kind == Control.Kind.LEVER
                        ? List.of(new Control.Detent("low", 0), new Control.Detent("high", 2))
                        : List.of());
    }

    private Fault fault(int nodes, int baud) {
        FaultKind kind = KINDS[below(KINDS.length)];
        int node = kind.strikes() == Strikes.SEGMENT ? -1 : below(nodes);
        int other = kind.strikes() == Strikes.NODE_AND_OTHER ? below(nodes) : -1;
        double rate =
                switch (kind.timing()) {
                    case STEADY -> 0;
                    case CHANCE -> below(2) == 0 ? 1 : 0.3;
                    case EVENT -> below(2) == 0 ? 0 : 1e9 / (200.0 * charNanos);
                };
        long amount =
                switch (kind.unit()) {
                    case TIME -> charNanos * (1 + below(40)) / 4;
                    case BAUD -> baud / 2;
                    case PARTS_PER_MILLION -> 60_000L - 120_000L * below(2);
                    case CHARACTERS -> 4 + below(8);
                    default -> 0;
                };
        long from = below(600) * charNanos;
        long until = below(2) == 0 ? Fault.TO_THE_END : from + 1 + below(900) * charNanos;
        if (kind.unit() == Unit.TIME && kind.timing() == Timing.EVENT) {
            amount *= 4;
        }
        return new Fault(kind, 0, node, -1, other, from, until, rate, amount);
    }

    private int below(int limit) {
        return (int) (Draws.draw(stream, drawn++) * limit);
    }
}
