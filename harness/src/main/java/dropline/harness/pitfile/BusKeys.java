package dropline.harness.pitfile;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Profile.ReplyFrom;
import dropline.bus.pit.Transceiver.Driver;
import dropline.bus.pit.Transceiver.Receiver;
import dropline.harness.pitfile.Words.Choices;
import dropline.harness.yaml.Tree;
import dropline.protocol.CharacterFormat;
import dropline.protocol.FirmwareVersion;
import dropline.protocol.custom.Custom;
import dropline.protocol.sized.Sized.ReplyChoice;
import java.util.List;

/** The keys of adapters, hubs, profiles and segments. Nodes have theirs: {@link NodeKeys}. */
final class BusKeys {

    /** The protocols a segment can speak. */
    enum Speech {
        DROPLINE,
        MODBUS_RTU,
        SIZED,
        CUSTOM
    }

    static final Key<Tree.Scalar> LIKE = Key.optional(
            "like",
            new NameAt("the name of a preset, or of another of its kind in this file"),
            "what it is like; keys written beside it count before those of its like, inside groups too");

    static final Key<String> FIGURES_FROM = Key.optional(
            "source", Words.text("text"), "where the figures come from: measured, preset or guessed, and by what");

    // --- adapters -------------------------------------------------------------------------------------------------

    static final Key<Long> LATENCY_TIMER = Key.optional(
                    "latency-timer",
                    Times.timeOr("none", Times.MILLI, 255 * Times.MILLI),
                    "how long a packet that is not full waits (FTDI AN232B-04: 1..255 ms); none where left out")
            .figure();
    static final Key<Integer> PACKET = Key.optional(
                    "packet",
                    Numbers.whole(1, 65535),
                    "characters that make a packet full; 62 where left out (FTDI AN232B-04)")
            .figure();
    static final Key<Long> USB_FRAME = Key.optional(
                    "usb-frame", Times.timeOr("none", Times.MICRO, Times.SECOND), "the USB frame; none where left out")
            .figure();
    static final Key<Distribution> WAKE_UP = Key.optional(
                    "wake-up",
                    Times.distribution(),
                    "time until the host's program has the packet; 0 us where left out")
            .figure();

    static final List<Key<?>> ADAPTER_KEYS = List.of(FIGURES_FROM, LATENCY_TIMER, PACKET, USB_FRAME, WAKE_UP);
    static final Section ADAPTERS = Section.named("adapters", "USB adapters, by name", ADAPTER_KEYS)
            .like(Shelf.ADAPTERS)
            .orName();
    static final Section ADAPTER = Section.one("adapter", "the USB adapter: the name of one, or its keys", ADAPTER_KEYS)
            .like(Shelf.ADAPTERS)
            .orName();

    // --- hubs -----------------------------------------------------------------------------------------------------

    static final Key<Hub.Kind> HUB_KIND = Key.standard(
            "kind",
            Words.choice(new Choices<Hub.Kind>()
                    .with("board", Hub.Kind.BOARD)
                    .with("transceivers", Hub.Kind.TRANSCEIVERS)
                    .with("splitter", Hub.Kind.SPLITTER)),
            "board",
            "a board that polls one segment or several, which share its program and its USB lead; one transceiver for"
                    + " each port, or a passive splitter: through these the host polls, and all ports are one segment");
    static final Key<Long> TURN = Key.standard(
                    "turn",
                    Times.time(0, Times.SECOND),
                    "0 us",
                    "board: time its program needs before each frame it sends, one at a time for all its segments")
            .figure();

    static final Section HUBS = Section.named(
            "hubs", "what stands between host and segments, by name", List.of(HUB_KIND, TURN), ADAPTER.required());

    // --- profiles -------------------------------------------------------------------------------------------------

