package dropline.harness.recording;

import dropline.bus.chance.Distribution;
import dropline.bus.host.StateBlock;
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
import java.util.ArrayList;
import java.util.List;

/** Small pits, and blocks as text. */
final class PitExamples {
    private PitExamples() {}

    static Signal signal(String name, double resolution) {
        return new Signal(name, "ft", -1000, 50_000, resolution, false, name, 1, 0, 0);
    }

    static Signal heading() {
        return new Signal("heading", "deg", 0, 360, 1, true, "heading", 1, 0, 1);
    }

    /** A node that shows these signals and carries these controls. */
    static Node node(int address, List<Integer> signals, List<String> controls) {
        List<Indicator> indicators = new ArrayList<>();
        for (int signal : signals) {
            indicators.add(new Indicator(
                    "lamp " + signal, Indicator.Kind.LAMP, List.of(signal), 0, 0, 0, Indicator.Blocks.NOTHING, 0));
        }
        List<Control> switches = controls.stream()
                .map(name -> new Control(name, Control.Kind.TOGGLE, 0, 0, 0, 0))
                .toList();
        Budget budget = new Budget(100_000_000, 100_000_000, "an example");
        Panel panel = new Panel("panel " + address, "", Panel.Status.BUILT, indicators, switches, budget);
        Profile profile = new Profile(
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
        return new Node("node " + address, address, 1, profile, List.of(panel), List.of());
    }

    static Pit pit(List<Signal> signals, List<Node> nodes) {
        Controller controller = new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                Controller.StateDelivery.BROADCAST,
                1_000_000,
                0,
                0,
                0,
                50_000,
                0,
                0,
                0,
                0);
        Segment segment = new Segment(
                "one", 500_000, CharacterFormat.EIGHT_N_ONE, Sized.withReply(8, 8, 6, 4, 10), controller, nodes, true);
        return new Pit("example", 0, null, signals, List.of(segment));
    }

    /** One node with all the signals, and these controls. */
    static Pit pit(List<Signal> signals, String... controls) {
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < signals.size(); i++) {
            all.add(i);
        }
        return pit(signals, List.of(node(1, all, List.of(controls))));
    }

    /** Rows and moves as text, times in ms: {@code 40: 0=12 1=3}, {@code 40! 0=1}. */
    static String text(StateBlock block) {
        StringBuilder text = new StringBuilder();
        for (int row = 0; row < block.rows(); row++) {
            text.append(block.rowNanos(row) / 1_000_000).append(':');
            for (int change = block.firstChange(row); change < block.endChange(row); change++) {
                text.append(' ').append(block.signal(change)).append('=').append(block.value(change));
            }
            text.append('\n');
        }
        for (int move = 0; move < block.moves(); move++) {
            text.append(block.moveNanos(move) / 1_000_000).append("! ");
            text.append(block.moveControl(move))
                    .append('=')
                    .append(block.moveValue(move))
                    .append('\n');
        }
        return text.toString();
    }
}
