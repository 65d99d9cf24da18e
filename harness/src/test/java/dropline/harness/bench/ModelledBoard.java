package dropline.harness.bench;

import dropline.bus.chance.Distribution;
import dropline.bus.fault.Fault;
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
import dropline.harness.link.Link;
import dropline.protocol.CharacterFormat;
import dropline.protocol.FirmwareVersion;
import dropline.protocol.Protocol;
import dropline.protocol.frames.DroplineFrames;
import dropline.protocol.modbus.ModbusRtu;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A board with everything about its firmware drawn from a seed, on a segment with two neighbours. */
final class ModelledBoard {
    private static final int[] BAUDS = {19_200, 57_600, 115_200, 250_000, 500_000, 1_000_000};
    private static final long MICRO = 1_000L;
    private static final long MILLI = 1_000_000L;

    static final FirmwareVersion FIRMWARE = new FirmwareVersion(1, 4);
    static final long BOOT_NANOS = 50 * MILLI;

    final long leastGap;
    final long mostGap;
    final long releaseTail;
    final Subject subject;

    ModelledBoard(long seed) {
        Random random = new Random(seed);
        int baud = BAUDS[random.nextInt(BAUDS.length)];
        boolean modbus = random.nextInt(3) == 0;
        CharacterFormat format = modbus ? CharacterFormat.EIGHT_E_ONE : CharacterFormat.EIGHT_N_ONE;
        Protocol protocol = modbus ? ModbusRtu.create() : DroplineFrames.create();
        long charNanos = format.bits() * 1_000_000_000L / baud;
        long silence = protocol.silenceBeforeTenthsOfBit(baud, format) * 100_000_000L / baud;
        leastGap = silence + (20 + random.nextInt(200)) * MICRO + 2 * charNanos;
        mostGap = leastGap + random.nextInt(300) * MICRO;
        releaseTail = random.nextInt(40) * MICRO;
        Profile profile = new Profile(
                random.nextBoolean() ? Profile.ReplyFrom.INTERRUPT : Profile.ReplyFrom.LOOP,
                Distribution.uniform(leastGap, mostGap),
                0,
                releaseTail,
                0,
                2,
                255,
                List.of(),
                BOOT_NANOS,
                0,
                0,
                Transceiver.USUAL,
                seed % 2 == 0 ? null : FIRMWARE);
        Controller controller = new Controller(
                Controller.Kind.HOST,
                Adapter.NONE,
                Controller.StateDelivery.BROADCAST,
                mostGap + 60 * charNanos + 2 * MILLI,
                1,
                3,
                1000 * MILLI,
                100 * MICRO,
                0,
                0,
                0,
                5 * MICRO);
        List<Node> nodes = new ArrayList<>();
        List<Signal> signals = new ArrayList<>();
        for (int n = 0; n < 3; n++) {
            signals.add(new Signal("signal" + n, "", 0, 1000, 1, false, "signal" + n, 1, 0, 2 * n));
            nodes.add(new Node("board" + n, 7 + 4 * n, 1, profile, List.of(panel(n)), List.of()));
        }
        Pit pit = new Pit(
                "bench",
                0,
                null,
                signals,
                List.of(new Segment("bench", baud, format, protocol, controller, nodes, true)));
        subject = new Subject(pit, 0, 1);
    }

    private static Panel panel(int n) {
        Indicator lamp = new Indicator("lamp", Indicator.Kind.LAMP, List.of(n), 0, 0, 0, Indicator.Blocks.NOTHING, 0);
        Budget budget = new Budget(100 * MILLI, 100 * MILLI, "chosen for this test");
        List<Control> controls = List.of(
                control("toggle " + n, Control.Kind.TOGGLE, 101), control("encoder " + n, Control.Kind.ENCODER, 102));
        return new Panel("panel" + n, "", Panel.Status.BUILT, List.of(lamp), controls, budget);
    }

    long timeOut() {
        return subject.on().controller().timeOutNanos();
    }

    private static Control control(String name, Control.Kind kind, int number) {
        return new Control(name, kind, number, 8 * MILLI, 3 * MILLI, 0, Control.Positions.NONE, null, List.of());
    }

    BenchResult examined(long seed, List<Fault> faults) throws IOException {
        try (Link link = Loops.to(subject, seed, faults)) {
            return new Examination(subject, link, 0, Thoroughness.QUICK, null, null).run(share -> {});
        }
    }
}