    static final Key<ReplyFrom> REPLIES_FROM = Key.optional(
            "replies-from",
            Words.choice(new Choices<ReplyFrom>()
                    .with("interrupt", ReplyFrom.INTERRUPT)
                    .with("loop", ReplyFrom.LOOP)),
            "where replies are made; loop where left out");
    static final Key<Distribution> REPLY_GAP = Key.optional(
                    "reply-gap",
                    Times.distribution(),
                    "last stop bit of the request to first start bit of the reply when nothing blocks; must be known")
            .figure();
    static final Key<Long> ENABLE_LEAD = Key.optional(
                    "enable-lead", Times.time(0, Times.SECOND), "driver on to first start bit; 0 us where left out")
            .figure();
    static final Key<Long> RELEASE_TAIL = Key.optional(
                    "release-tail", Times.time(0, Times.SECOND), "last stop bit to driver off; 0 us where left out")
            .figure();
    static final Key<Long> LOOP_PASS = Key.optional(
                    "loop-pass",
                    Times.time(0, 10 * Times.SECOND),
                    "longest pass of an unblocked main loop; 0 us where left out")
            .figure();
    static final Key<Integer> FIFO = Key.optional(
                    "fifo",
                    Numbers.whole(1, 1024),
                    "characters the UART holds while interrupts are off, beside its shift register; 2 where left out")
            .figure();
    static final Key<Integer> RING = Key.optional(
                    "ring",
                    Numbers.whole(1, 65535),
                    "characters the receive ring holds while the loop is blocked; 63 where left out")
            .figure();
    static final Key<Long> BOOT = Key.optional(
                    "boot", Times.time(0, Times.HOUR), "reset to first reply; 0 us where left out")
            .figure();
    static final Key<FirmwareVersion> FIRMWARE = Key.optional(
            "firmware", Words.firmware(), "the version of the firmware whose timing this is, where its board tells it");
    static final Key<Long> CLOCK = Key.optional(
            "clock",
            Numbers.measure(Measure.frequency(), 1_000, 4_000_000_000L),
            "clock of the UART, with ticks-per-bit; where left out, one that meets the baud rate exactly");
    static final Key<Integer> TICKS_PER_BIT =
            Key.optional("ticks-per-bit", Numbers.whole(1, 16_777_216), "clock ticks a bit lasts, with clock");

    static final Key<Driver> DRIVER = Key.optional(
            "driver",
            Words.choice(new Choices<Driver>()
                    .with("enable-line", Driver.ENABLE_LINE)
                    .with("automatic", Driver.AUTOMATIC)
                    .with("zeros-only", Driver.ZEROS_ONLY)),
            "what switches the driver: an enable line; the data itself, for enable-lead 0 us and its hold time as"
                    + " release-tail; or only its zeros, ones being left to the bias; enable-line where left out");
    static final Key<Receiver> RECEIVER = Key.optional(
            "receiver",
            Words.choice(new Choices<Receiver>()
                    .with("always-on", Receiver.ALWAYS_ON)
                    .with("off-while-sending", Receiver.OFF_WHILE_SENDING)
                    .with("floating-while-sending", Receiver.FLOATING_WHILE_SENDING)),
            "what the receiver's output does while the node sends: follows the pair, rests at one (pulled up), or"
                    + " floats; off-while-sending where left out");
    static final Key<Integer> SAMPLES_PER_BIT = Key.optional(
            "samples-per-bit",
            Words.choice(new Choices<Integer>().with("16", 16).with("8", 8)),
            "how often its UART samples a bit: 8 at an AVR's double speed; 16 where left out");

    static final Key<Long> TASK_EVERY = Key.required(
                    "every", Times.time(Times.MICRO, Times.HOUR), "from one start to the next")
            .figure();
    static final Key<Long> TASK_TAKES = Key.required("takes", Times.time(1, Times.HOUR), "how long it blocks")
            .figure();
    static final Key<Blocks> TASK_BLOCKS =
            Key.standard("blocks", blocks(), "loop", "what it keeps from running on its node");

    static final Section TASKS = Section.named(
            "tasks",
            "what blocks a node at regular times, beside the refreshes of its indicators, by name",
            List.of(TASK_EVERY, TASK_TAKES, TASK_BLOCKS));

