package dropline.harness.link;

import dropline.bus.chance.Distribution;
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
import dropline.protocol.CharacterFormat;
import dropline.protocol.frames.DroplineFrames;
import java.util.List;

/** A pit of one lamp at address 5, at 250 kbaud. */
public final class OneNode {
    public static final int ADDRESS = 5;
    private static final long MILLI = 1_000_000L;

    private OneNode() {}

    public static Pit pit() {
        Indicator lamp = new Indicator("lamp", Indicator.Kind.LAMP, List.of(0), 0, 0, 0, Indicator.Blocks.NOTHING, 0);
        Panel panel = new Panel(
                "panel",
                "",
                Panel.Status.BUILT,
                List.of(lamp),
                List.of(),
                new Budget(100 * MILLI, 100 * MILLI, "chosen for this test"));
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
        Controller controller = new Controller(
                Controller.Kind.HOST,
                Adapter.NONE,
                Controller.StateDelivery.BROADCAST,
                50 * MILLI,
                1,
                3,
                1000 * MILLI,
                50_000,
                0,
                0,
                0,
                0);
        Segment segment = new Segment(
                "only",
                250_000,
                CharacterFormat.EIGHT_N_ONE,
                DroplineFrames.create(),
                controller,
                List.of(new Node("lamp-board", ADDRESS, 1, profile, List.of(panel), List.of())),
                true);
        Signal signal = new Signal("lamp", "on/off", 0, 1, 1, false, "lamp", 1, 0, 1);
        return new Pit("one lamp", 0, null, List.of(signal), List.of(segment));
    }
}
