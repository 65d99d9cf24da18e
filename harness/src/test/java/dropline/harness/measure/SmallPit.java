package dropline.harness.measure;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.pit.Transceiver;
import dropline.protocol.CharacterFormat;
import dropline.protocol.sized.Sized;
import java.util.List;

/** A pit of one segment at 500 kbaud with two nodes, large enough for every kind of figure. */
public final class SmallPit {
    public static final long MS = 1_000_000L;

    public static final int GEAR = 0;
    public static final int SPEED = 1;
    public static final int HEADING = 2;
    public static final int ALTITUDE = 3;

    /** Slots. */
    public static final int GEAR_LAMP = 0;

    public static final int SPEED_NEEDLE = 1;
    public static final int COMPASS = 2;
    public static final int ALTITUDE_DIGITS = 3;
    public static final int SECOND_GEAR_LAMP = 4;

    /** Controls. */
    public static final int TOGGLE = 0;

    public static final int BUTTON = 1;
    public static final int ENCODER = 2;
    public static final int AXIS = 3;

    public static final int LEFT = 0;
    public static final int RIGHT = 1;

    private SmallPit() {}

    public static Pit pit() {
        List<Signal> signals = List.of(
                signal("gear", 0, 10, false),
                signal("speed", 0, 1000, false),
                signal("heading", 0, 360, true),
                signal("altitude", 0, 60_000, false));
        Budget budget = new Budget(100 * MS, 50 * MS, "chosen for this pit");
        Segment segment = new Segment(
                "main",
                500_000,
                CharacterFormat.EIGHT_N_ONE,
                new Sized(8, List.of(new Sized.ReplyChoice(8, 1)), 6, 4, 10, 0),
                new Controller(
                        Controller.Kind.HUB,
                        Adapter.NONE,
                        Controller.StateDelivery.ADDRESSED,
                        2 * MS,
                        1,
                        0,
                        0,
                        50_000,
                        0,
                        0,
                        0,
                        0),
                List.of(left(budget), right(budget)),
                true);
        return new Pit("small pit", 0, null, signals, List.of(segment));
    }

    private static Node left(Budget budget) {
        return new Node(
                "left",
                1,
                1,
                profile(),
                List.of(
                        panel("lamps", budget, List.of(indicator("gear lamp", Indicator.Kind.LAMP, GEAR)), List.of()),
                        panel("airspeed", budget, List.of(needle("speed needle", SPEED)), List.of()),
                        panel("compass", budget, List.of(needle("card", HEADING)), List.of())),
                List.of());
    }

    private static Node right(Budget budget) {
        return new Node(
                "right",
                2,
                1,
                profile(),
                List.of(panel(
                        "altimeter",
                        budget,
                        List.of(
                                new Indicator(
                                        "digits",
                                        Indicator.Kind.DIGITS,
                                        List.of(ALTITUDE),
                                        0,
                                        100 * MS,
                                        5 * MS,
                                        Blocks.LOOP,
                                        0),
                                indicator("second gear lamp", Indicator.Kind.LAMP, GEAR)),
                        List.of(
                                new Control("master", Control.Kind.TOGGLE, 1, 20 * MS, 0, 0),
                                new Control("test", Control.Kind.BUTTON, 2, 20 * MS, 0, 0),
                                new Control("baro", Control.Kind.ENCODER, 3, 0, 0, 0),
                                new Control("trim", Control.Kind.AXIS, 4, 0, 0, 2)))),
                List.of());
    }

    public static SegmentMeasures measures() {
        Pit pit = pit();
        return new SegmentMeasures(pit, Layout.of(pit), 0);
    }

    /** The measure of a slot, by its number. */
    static SlotMeasure slot(SegmentMeasures measures, int slot) {
        return measures.panels().stream()
                .flatMap(panel -> panel.slots().stream())
                .filter(candidate ->
                        candidate.slot().equals(Layout.of(pit()).slots().get(slot)))
                .findFirst()
                .orElseThrow();
    }

    /** A first state at time 0 in which every signal is 0, queued, carried, heard and shown everywhere by 1 ms. */
    public static void start(SegmentMeasures measures) {
        for (int signal = GEAR; signal <= ALTITUDE; signal++) {
            measures.stateChanged(0, signal, 1, 0);
        }
        measures.stateSent(0);
        Layout layout = Layout.of(pit());
        for (int slot = GEAR_LAMP; slot <= SECOND_GEAR_LAMP; slot++) {
            measures.queued(
                    0, layout.slots().get(slot).node(), layout.slots().get(slot).signal(), 1);
        }
        for (int slot = GEAR_LAMP; slot <= SECOND_GEAR_LAMP; slot++) {
            measures.applied(MS, slot, 1, MS / 2);
            measures.shown(MS, slot, 1);
        }
    }

    private static Signal signal(String name, double min, double max, boolean wraps) {
        return new Signal(name, "unit", min, max, 1, wraps, name, 1, 0, 0);
    }

    private static Panel panel(String name, Budget budget, List<Indicator> indicators, List<Control> controls) {
        return new Panel(name, "main board", Panel.Status.BUILT, indicators, controls, budget);
    }

    private static Indicator indicator(String name, Indicator.Kind kind, int signal) {
        return new Indicator(name, kind, List.of(signal), 0, 0, 0, Blocks.NOTHING, 0);
    }

    private static Indicator needle(String name, int signal) {
        return new Indicator(name, Indicator.Kind.GAUGE_STEPPER, List.of(signal), 0, 0, 0, Blocks.NOTHING, 1000);
    }

    private static Profile profile() {
        return new Profile(
                Profile.ReplyFrom.INTERRUPT,
                Distribution.constant(100_000),
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
    }
}