    static final List<Key<?>> PROFILE_KEYS = List.of(
            FIGURES_FROM,
            REPLIES_FROM,
            REPLY_GAP,
            ENABLE_LEAD,
            RELEASE_TAIL,
            LOOP_PASS,
            FIFO,
            RING,
            BOOT,
            CLOCK,
            TICKS_PER_BIT,
            DRIVER,
            RECEIVER,
            SAMPLES_PER_BIT,
            FIRMWARE);
    static final Section PROFILES = Section.named("profiles", "firmware timings, by name", PROFILE_KEYS, TASKS)
            .like(Shelf.PROFILES)
            .orName();
    static final Section PROFILE = Section.one(
                    "profile", "the node's firmware timing: the name of a profile, or its keys", PROFILE_KEYS, TASKS)
            .like(Shelf.PROFILES)
            .orName();

    // --- segments -------------------------------------------------------------------------------------------------

    static final Key<Long> BAUD =
            Key.required("baud", Numbers.measure(Measure.baud(), 300, 4_000_000), "bits a second on the pair");
    static final Key<CharacterFormat> FORMAT =
            Key.standard("format", Words.format(), "8N1", "how a character stands on the wire");
    static final Key<Speech> PROTOCOL = Key.standard(
            "protocol",
            Words.choice(new Choices<Speech>()
                    .with("dropline", Speech.DROPLINE)
                    .with("modbus-rtu", Speech.MODBUS_RTU)
                    .with("sized", Speech.SIZED)
                    .with("custom", Speech.CUSTOM)),
            "dropline",
            "how its parties speak");

    static final Key<Custom> LAYOUT = Key.optional(
            "layout",
            new LayoutAt(),
            "with protocol: custom, the file that describes its frames (docs/custom-protocols.md)");

    static final Key<Integer> REQUEST =
            Key.required("request", Numbers.whole(1, 65535), "characters of a poll without state");
    static final Key<List<ReplyChoice>> REPLY = Key.required("reply", new Replies(), "characters of a reply");
    static final Key<Integer> STATE_OVERHEAD = Key.standard(
            "state-overhead", Numbers.whole(0, 65535), "6", "characters of a state frame beside its signals");
    static final Key<Integer> BYTES_PER_SIGNAL =
            Key.standard("bytes-per-signal", Numbers.whole(1, 65535), "4", "characters a signal adds to a state frame");
    static final Key<Integer> SIGNALS_PER_FRAME = Key.standard(
            "signals-per-frame", Numbers.whole(0, 65535), "0", "most signals in a frame; 0 where state is not sent");
    static final Key<Long> SILENCE = Key.standard(
            "silence",
            Numbers.measure(Measure.bits(), 0, 100_000),
            "0 bits",
            "silence that must lie before every frame");

    static final Section SIZED = Section.one(
            "sized",
            "with protocol: sized, the lengths of its frames",
            List.of(REQUEST, REPLY, STATE_OVERHEAD, BYTES_PER_SIGNAL, SIGNALS_PER_FRAME, SILENCE));

