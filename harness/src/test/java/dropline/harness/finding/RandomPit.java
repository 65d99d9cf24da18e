package dropline.harness.finding;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Motion.Zeroing;
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
import java.util.Random;

/** A pit of one segment, drawn from a seed: every indicator and control kind, boards fast and slow. */
final class RandomPit {
    static final long MICRO = 1_000;
    static final long MILLI = 1_000_000;
    private static final List<Control.Detent> DETENTS =
            List.of(new Control.Detent("idle", 0), new Control.Detent("climb", 500), new Control.Detent("full", 1000));

    /** How its parties speak. */
    enum Speech {
        DROPLINE_500K(500_000, true),
        DROPLINE_HOST_115200(115_200, true),
        MODBUS_19200(19_200, false),
        SIZED_250K(250_000, true),
        SIZED_HOST_115200(115_200, false);

        private final int baud;
        private final boolean broadcast;

        Speech(int baud, boolean broadcast) {
            this.baud = baud;
            this.broadcast = broadcast;
        }

        /** Simulated long enough for some hundred polls. */
        long runNanos() {
            return this == MODBUS_19200 ? 8_000 * MILLI : 4_000 * MILLI;
        }

        long charNanos() {
            return 1_000_000_000L * format().bits() / baud;
        }

        private CharacterFormat format() {
            return this == MODBUS_19200 ? CharacterFormat.EIGHT_E_ONE : CharacterFormat.EIGHT_N_ONE;
        }

        private Protocol protocol() {
            return switch (this) {
                case DROPLINE_500K, DROPLINE_HOST_115200 -> DroplineFrames.create();
                case MODBUS_19200 -> ModbusRtu.create();
                case SIZED_250K, SIZED_HOST_115200 -> Sized.withReply(8, 12, 6, 4, 8);
            };
        }

        private boolean host() {
            return this == DROPLINE_HOST_115200 || this == SIZED_HOST_115200;
        }
    }

    private final Random random;
    private final Speech speech;
    private final boolean crowded;
    private final List<Signal> signals = new ArrayList<>();
    private int controls;

    private RandomPit(long seed) {
        random = new Random(seed);
        speech = speech(seed);
        crowded = random.nextInt(4) == 0;
    }

    static Speech speech(long seed) {
        return Speech.values()[(int) Math.floorMod(seed, (long) Speech.values().length)];
    }

    static Pit of(long seed) {
        return new RandomPit(seed).pit();
    }

