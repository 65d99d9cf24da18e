package dropline.bus;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Budget;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
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

/** Small pits for tests: one segment at 500 kbaud, 20 us a character, sized frames, one node unless said otherwise. */
public final class Pits {
    public static final long MICRO = 1_000L;
    public static final long MILLI = 1_000_000L;

    private Pits() {}

    /** A signal of 0 to 1000 in steps of 1. */
    public static Signal signal(int number, boolean wraps) {
        return new Signal("signal" + number, "unit", 0, 1000, 1, wraps, "signal" + number, 1, 0, number);
    }

    public static Indicator lamp(int signal) {
        return new Indicator("lamp", Indicator.Kind.LAMP, List.of(signal), 0, 0, 0, Indicator.Blocks.NOTHING, 0);
    }

    /** A reply after exactly this gap, from a loop that never blocks and takes no time. */
    public static Profile profile(long replyGapNanos) {
        return new Profile(
                Profile.ReplyFrom.LOOP,
                Distribution.constant(replyGapNanos),
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

    public static Node node(String name, int address, Profile profile, List<Indicator> shows, List<Control> controls) {
        Budget budget = new Budget(100 * MILLI, 100 * MILLI, "common practice");
        Panel panel = new Panel(name + " panel", "", Panel.Status.BUILT, shows, controls, budget);
        return new Node(name, address, 1, profile, List.of(panel), List.of());
    }

    public static Controller controller(Controller.StateDelivery state, long timeOutNanos, int retries) {
        return refreshing(state, timeOutNanos, retries, 0);
    }

    /** One that sends every value again at this period. */
    public static Controller refreshing(
            Controller.StateDelivery state, long timeOutNanos, int retries, long refreshNanos) {
        return new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                state,
                timeOutNanos,
                retries,
                0,
                0,
                50 * MICRO,
                0,
                refreshNanos,
                0,
                0);
    }

    /** Requests and replies of 10 characters, state of 6 and 4 a signal. */
    public static Pit pit(List<Signal> signals, Controller controller, List<Node> nodes) {
        Sized sized = new Sized(10, List.of(new Sized.ReplyChoice(10, 1)), 6, 4, 10, 0);
        Segment segment = new Segment("segment", 500_000, CharacterFormat.EIGHT_N_ONE, sized, controller, nodes, true);
        return new Pit("pit", 0, null, signals, List.of(segment));
    }
}