    static final Key<Tree.Scalar> CONTROLLER_HUB =
            Key.optional("hub", new NameAt("the name of a hub"), "the hub whose board polls; this or adapter");
    static final Key<Long> TIME_OUT = Key.standard(
            "time-out", Times.time(Times.MICRO, Times.HOUR), "20 ms", "end of the request to end of the reply");
    static final Key<Integer> RETRIES =
            Key.standard("retries", Numbers.whole(0, 10), "1", "further tries before a transaction is given up");
    static final Key<Integer> BACK_OFF_AFTER = Key.standard(
            "back-off-after",
            Numbers.whole(0, 1_000),
            "3",
            "transactions given up in a row after which a node is polled rarely; 0 for never");
    static final Key<Long> BACK_OFF_FOR =
            Key.standard("back-off-for", Times.time(0, Times.HOUR), "1 s", "how long it is then left alone");
    static final Key<Long> REFRESH = Key.standard(
            "refresh",
            Times.timeOr("never", Times.MILLI, Times.HOUR),
            "never",
            "period in which every value is sent again though unchanged");
    static final Key<Long> GAP = Key.standard(
            "gap", Times.time(0, Times.SECOND), "0 us", "end of a transaction or broadcast to the next frame");
    static final Key<Long> TURNAROUND = Key.optional(
            "turnaround",
            Times.time(0, 10 * Times.SECOND),
            "silence after a broadcast so that nodes can act; where left out, 100 ms with modbus-rtu (Serial Line"
                    + " V1.02, 2.4.1: 100..200 ms), else 0 us");
    static final Key<StateDelivery> STATE = Key.optional(
            "state",
            Words.choice(new Choices<StateDelivery>()
                    .with("broadcast", StateDelivery.BROADCAST)
                    .with("addressed", StateDelivery.ADDRESSED)),
            "whether state goes to all nodes at once or to each with its poll; where left out, addressed with"
                    + " modbus-rtu or a layout without state, else broadcast");
    static final Key<Long> CONTROLLER_LEAD =
            Key.standard("enable-lead", Times.time(0, Times.SECOND), "0 us", "driver on to first start bit");
    static final Key<Long> CONTROLLER_TAIL =
            Key.standard("release-tail", Times.time(0, Times.SECOND), "0 us", "last stop bit to driver off");

    /** What a controller's transceiver is to the pair; when it drives, its controller says. */
    static final Section CONTROLLER_TRANSCEIVER = Section.one(
                    "transceiver",
                    "the controller's own RS-485 transceiver as the pair meets it: the name of one, or its keys; when"
                            + " it drives is said by the controller's own keys",
                    List.of(
                            FIGURES_FROM,
                            PairKeys.UNIT_LOAD,
                            PairKeys.EDGE,
                            PairKeys.OWN_TERMINATOR,
                            PairKeys.OWN_BIAS))
            .like(Shelf.TRANSCEIVERS)
            .orName();

    static final Section CONTROLLER = Section.one(
                    "controller",
                    "the one party that polls: a hub, or the host through an adapter",
                    List.of(
                            CONTROLLER_HUB,
                            TIME_OUT,
                            RETRIES,
                            BACK_OFF_AFTER,
                            BACK_OFF_FOR,
                            REFRESH,
                            GAP,
                            TURNAROUND,
                            STATE,
                            CONTROLLER_LEAD,
                            CONTROLLER_TAIL),
                    ADAPTER,
                    CONTROLLER_TRANSCEIVER)
            .required();

    static final Key<Boolean> BIAS = Key.standard(
            "bias",
            Words.choice(new Choices<Boolean>().with("yes", true).with("no", false)),
            "yes",
            "whether the pair rests at one while nobody drives it: bias resistors, or fail-safe receivers");

    static final Key<Topology> TOPOLOGY = Key.standard(
            "topology",
            Words.choice(new Choices<Topology>()
                    .with("chain", Topology.CHAIN)
                    .with("star", Topology.STAR)
                    .with("direct", Topology.DIRECT)),
            "chain",
            "how its cable runs: from board to board; in arms that meet at the controller or its hub; or not at all:"
                    + " one board straight on the PC's USB, where nothing is shared");
    static final Key<List<Tree.Scalar>> ORDER = Key.optional(
            "order",
            Words.names("names of its nodes, as they follow on the cable; in a chain, the word controller among them"),
            "the order on the cable, or from the middle outward on the arms of a star; where left out, the controller"
                    + " first and the nodes as in the file");

    static final Section SEGMENTS = Section.named(
                    "segments",
                    "the RS-485 pairs, by name",
                    List.of(BAUD, FORMAT, PROTOCOL, LAYOUT, BIAS, TOPOLOGY, ORDER),
                    SIZED,
                    CONTROLLER,
                    PairKeys.CABLE,
                    PairKeys.TERMINATORS,
                    PairKeys.BIAS_RESISTORS)
            .required();

    private BusKeys() {}

    static Type<Blocks> blocks() {
        return Words.choice(new Choices<Blocks>()
                .with("nothing", Blocks.NOTHING)
                .with("loop", Blocks.LOOP)
                .with("interrupts", Blocks.INTERRUPTS));
    }
}