    private Pit pit() {
        int count = speech == Speech.MODBUS_19200 ? 4 + random.nextInt(3) : 4 + random.nextInt(6);
        List<Node> nodes = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            nodes.add(node(i));
        }
        long period = random.nextBoolean() ? 0 : (20 + random.nextInt(30)) * MILLI;
        Segment segment =
                new Segment("front", speech.baud, speech.format(), speech.protocol(), controller(), nodes, true);
        return new Pit("random", period, null, signals, List.of(segment));
    }

    private Controller controller() {
        long timeOut = speech == Speech.MODBUS_19200 ? 120 * MILLI : speech.host() ? 60 * MILLI : 45 * MILLI;
        Adapter adapter = speech.host()
                ? new Adapter("serial", MILLI, 62, MILLI, Distribution.uniform(50 * MICRO, 400 * MICRO))
                : new Adapter("usb", 0, 64, MILLI, Distribution.uniform(50 * MICRO, 400 * MICRO));
        return new Controller(
                speech.host() ? Controller.Kind.HOST : Controller.Kind.HUB,
                adapter,
                speech.broadcast ? StateDelivery.BROADCAST : StateDelivery.ADDRESSED,
                timeOut,
                random.nextInt(3),
                random.nextBoolean() ? 0 : 3,
                300 * MILLI,
                50 * MICRO,
                speech == Speech.MODBUS_19200 ? 2 * MILLI : 0,
                random.nextBoolean() ? 0 : 1_000 * MILLI,
                4 * MICRO,
                12 * MICRO);
    }

    private Node node(int index) {
        int first = signals.size();
        List<Indicator> shows = new ArrayList<>();
        shows.add(indicator((5 * index + 4) % Indicator.Kind.values().length));
        if (random.nextBoolean()) {
            shows.add(indicator(random.nextInt(Indicator.Kind.values().length)));
        }
        List<Control> moves = new ArrayList<>();
        moves.add(control(index % Control.Kind.values().length));
        if (random.nextInt(3) == 0) {
            moves.add(control(random.nextInt(Control.Kind.values().length)));
        }
        Budget budget = new Budget(150 * MILLI, 150 * MILLI, "common practice");
        Panel panel = new Panel("panel " + index, "", Panel.Status.BUILT, shows, moves, budget);
        int weight = random.nextInt(5) == 0 ? 2 : 1;
        List<Node.Register> registers = new ArrayList<>();
        for (int i = first; i < signals.size(); i++) {
            registers.add(new Node.Register(i, 10 + 2 * (i - first)));
        }
        return new Node("node " + index, index + 1, weight, profile(), List.of(panel), registers);
    }

    private Profile profile() {
        boolean loop = random.nextBoolean();
        long base = (60 + random.nextInt(100)) * MICRO;
        Distribution gap = loop
                ? Distribution.exponential(base, 40 * MICRO, base + 400 * MICRO)
                : Distribution.uniform(base, base + 60 * MICRO);
        List<Profile.Task> tasks = new ArrayList<>();
        if (random.nextInt(4) == 0) {
            tasks.add(new Profile.Task("legends", 50 * MILLI, speech.charNanos(), Blocks.INTERRUPTS));
        }
        if (crowded && random.nextInt(3) == 0) {
            tasks.add(new Profile.Task("strip", 70 * MILLI, 5 * speech.charNanos(), Blocks.INTERRUPTS));
        }
        boolean crystal = speech == Speech.DROPLINE_500K && random.nextBoolean();
        return new Profile(
                loop ? Profile.ReplyFrom.LOOP : Profile.ReplyFrom.INTERRUPT,
                gap,
                random.nextInt(6) * MICRO,
                random.nextInt(20) * MICRO,
                (100 + random.nextInt(500)) * MICRO,
                2,
                63,
                tasks,
                (300 + random.nextInt(400)) * MILLI,
                crystal ? 16_000_000 : 0,
                crystal ? 32 : 0,
                Transceiver.USUAL);
    }

    private Indicator indicator(int ordinal) {
        Indicator.Kind kind = Indicator.Kind.values()[ordinal];
        int count = kind.refreshes() && !Indicator.showsOne(kind) ? 1 + random.nextInt(2) : 1;
        List<Integer> shown = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            shown.add(signal(kind));
        }
        String name = kind.name() + " " + signals.size();
        return switch (kind) {
            case LAMP -> new Indicator(name, kind, shown, 2 * MILLI, 0, 0, Blocks.NOTHING, 0);
            case DIGITS -> refreshed(name, kind, shown, 50, 1);
            case CHARACTER_LCD, VFD -> refreshed(name, kind, shown, 200, 6);
            case OLED -> refreshed(name, kind, shown, 100, 9);
            case LED_BAR -> refreshed(name, kind, shown, 20, 1);
            case GAUGE_STEPPER -> new Indicator(name, kind, shown, 3 * MILLI, 0, 0, Blocks.NOTHING, 600);
            case SERVO -> new Indicator(name, kind, shown, MILLI, 20 * MILLI, 0, Blocks.NOTHING, 400);
            case DRUM_COUNTER -> moving(name, kind, shown, new Motion(500, 0, 0, Zeroing.STOP, 800));
            case STEPPER -> moving(name, kind, shown, new Motion(1500, 20_000, 0.5, Zeroing.SENSOR, 900));
            case FLAG -> new Indicator(name, kind, shown, 40 * MILLI, 0, 0, Blocks.NOTHING, 0);
            case BACKLIGHT_ZONE -> new Indicator(name, kind, shown, 0, 2 * MILLI, 0, Blocks.NOTHING, 0);
            case FILAMENT_LAMP ->
                new Indicator(
                        name,
                        kind,
                        shown,
                        0,
                        0,
                        0,
                        Blocks.NOTHING,
                        Motion.NONE,
                        new Indicator.Glow(60 * MILLI, 90 * MILLI));
        };
    }

    private static Indicator moving(String name, Indicator.Kind kind, List<Integer> shown, Motion motion) {
        return new Indicator(name, kind, shown, 0, 0, 0, Blocks.NOTHING, motion, Indicator.Glow.NONE);
    }

    private static Indicator refreshed(
            String name, Indicator.Kind kind, List<Integer> shown, long everyMillis, long takesMillis) {
        return new Indicator(name, kind, shown, 0, everyMillis * MILLI, takesMillis * MILLI, Blocks.LOOP, 0);
    }

    private int signal(Indicator.Kind kind) {
        int index = signals.size();
        boolean lamp = kind == Indicator.Kind.LAMP || kind.mustArrive();
        boolean wraps =
                (kind == Indicator.Kind.GAUGE_STEPPER || kind == Indicator.Kind.STEPPER) && random.nextBoolean();
        signals.add(new Signal(
                "signal " + index,
                lamp ? "on/off" : "unit",
                0,
                lamp ? 1 : 1000,
                1,
                wraps,
                "s" + index,
                1,
                0,
                index * 2));
        return index;
    }

    private Control control(int ordinal) {
        Control.Kind kind = Control.Kind.values()[ordinal];
        int number = controls++;
        return new Control(
                kind.name() + " " + number,
                kind,
                number,
                kind.isContact() ? 20 * MILLI : 0,
                kind.isContact() ? 5 * MILLI : 0,
                kind == Control.Kind.AXIS || kind == Control.Kind.LEVER ? 4 : 0,
                switch (kind) {
                    case SELECTOR -> new Control.Positions(6, 60 * MILLI, 6);
                    case THREE_WAY_TOGGLE -> new Control.Positions(3, 10 * MILLI, 1);
                    default -> Control.Positions.NONE;
                },
                kind == Control.Kind.KEY_MATRIX ? new Control.Matrix(4, 4, 8 * MILLI, true) : null,
                kind == Control.Kind.LEVER ? DETENTS : List.of());
    }
}
