package dropline.harness.pitfile;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Profile.ReplyFrom;
import dropline.bus.pit.Transceiver;
import dropline.harness.pitfile.BusKeys.Speech;
import dropline.harness.yaml.Tree;
import dropline.protocol.Protocol;
import dropline.protocol.frames.DroplineFrames;
import dropline.protocol.modbus.ModbusRtu;
import dropline.protocol.sized.Sized;
import java.util.Optional;

/** Makes adapters, profiles, controllers and protocols from groups without problems. */
final class BusBuilder {
    private static final long MODBUS_TURNAROUND_NANOS = 100 * Times.MILLI;
    private static final int PACKET_CHARS = 62;
    private static final int FIFO_CHARS = 2;
    private static final int RING_CHARS = 63;

    private final Parts parts;

    BusBuilder(Parts parts) {
        this.parts = parts;
    }

    Adapter adapter(Block block) {
        return new Adapter(
                block.written(BusKeys.LIKE).map(Tree.Scalar::text).orElse(block.name()),
                block.get(BusKeys.LATENCY_TIMER).orElse(0L),
                block.get(BusKeys.PACKET).orElse(PACKET_CHARS),
                block.get(BusKeys.USB_FRAME).orElse(0L),
                block.get(BusKeys.WAKE_UP).orElse(Distribution.constant(0)));
    }

    /** A node's profile; what its transceiver says about the driver and the receiver counts before it. */
    Profile profile(Block node) {
        Block block = node.block(BusKeys.PROFILE).orElseThrow();
        Block chip = node.blockOrEmpty(NodeKeys.TRANSCEIVER);
        return new Profile(
                block.get(BusKeys.REPLIES_FROM).orElse(ReplyFrom.LOOP),
                block.get(BusKeys.REPLY_GAP).orElseThrow(),
                either(chip, block, BusKeys.ENABLE_LEAD, 0L),
                either(chip, block, BusKeys.RELEASE_TAIL, 0L),
                block.get(BusKeys.LOOP_PASS).orElse(0L),
                block.get(BusKeys.FIFO).orElse(FIFO_CHARS),
                block.get(BusKeys.RING).orElse(RING_CHARS),
                block.blocks(BusKeys.TASKS).stream().map(BusBuilder::task).toList(),
                block.get(BusKeys.BOOT).orElse(0L),
                block.get(BusKeys.CLOCK).orElse(0L),
                block.get(BusKeys.TICKS_PER_BIT).orElse(0),
                transceiver(chip, block),
                block.get(BusKeys.FIRMWARE).orElse(null));
    }

    private static <T> T either(Block chip, Block profile, Key<T> key, T usual) {
        return chip.get(key).or(() -> profile.get(key)).orElse(usual);
    }

    private static Transceiver transceiver(Block chip, Block block) {
        Transceiver usual = Transceiver.USUAL;
        return new Transceiver(
                either(chip, block, BusKeys.DRIVER, usual.driver()),
                either(chip, block, BusKeys.RECEIVER, usual.receiver()),
                block.get(BusKeys.SAMPLES_PER_BIT).orElse(usual.samplesPerBit()));
    }

    private static Profile.Task task(Block block) {
        return new Profile.Task(
                block.name(),
                block.value(BusKeys.TASK_EVERY),
                block.value(BusKeys.TASK_TAKES),
                block.value(BusKeys.TASK_BLOCKS));
    }

    Controller controller(Block segment) {
        Block block = segment.block(BusKeys.CONTROLLER).orElseThrow();
        boolean modbus = segment.value(BusKeys.PROTOCOL) == Speech.MODBUS_RTU;
        Optional<Block> hub = block.written(BusKeys.CONTROLLER_HUB).flatMap(h -> parts.hub(h.text()));
        boolean board = hub.isPresent() && hub.get().value(BusKeys.HUB_KIND) == Hub.Kind.BOARD;
        return new Controller(
                board ? Controller.Kind.HUB : Controller.Kind.HOST,
                adapter(hub.orElse(block).block(BusKeys.ADAPTER).orElseThrow()),
                block.get(BusKeys.STATE).orElse(usualState(segment)),
                block.value(BusKeys.TIME_OUT),
                block.value(BusKeys.RETRIES),
                block.value(BusKeys.BACK_OFF_AFTER),
                block.value(BusKeys.BACK_OFF_FOR),
                block.value(BusKeys.GAP),
                block.get(BusKeys.TURNAROUND).orElse(modbus ? MODBUS_TURNAROUND_NANOS : 0),
                block.value(BusKeys.REFRESH),
                block.value(BusKeys.CONTROLLER_LEAD),
                block.value(BusKeys.CONTROLLER_TAIL));
    }

    private static StateDelivery usualState(Block segment) {
        Speech speech = segment.value(BusKeys.PROTOCOL);
        boolean addressed = speech == Speech.MODBUS_RTU
                || (speech == Speech.CUSTOM && !segment.value(BusKeys.LAYOUT).canBroadcast());
        return addressed ? StateDelivery.ADDRESSED : StateDelivery.BROADCAST;
    }

    Protocol protocol(Block segment) {
        return switch (segment.value(BusKeys.PROTOCOL)) {
            case DROPLINE -> DroplineFrames.create();
            case MODBUS_RTU -> ModbusRtu.create();
            case SIZED -> sized(segment.block(BusKeys.SIZED).orElseThrow());
            case CUSTOM -> segment.value(BusKeys.LAYOUT);
        };
    }

    private static Sized sized(Block block) {
        return new Sized(
                block.value(BusKeys.REQUEST),
                block.value(BusKeys.REPLY),
                block.value(BusKeys.STATE_OVERHEAD),
                block.value(BusKeys.BYTES_PER_SIGNAL),
                block.value(BusKeys.SIGNALS_PER_FRAME),
                Math.toIntExact(block.value(BusKeys.SILENCE)));
    }
}
