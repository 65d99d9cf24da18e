package dropline.harness.bound;

import static dropline.harness.bound.RandomParts.MICRO;
import static dropline.harness.bound.RandomParts.MILLI;

import dropline.bus.bound.WorstCase;
import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.harness.layout.LayoutFile;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Protocol;
import dropline.protocol.frames.DroplineFrames;
import dropline.protocol.modbus.ModbusRtu;
import dropline.protocol.sized.Sized;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A pit of one segment, or of two on one board, everything about it drawn from one number. */
final class RandomSegment {
    private static final Protocol COUNTED = custom("counted");
    private static final Protocol LINES = custom("lines");
    private static final Protocol GAPS = custom("gaps");
    private static final List<Integer> BAUDS =
            List.of(9600, 19_200, 38_400, 57_600, 115_200, 115_200, 250_000, 500_000, 1_000_000);

    final Pit pit;
    final int dead;
    final long gapNanos;

    RandomSegment(long seed) {
        Dice dice = new Dice(seed);
        boolean states = dice.below(4) > 0;
        long period = states ? 10 * MILLI + dice.between(0, 90 * MILLI) : 0;
        gapNanos = states || dice.oneIn(2) ? 0 : 10 * MILLI + dice.between(0, 40 * MILLI);
        List<Signal> signals = new ArrayList<>();
        List<Segment> segments = new ArrayList<>();
        boolean shared = dice.oneIn(5);
        Adapter adapter = adapter(dice);
        for (int s = 0; s < (shared ? 2 : 1); s++) {
            segments.add(segment(dice, "bus" + s, shared, period, adapter, signals));
        }
        List<Hub> hubs = shared
                ? List.of(new Hub("board", Hub.Kind.BOARD, dice.rarelyHuge(0, 500 * MICRO), List.of(0, 1)))
                : List.of();
        pit = new Pit("random", period, null, signals, segments, hubs);
        int nodes = segments.get(0).nodes().size();
        dead = dice.oneIn(3) ? dice.below(nodes) : WorstCase.NONE;
    }

    private static Segment segment(
            Dice dice, String name, boolean onBoard, long period, Adapter adapter, List<Signal> signals) {
        int baud = dice.of(BAUDS);
        CharacterFormat format = dice.oneIn(3) ? CharacterFormat.EIGHT_E_ONE : CharacterFormat.EIGHT_N_ONE;
        long charNanos = format.bits() * 1_000_000_000L / baud;
        boolean broadcast = dice.oneIn(2);
        Protocol protocol = protocol(dice, broadcast);
        int count = 1 + (int) dice.between(0, onBoard ? 20 : 40);
        RandomParts parts = new RandomParts(dice, baud, charNanos);
        List<Node> nodes = new ArrayList<>();
        for (int n = 0; n < count; n++) {
            nodes.add(node(dice, parts, name + " node " + n, n + 1, period, signals));
        }
        Controller controller =
                controller(dice, onBoard, broadcast, adapter, charNanos, timeOut(nodes, adapter, charNanos, dice));
        return new Segment(name, baud, format, protocol, controller, nodes, !dice.oneIn(60));
    }

    private static Adapter adapter(Dice dice) {
        return dice.oneIn(3)
                ? Adapter.NONE
                : new Adapter(
                        "usb",
                        4L * dice.below(3) * dice.below(3) * MILLI,
                        62,
                        dice.oneIn(6) ? 16 * MILLI : MILLI / (1 + 7 * dice.below(2)),
                        dice.oneIn(2)
                                ? Distribution.uniform(0, 500 * MICRO)
                                : Distribution.exponential(20 * MICRO, 100 * MICRO, 3 * MILLI));
    }

    private static Controller controller(
            Dice dice, boolean onBoard, boolean broadcast, Adapter adapter, long charNanos, long timeOut) {
        return new Controller(
                onBoard || dice.oneIn(2) ? Controller.Kind.HUB : Controller.Kind.HOST,
                adapter,
                broadcast ? StateDelivery.BROADCAST : StateDelivery.ADDRESSED,
                timeOut,
                dice.below(4),
                dice.below(4),
                dice.between(10 * MILLI, 1000 * MILLI),
                charNanos / 2 + dice.between(0, MILLI),
                dice.oneIn(4) ? dice.between(0, 5 * MILLI) : 0,
                dice.oneIn(2) ? 20 * MILLI + dice.between(0, 1800 * MILLI) : 0,
                dice.rarelyHuge(0, charNanos / 2),
                dice.between(0, charNanos / 4));
    }

    /** Long enough for the slowest answer, now and then too short. */
    private static long timeOut(List<Node> nodes, Adapter adapter, long charNanos, Dice dice) {
        long slowest = 0;
        for (Node node : nodes) {
            Profile profile = node.profile();
            long blocks =
                    profile.tasks().stream().mapToLong(Profile.Task::takesNanos).sum();
            for (Panel panel : node.panels()) {
                for (Indicator indicator : panel.indicators()) {
                    blocks += indicator.refreshTakesNanos();
                }
            }
            slowest = Math.max(slowest, 2 * blocks + profile.replyGap().longestNanos() + profile.enableLeadNanos());
        }
        long usb = adapter.latencyTimerNanos()
                + adapter.frameNanos()
                + adapter.wakeUp().longestNanos();
        return (slowest + usb + 60 * charNanos) * (dice.oneIn(25) ? 1 : 2) / (dice.oneIn(2) ? 2 : 1);
    }

    private static Protocol protocol(Dice dice, boolean broadcast) {
        return switch (dice.below(4)) {
            case 0 -> DroplineFrames.create();
            case 1 -> ModbusRtu.create();
            case 2 -> broadcast ? dice.of(List.of(COUNTED, LINES)) : GAPS;
            default ->
                new Sized(
                        4 + dice.below(8),
                        List.of(new Sized.ReplyChoice(6, 0.5), new Sized.ReplyChoice(6 + dice.below(20), 0.5)),
                        6,
                        1 + dice.below(4),
                        1 + dice.below(12),
                        dice.below(2) * 200);
        };
    }

    private static Protocol custom(String name) {
        Path file = Path.of("../scenarios/layouts", name + ".yaml");
        if (LayoutFile.read(file) instanceof LayoutFile.Understood understood) {
            return understood.protocol();
        }
        throw new AssertionError(file + " is not understood");
    }

    private static Node node(
            Dice dice, RandomParts parts, String name, int address, long period, List<Signal> signals) {
        List<Indicator> indicators = new ArrayList<>();
        for (int i = dice.below(4); i > 0; i--) {
            int signal = dice.oneIn(5) && !signals.isEmpty() ? dice.below(signals.size()) : signals.size();
            if (signal == signals.size()) {
                signals.add(signal(dice, signal));
            }
            indicators.add(parts.indicator("shows " + i, signal, signals.get(signal), period));
        }
        List<Control> controls = new ArrayList<>();
        for (int c = dice.below(3); c > 0; c--) {
            controls.add(parts.control(name + " control " + c, 990 + c));
        }
        Panel panel =
                new Panel(name + " panel", "", Panel.Status.BUILT, indicators, controls, new Budget(1, 1, "none"));
        return new Node(
                name, address, dice.oneIn(4) ? 1 + dice.below(4) : 1, parts.profile(), List.of(panel), List.of());
    }

    /** Some neighbours on the wire, some not. */
    private static Signal signal(Dice dice, int index) {
        double max = dice.of(List.of(1.0, 1.0, 100.0, 1000.0));
        int number = index + index / 4;
        return new Signal("signal " + index, "unit", 0, max, 1, false, "signal " + index, 1, 0, number);
    }
}
